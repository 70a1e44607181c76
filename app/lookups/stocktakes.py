"""What a count of a place met, held against what the book says lies there."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.shelves import LIES_THERE
from app.lookups.skeins import last_marks
from app.lookups.stays import NOWHERE, stays_of
from app.records import Counted, DeedRow, DyeLot, Plate, Stocktake, Whereabouts
from app.store.dialect import among, listed

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

    @property
    def booked(self) -> int:
        """How many the book has here."""
        return len(self.right) + len(self.missing)

    @property
    def is_doubtful(self) -> bool:
        """Whether so few of them were met that the count is perhaps not over: fewer than half;
        common practice, no source."""
        return 2 * len(self.right) < self.booked

    @property
    def sold(self) -> tuple[OneMet, ...]:
        """Those that lie here though the book says that somebody has them: for the owner."""
        return tuple(one for one in self.elsewhere if one.with_a_buyer)

    @property
    def to_move(self) -> tuple[OneMet, ...]:
        """Those that lie here and are booked here once the book is put right."""
        return tuple(one for one in self.elsewhere if not one.with_a_buyer)


@dataclass(frozen=True, slots=True)
class SoldYetHere:
    """A skein that was met at a count after the book let it go, and that it has gone still."""

    yarn: int
    state: str
    place: int
    met: datetime


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

_SOLD_YET_HERE = (
    select(Counted.yarn, Whereabouts.state, Stocktake.place, DeedRow.happened)
    .join(Stocktake, Stocktake.id == Counted.stocktake)
    .join(DeedRow, DeedRow.seq == Counted.deed)
    .join(Whereabouts, Whereabouts.yarn == Counted.yarn)
    .where(Counted.struck.is_(None), Stocktake.struck.is_(None), Whereabouts.until.is_(None),
           Whereabouts.struck.is_(None), Whereabouts.state.in_(WITH_A_BUYER),
           Whereabouts.since < DeedRow.happened)
    .order_by(Counted.id)
)


def sold_yet_here(connection: Connection, since: datetime) -> tuple[SoldYetHere, ...]:
    """Each skein that is sold or given away by the book and lay on a shelf after that, as it was
    met last. It is none of these any more once it is taken back, shelved, or its scan is undone.
    """
    rows = connection.execute(_SOLD_YET_HERE.where(DeedRow.happened >= since)).all()
    return tuple({yarn: SoldYetHere(yarn, state, place, met)
                  for yarn, state, place, met in rows if yarn is not None}.values())


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
