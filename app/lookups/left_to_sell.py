"""Left to sell, by one definition: on a shelf by what its tag says, and under no live hold.

Put by, taken, in a kit and at a fair are other states; a skein has one state.
"""

from collections.abc import Iterable, Mapping

from sqlalchemy import Connection, select

from app.lookups.certainty import held_by
from app.lookups.thread import thread
from app.records import Tag, TagOn, Whereabouts
from app.store.dialect import among, listed

_ON_SHELF = (
    select(Tag.lot, TagOn.yarn)
    .join(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .join(Whereabouts, (Whereabouts.yarn == TagOn.yarn) & Whereabouts.until.is_(None)
          & Whereabouts.struck.is_(None))
    .where(among(Tag.lot, "ids"), Tag.void.is_(None), Tag.struck.is_(None),
           Whereabouts.state == "shelf")
    .order_by(TagOn.yarn)
)


def left_to_sell(connection: Connection, lot: int) -> tuple[int, ...]:
    """The skeins of a lot that may be promised or sold now."""
    return left_of(connection, [lot])[lot]


def left_of(connection: Connection, lots: Iterable[int]) -> Mapping[int, tuple[int, ...]]:
    """The same for several lots at once, {lot: skeins}."""
    wanted = list(lots)
    shelf = connection.execute(_ON_SHELF, {"ids": listed(wanted)}).all()
    found = thread(connection, [row.yarn for row in shelf])
    free: dict[int, list[int]] = {lot: [] for lot in wanted}
    for lot, yarn in shelf:
        if not (found.holds and held_by(found, yarn)):
            free[lot].append(yarn)
    return {lot: tuple(skeins) for lot, skeins in free.items()}
