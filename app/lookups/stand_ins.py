"""Which colourways may stand in for another, as the patterns of kits allow it."""

from sqlalchemy import Connection, bindparam, select

from app.lookups.left_to_sell import left_of
from app.lookups.lot_lines import lot_lines
from app.lookups.reorder_ways import StandIn
from app.records import DyeLot, KitPattern, KitPlace, KitSubstitute
from app.store.dialect import among, listed

_ALLOWED = (
    select(KitPattern.name, KitSubstitute.colourway)
    .join(KitPlace, KitPlace.pattern == KitPattern.id)
    .join(KitSubstitute, KitSubstitute.place == KitPlace.id)
    .where(KitPlace.colourway == bindparam("colourway"), KitPlace.base == bindparam("base"),
           KitPlace.put_up == bindparam("put_up"), KitPattern.struck.is_(None),
           KitPlace.struck.is_(None), KitSubstitute.struck.is_(None))
    .order_by(KitPattern.name)
)
_LOTS = (
    select(DyeLot.id, DyeLot.colourway)
    .where(among(DyeLot.colourway, "ids"), DyeLot.base == bindparam("base"),
           DyeLot.struck.is_(None))
)


def stand_ins(
    connection: Connection, colourway: int, base: int, put_up: str
) -> tuple[StandIn, ...]:
    """Lots with some left that a pattern allows in its place, those with the most first."""
    patterns = {row.colourway: row.name for row in connection.execute(
        _ALLOWED, {"colourway": colourway, "base": base, "put_up": put_up})}
    if not patterns:
        return ()
    allowed = {row.id: patterns[row.colourway] for row in connection.execute(
        _LOTS, {"ids": listed(patterns), "base": base})}
    left = left_of(connection, allowed, put_up)
    found = [StandIn(allowed[line.lot], line, left[line.lot].count)
             for line in lot_lines(connection, allowed) if left[line.lot].count]
    return tuple(sorted(found, key=lambda one: -one.free))
