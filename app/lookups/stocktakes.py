"""What a count of a place met, held against what the book says lies there."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.skeins import last_marks
from app.lookups.stays import NOWHERE, stays_of
from app.records import Counted, DeedRow, DyeLot, Plate, Stocktake, Whereabouts
from app.store.dialect import among, listed

LIES_THERE = ("shelf", "put by")
WITH_A_BUYER = ("sent", "given")


@dataclass(frozen=True, slots=True)
class OneMet:
    """A skein by its mark, the state the book has it in, and the place where it has one."""

    yarn: int
    mark: str | None
    state: str
    place: str | None

    @property
    def with_a_buyer(self) -> bool:
        """Whether the book says that somebody has it: then it lies here all the same."""
        return self.state in WITH_A_BUYER


@dataclass(frozen=True, slots=True)
class Untagged:
    """So many of a lot, as stated, that wear no tag: beside all totals."""

    lot: str
    count: int


@dataclass(frozen=True, slots=True)
class Count:
    """One count: what is right, what the book has elsewhere, what it has here and nobody met."""

    id: int
    place: int
    where: str
    begun: datetime
    right: tuple[OneMet, ...]
    elsewhere: tuple[OneMet, ...]
    missing: tuple[OneMet, ...]
    untagged: tuple[Untagged, ...]

    @property
    def fits(self) -> bool:
        """Whether the shelf is as the book says."""
        return not (self.elsewhere or self.missing or self.untagged)


_COUNTS = (
    select(Stocktake.id, Stocktake.place, Plate.code, Plate.words, DeedRow.happened)
    .join(Plate, Plate.id == Stocktake.place).join(DeedRow, DeedRow.seq == Stocktake.deed)
    .where(Stocktake.struck.is_(None))
)
_MET = select(Counted.yarn).where(Counted.yarn.is_not(None), Counted.struck.is_(None))
_UNTAGGED = (
    select(DyeLot.code, Counted.count).join(DyeLot, DyeLot.id == Counted.lot)
    .where(Counted.struck.is_(None)).order_by(Counted.id)
)
_HERE = select(Whereabouts.yarn).where(
    Whereabouts.state.in_(LIES_THERE), Whereabouts.until.is_(None), Whereabouts.struck.is_(None))
_STATES = select(Whereabouts.yarn, Whereabouts.state).where(
    among(Whereabouts.yarn, "ids"), Whereabouts.until.is_(None), Whereabouts.struck.is_(None))


def stocktake(connection: Connection, number: int) -> Count | None:
    """One count against the book as it stands."""
    row = connection.execute(_COUNTS.where(Stocktake.id == number)).first()
    if row is None:
        return None
    met = {yarn for yarn in connection.execute(
        _MET.where(Counted.stocktake == number)).scalars() if yarn is not None}
    booked = set(connection.execute(_HERE.where(Whereabouts.place == row.place)).scalars())
    ones = _read(connection, met | booked)
    return Count(
        row.id, row.place, row.words or shown(row.code), row.happened,
        tuple(ones[yarn] for yarn in sorted(met & booked)),
        tuple(ones[yarn] for yarn in sorted(met - booked)),
        tuple(ones[yarn] for yarn in sorted(booked - met)),
        tuple(Untagged(shown(code or ""), count) for code, count in
              connection.execute(_UNTAGGED.where(Counted.stocktake == number))))


def _read(connection: Connection, yarn: set[int]) -> dict[int, OneMet]:
    marks, stays = last_marks(connection, yarn), stays_of(connection, yarn)
    states = dict(connection.execute(_STATES, {"ids": listed(yarn)}).all())
    return {one: OneMet(one, marks.get(one), states.get(one, "not there any more"),
                        stays.get(one, NOWHERE).place) for one in yarn}
