"""What is not to be in one water: a pale lot with a deep one that comes off, or one that bleeds."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.bleeding import Bled, bled
from app.lookups.certainty import nearest
from app.lookups.depths import Depth, depths
from app.lookups.thread import thread
from app.records import DyeLot
from app.store.dialect import among, listed

WATER = ("soak", "wash")
"""Where dye that comes off has time to go onto what is beside it."""
_NOT_SEEN = Bled(0, alone=True)


@dataclass(frozen=True, slots=True)
class LotInWater:
    """A lot as it comes to the water; no depth where nobody knows it."""

    id: int
    code: str
    depth: Depth | None
    bleeds: str
    """'bleeds strongly', by the last look at its water; '' where it was not seen to."""

    @property
    def is_pale(self) -> bool:
        """Less than 0.1 % of dye."""
        return self.depth is not None and self.depth.pale

    @property
    def comes_off(self) -> bool:
        """A deep red, turquoise or black, or one that was seen to bleed and is not pale."""
        return not self.is_pale and (
            bool(self.bleeds) or (self.depth is not None and self.depth.deep))

    @property
    def mark(self) -> str:
        """'pale, 0.055 %', 'deep, 1.70 %, bleeds strongly', '0.80 %', 'depth not known'."""
        if self.depth is None:
            return f"depth not known{', ' if self.bleeds else ''}{self.bleeds}"
        name = "pale, " if self.depth.pale else "deep, " if self.depth.deep else ""
        return f"{name}{self.depth.words}{', ' if self.bleeds else ''}{self.bleeds}"


def lots_in_water(
    connection: Connection, rows: Sequence[int], at: datetime
) -> Mapping[int, tuple[LotInWater, ...]]:
    """{row: the lots it may be}, each with its depth and how it bled last; undyed yarn has none."""
    found = thread(connection, rows)
    of_row = {row: [lot for lot in nearest(found, row, "lot") if lot] for row in rows}
    lots = {lot for some in of_row.values() for lot in some}
    deep, looks = depths(connection, lots), bled(connection, lots, at)
    codes = dict(connection.execute(
        select(DyeLot.id, DyeLot.code).where(among(DyeLot.id, "ids")),
        {"ids": listed(lots)}).all())
    known = {lot: LotInWater(lot, shown(codes[lot] or "no code yet"), deep.get(lot),
                             looks.get(lot, _NOT_SEEN).words) for lot in lots}
    return {row: tuple(known[lot] for lot in sorted(some)) for row, some in of_row.items()}


def not_together(
    connection: Connection, rows: Sequence[int], step: str | None, at: datetime
) -> tuple[str, ...]:
    """One sentence for each pale lot that would meet what comes off; none where all may go."""
    if step not in WATER or not rows:
        return ()
    lots = {lot.id: lot for some in lots_in_water(connection, rows, at).values() for lot in some}
    return tuple(_sentences(lots.values()))


@dataclass(frozen=True, slots=True)
class Water:
    """What would be in one water: a mark for each row, and what is not to meet."""

    marks: Mapping[int, str]
    apart: tuple[str, ...]


def in_one_water(
    connection: Connection, rows: Sequence[int], step: str | None, at: datetime
) -> Water:
    """The marks of these rows, 'pale, 0.055 %', and a sentence for each pale lot among them."""
    lots = lots_in_water(connection, rows, at) if rows else {}
    marks = {row: " or ".join(dict.fromkeys(lot.mark for lot in some))
             for row, some in lots.items() if any(lot.depth or lot.bleeds for lot in some)}
    return Water(marks, not_together(connection, rows, step, at))


def _sentences(lots: Iterable[LotInWater]) -> Iterator[str]:
    off = [lot for lot in lots if lot.comes_off]
    if off:
        with_what = " and ".join(f"{lot.code} ({lot.mark})" for lot in off)
        for lot in lots:
            if lot.is_pale:
                yield f"{lot.code} ({lot.mark}) with {with_what}: it takes up what comes off."
