"""Whether this computer's clock can be right, and the lots that wait for their code until it is."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.records import Base, Bath, Colourway, DeedRow, DyeLot, Head, InBath, Yarn


@dataclass(frozen=True, slots=True)
class WaitingLot:
    """A lot whose bath was entered while the clock was in doubt: so its week is not known."""

    lot: int
    colourway: str
    base: str
    count: int
    happened: datetime
    """When its bath happened, as far as the book knows."""


@dataclass(frozen=True, slots=True)
class ClockSeen:
    """The last entry by the clock of who wrote it, and what waits for a sure day."""

    written: datetime
    lots: tuple[WaitingLot, ...]

    def behind(self, now: datetime) -> bool:
        """Whether this clock says that it is earlier than the last entry."""
        return now < self.written


def clock_seen(connection: Connection) -> ClockSeen:
    """As the book has it."""
    written = connection.execute(select(Head.written)).scalar_one()
    rows = connection.execute(
        select(DyeLot.id, Colourway.name.label("colourway"), Base.name.label("base"),
               func.sum(Yarn.count).label("members"), DeedRow.happened)
        .join(Bath, Bath.id == DyeLot.bath).join(DeedRow, DeedRow.seq == Bath.deed)
        .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == DyeLot.base)
        .join(InBath, (InBath.lot == DyeLot.id) & InBath.struck.is_(None))
        .join(Yarn, Yarn.id == InBath.yarn)
        .where(DyeLot.code.is_(None), DyeLot.struck.is_(None), Bath.struck.is_(None))
        .group_by(DyeLot.id, Colourway.name, Base.name, DeedRow.happened).order_by(DyeLot.id)
    )
    return ClockSeen(written, tuple(
        WaitingLot(row.id, row.colourway, row.base, row.members, row.happened) for row in rows))
