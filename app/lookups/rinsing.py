"""The rinses of a wash so far, how the water looked after each, and what to do next."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from sqlalchemy import Connection, select

from app.calculations.rinses import After, after
from app.records import LoadReading

_LOOKS_MG_L = (Decimal(0), Decimal(2), Decimal(20))
"""What none, slight and strong stand for: only which is the stronger counts."""


@dataclass(frozen=True, slots=True)
class Rinsing:
    """`looks` holds one entry a rinse: 0 none, 1 slight, 2 strong, none where nobody looked."""

    load: int
    looks: tuple[int | None, ...]

    @property
    def rinses(self) -> int:
        """How many were done."""
        return len(self.looks)

    @property
    def next(self) -> After | None:
        """What to do, from the rinses since the last one at which nobody looked; none before."""
        strengths: list[Decimal] = []
        for look in self.looks:
            strengths = [] if look is None else [*strengths, _LOOKS_MG_L[look]]
        return after(strengths) if strengths else None


def rinsing(connection: Connection, load: int) -> Rinsing:
    """A load's rinses; a look before the first rinse is of the water it was washed in."""
    rows = connection.execute(
        select(LoadReading.kind, LoadReading.value)
        .where(LoadReading.load == load, LoadReading.yarn.is_(None), LoadReading.struck.is_(None),
               LoadReading.kind.in_(("rinse", "bleed")))
        .order_by(LoadReading.id)).all()
    return Rinsing(load, _looks([(row.kind, row.value) for row in rows]))


def _looks(readings: Sequence[tuple[str, int]]) -> tuple[int | None, ...]:
    """The number that was said counts: rinse 3 alone means that two went before it."""
    looks: list[int | None] = []
    for kind, value in readings:
        if kind == "rinse":
            looks += [None] * (value - len(looks))
        elif looks:
            looks[-1] = value
    return tuple(looks)
