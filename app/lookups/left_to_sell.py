"""Left to sell: on a shelf by what its tag says, under no live hold, promised to no order.

Put by, taken, in a kit and at a fair are other states; a skein has one state. An order's line that
names a lot keeps what is not filled of it, until it is taken for it or called off.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import chain

from sqlalchemy import Connection, func, or_, select

from app.lookups.certainty import held_by
from app.lookups.thread import thread
from app.records import CustomerOrder, OrderLine, Tag, TagOn, Whereabouts, Yarn
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
    select(Tag.lot, TagOn.yarn, Yarn.put_up)
    .join(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .join(Whereabouts, (Whereabouts.yarn == TagOn.yarn) & Whereabouts.until.is_(None)
          & Whereabouts.struck.is_(None))
    .join(Yarn, Yarn.id == TagOn.yarn)
    .where(among(Tag.lot, "ids"), Tag.void.is_(None), Tag.struck.is_(None),
           Whereabouts.state == "shelf")
    .order_by(TagOn.yarn)
)
FILLED = (
    select(func.count(func.distinct(Whereabouts.yarn)))
    .where(Whereabouts.line == OrderLine.id, Whereabouts.struck.is_(None),
           or_(Whereabouts.state == "sent", Whereabouts.until.is_(None)))
    .scalar_subquery()
)
"""Of an order line: skeins that were sent, back since or not, and those that are taken now."""
_PROMISED = (
    select(OrderLine.lot, OrderLine.id, OrderLine.put_up, CustomerOrder.number,
           (OrderLine.wanted - FILLED).label("unfilled"))
    .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(among(OrderLine.lot, "ids"), OrderLine.over.is_(None), OrderLine.struck.is_(None),
           OrderLine.wanted > FILLED)
    .order_by(OrderLine.id)
)


@dataclass(frozen=True, slots=True)
class Promise:
    """An order's line that still wants so many of a lot."""

    line: int
    order: str
    open: int


def wanting(connection: Connection, lot: int) -> tuple[Promise, ...]:
    """The lines that were promised some of this lot and are still to be filled, oldest first."""
    return tuple(Promise(row.id, row.number, row.unfilled)
                 for row in connection.execute(_PROMISED, {"ids": listed([lot])}))


def left_to_sell(connection: Connection, lot: int, put_up: str | None = None) -> Left:
    """What of a lot may be promised or sold now: all of it, or of one put-up."""
    return left_of(connection, [lot], put_up)[lot]


def left_of(
    connection: Connection, lots: Iterable[int], put_up: str | None = None
) -> Mapping[int, Left]:
    """The same for several lots at once, {lot: what is left}."""
    wanted = list(lots)
    shelf = connection.execute(_ON_SHELF, {"ids": listed(wanted)}).all()
    found = thread(connection, [row.yarn for row in shelf])
    free: dict[int, dict[str, list[int]]] = {lot: defaultdict(list) for lot in wanted}
    for lot, yarn, wound in shelf:
        if not (found.holds and held_by(found, yarn)):
            free[lot][wound].append(yarn)
    promised: dict[int, Counter[str | None]] = {lot: Counter() for lot in wanted}
    for line in connection.execute(_PROMISED, {"ids": listed(wanted)}):
        promised[line.lot][line.put_up] += line.unfilled
    return {lot: _left(free[lot], promised[lot], put_up) for lot in wanted}


def _left(
    free: Mapping[str, list[int]], promised: Mapping[str | None, int], put_up: str | None
) -> Left:
    """A promise that names no put-up is filled from the others first."""
    if put_up is None:
        return Left(tuple(sorted(chain(*free.values()))), sum(promised.values()))
    others = sum(max(0, len(skeins) - promised[wound])
                 for wound, skeins in free.items() if wound != put_up)
    return Left(tuple(free.get(put_up, ())), promised[put_up] + max(0, promised[None] - others))
