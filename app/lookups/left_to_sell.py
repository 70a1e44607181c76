"""Left to sell, by one definition: on a shelf by what its tag says, under no live hold, and not
promised to an order that is still to be filled.

Put by, taken, in a kit and at a fair are other states; a skein has one state.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.lookups.certainty import held_by
from app.lookups.thread import thread
from app.records import OrderLine, Tag, TagOn, Whereabouts
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Left:
    """What is left of a lot: the skeins that lie free, and how many of them orders still want."""

    skeins: tuple[int, ...]
    promised: int = 0

    @property
    def count(self) -> int:
        """How many may be promised or sold now."""
        return max(0, len(self.skeins) - self.promised)

    @property
    def short(self) -> int:
        """How many were promised that are not there any more."""
        return max(0, self.promised - len(self.skeins))


_ON_SHELF = (
    select(Tag.lot, TagOn.yarn)
    .join(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .join(Whereabouts, (Whereabouts.yarn == TagOn.yarn) & Whereabouts.until.is_(None)
          & Whereabouts.struck.is_(None))
    .where(among(Tag.lot, "ids"), Tag.void.is_(None), Tag.struck.is_(None),
           Whereabouts.state == "shelf")
    .order_by(TagOn.yarn)
)
_FILLED = (
    select(func.count(func.distinct(Whereabouts.yarn)))
    .where(Whereabouts.line == OrderLine.id, Whereabouts.struck.is_(None)).scalar_subquery()
)
_PROMISED = (
    select(OrderLine.lot, (OrderLine.wanted - _FILLED).label("unfilled"))
    .where(among(OrderLine.lot, "ids"), OrderLine.over.is_(None), OrderLine.struck.is_(None),
           OrderLine.wanted > _FILLED)
)


def left_to_sell(connection: Connection, lot: int) -> Left:
    """What of a lot may be promised or sold now."""
    return left_of(connection, [lot])[lot]


def left_of(connection: Connection, lots: Iterable[int]) -> Mapping[int, Left]:
    """The same for several lots at once, {lot: what is left}."""
    wanted = list(lots)
    shelf = connection.execute(_ON_SHELF, {"ids": listed(wanted)}).all()
    found = thread(connection, [row.yarn for row in shelf])
    free: dict[int, list[int]] = {lot: [] for lot in wanted}
    for lot, yarn in shelf:
        if not (found.holds and held_by(found, yarn)):
            free[lot].append(yarn)
    promised: Counter[int | None] = Counter()
    for line in connection.execute(_PROMISED, {"ids": listed(wanted)}):
        promised[line.lot] += line.unfilled
    return {lot: Left(tuple(skeins), promised[lot]) for lot, skeins in free.items()}
