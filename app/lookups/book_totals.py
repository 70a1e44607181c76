"""All that is in a book in numbers: what came, what was made, and where every skein is now."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import ColumnElement, Connection, distinct, exists, func, select

from app.lookups.left_to_sell import FILLED
from app.lookups.present import Amount, leaves, totals
from app.records import (
    Cone,
    Customer,
    CustomerOrder,
    Delivery,
    Draw,
    DyeLot,
    Kit,
    OrderLine,
    Part,
    Tag,
    Waste,
    Yarn,
)


@dataclass(frozen=True, slots=True)
class BookTotals:
    """Counts of a book; `states` holds every skein, mini and ball in exactly one state."""

    deliveries: int
    """With a note; what lay there on the first day is not one."""
    cones: int
    cones_ended: int
    wound: Mapping[str, int]
    """{put-up: count}, as they left the reel."""
    opened: int
    """Skeins of old lots, from before the book."""
    found: int
    """Without a tag, and not matched to anything: they stand beside the rest."""
    strangers: int
    """Counted over what was expected: their cone is not known."""
    cut: int
    """Skeins that were made into minis or balls."""
    made: int
    """The minis and balls that they became."""
    lots: int
    old_lots: int
    tags: int
    tags_void: int
    orders: Mapping[str, int]
    """{channel: count}."""
    orders_open: int
    customers: int
    kits: int
    states: Mapping[tuple[str, str], Amount]
    """{(state, put-up): amount}."""

    @property
    def there(self) -> int:
        """All that has to be somewhere, by what was wound, opened, cut and made."""
        return (sum(self.wound.values()) + self.opened + self.found + self.strangers - self.cut
                + self.made)

    @property
    def somewhere(self) -> int:
        """All that is somewhere, by the states."""
        return sum(amount.count for amount in self.states.values())


@dataclass(frozen=True, slots=True)
class _Counting:
    """Short ways to count."""

    connection: Connection

    def count(self, what: Any, *where: ColumnElement[bool]) -> int:
        return self.connection.execute(select(func.count(what)).where(*where)).scalar_one()

    def sum(self, what: Any, *where: ColumnElement[bool]) -> int:
        total: int = self.connection.execute(
            select(func.coalesce(func.sum(what), 0)).where(*where)).scalar_one()
        return total

    def by(self, name: Any, what: Any, *where: ColumnElement[bool]) -> Mapping[str, int]:
        rows = self.connection.execute(
            select(name, what).where(*where).group_by(name).order_by(name))
        return {row[0]: row[1] for row in rows}

    def cut(self) -> tuple[int, int]:
        """Skeins that were cut, and what came of them."""
        row = self.connection.execute(
            select(func.coalesce(func.sum(Part.took), 0), func.coalesce(func.sum(Part.gave), 0))
            .where(Part.took > 0, Part.took != Part.gave, Part.struck.is_(None))).one()
        return row[0], row[1]

    def open_orders(self) -> int:
        return self.connection.execute(
            select(func.count(distinct(OrderLine.customer_order)))
            .where(OrderLine.over.is_(None), OrderLine.struck.is_(None),
                   OrderLine.wanted > FILLED)).scalar_one()


def book_totals(connection: Connection) -> BookTotals:
    """The whole book, counted anew."""
    ask = _Counting(connection)
    drawn = exists().where(Draw.yarn == Yarn.id, Draw.struck.is_(None))
    child = exists().where(Part.child == Yarn.id, Part.struck.is_(None))
    cut, made = ask.cut()
    states = totals(leaves(connection, connection.execute(
        select(Yarn.id).where(Yarn.struck.is_(None))).scalars()))
    return BookTotals(
        deliveries=ask.count(Delivery.id, Delivery.kind == "delivery", Delivery.struck.is_(None)),
        cones=ask.count(Cone.id, Cone.struck.is_(None)),
        cones_ended=ask.count(distinct(Waste.cone), Waste.cone.is_not(None),
                              Waste.struck.is_(None)),
        wound=ask.by(Yarn.put_up, func.sum(Yarn.count), drawn, Yarn.struck.is_(None)),
        opened=ask.sum(Yarn.count, Yarn.base_version.is_not(None), Yarn.struck.is_(None)),
        found=ask.count(Yarn.id, Yarn.kind == "find", ~child, Yarn.struck.is_(None)),
        strangers=ask.sum(Yarn.count, ~drawn, ~child, Yarn.base_version.is_(None),
                          Yarn.kind.in_(("group", "pile")), Yarn.struck.is_(None)),
        cut=cut, made=made,
        lots=ask.count(DyeLot.id, DyeLot.bath.is_not(None), DyeLot.struck.is_(None)),
        old_lots=ask.count(DyeLot.id, DyeLot.bath.is_(None), DyeLot.struck.is_(None)),
        tags=ask.count(Tag.id, Tag.struck.is_(None)),
        tags_void=ask.count(Tag.id, Tag.void.is_not(None), Tag.struck.is_(None)),
        orders=ask.by(CustomerOrder.channel, func.count(), CustomerOrder.struck.is_(None)),
        orders_open=ask.open_orders(),
        customers=ask.count(Customer.id, Customer.struck.is_(None)),
        kits=ask.count(Kit.id, Kit.struck.is_(None)),
        states=states,
    )
