"""What was read of lots, standards and cones with an instrument: every card as it was read."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, bindparam, select

from app.calculations.cards import Cards, Looked
from app.calculations.shade import Colour, Lamp, Observer, Viewing
from app.records import DeedRow, DyeLot, ShadeReading
from app.store.dialect import among, listed

MILLI = 1000


@dataclass(frozen=True, slots=True)
class CardRead:
    """One card as it was read: the mean of so many places, when and by whom."""

    colour: Colour
    zone: str
    at: datetime
    person: str
    came: str
    """'typed', or the kind of file it came in."""
    instrument: str

    @property
    def looked(self) -> Looked:
        """How it was looked at, and of which zone it is."""
        return self.colour.viewing, self.zone


_READ = (
    select(ShadeReading.id, ShadeReading.lot, ShadeReading.zone, ShadeReading.l_milli,
           ShadeReading.a_milli, ShadeReading.b_milli, ShadeReading.lamp, ShadeReading.observer,
           ShadeReading.wet, ShadeReading.readings, ShadeReading.spread_milli, ShadeReading.came,
           ShadeReading.instrument, DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == ShadeReading.deed)
    .where(ShadeReading.struck.is_(None))
    .order_by(DeedRow.happened.desc(), ShadeReading.id.desc())
)
_OF_LOTS = _READ.where(among(ShadeReading.lot, "ids"))
_OF_STANDARD = _READ.where(ShadeReading.colourway == bindparam("colourway"),
                           ShadeReading.base == bindparam("base"))
_OF_CONE = _READ.where(ShadeReading.cone == bindparam("cone"))
_LOTS_READ = (
    select(DyeLot.id).distinct()
    .join(ShadeReading, ShadeReading.lot == DyeLot.id)
    .where(DyeLot.colourway == bindparam("colourway"), DyeLot.base == bindparam("base"),
           DyeLot.struck.is_(None), ShadeReading.struck.is_(None))
    .order_by(DyeLot.id)
)


def read_of_lots(
    connection: Connection, lots: Iterable[int]
) -> Mapping[int, tuple[CardRead, ...]]:
    """{lot: its cards}, the newest first; a lot that was not read is not there."""
    found: dict[int, list[CardRead]] = defaultdict(list)
    for row in connection.execute(_OF_LOTS, {"ids": listed(lots)}):
        found[row.lot].append(_card(row))
    return {lot: tuple(cards) for lot, cards in found.items()}


def read_of_standard(
    connection: Connection, colourway: int, base: int
) -> tuple[CardRead, ...]:
    """The cards of a colourway's standard on a base, the newest first."""
    return tuple(map(_card, connection.execute(
        _OF_STANDARD, {"colourway": colourway, "base": base})))


def read_of_cone(connection: Connection, cone: int) -> tuple[CardRead, ...]:
    """The cards of a cone's ecru, the newest first."""
    return tuple(map(_card, connection.execute(_OF_CONE, {"cone": cone})))


def lots_read(connection: Connection, colourway: int, base: int) -> tuple[int, ...]:
    """Lots of a colourway on a base that were read at all, as they were dyed."""
    return tuple(connection.execute(
        _LOTS_READ, {"colourway": colourway, "base": base}).scalars())


def newest(read: Sequence[CardRead]) -> Cards:
    """The newest card of each zone, for each way that it was looked at."""
    cards: dict[Looked, Colour] = {}
    for one in read:
        cards.setdefault(one.looked, one.colour)
    return cards


def _card(row: Row[*tuple[Any, ...]]) -> CardRead:
    viewing = Viewing(Lamp(row.lamp), Observer(row.observer), bool(row.wet))
    colour = Colour(
        row.l_milli / MILLI, row.a_milli / MILLI, row.b_milli / MILLI, viewing, row.readings,
        None if row.spread_milli is None else row.spread_milli / MILLI)
    return CardRead(colour, row.zone, row.happened, row.person, row.came, row.instrument)
