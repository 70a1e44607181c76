"""What the packer asks: the orders with what fills them, and a scanned tag with what stops it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select
from sqlalchemy.orm import aliased

from app.lookups.certainty import held_by
from app.lookups.counter import place_words
from app.lookups.holds import HoldFacts, hold_facts
from app.lookups.offers import Offer, offers
from app.lookups.orders import OrderNow, open_orders, order_now
from app.lookups.thread import thread
from app.lookups.told_faults import ToldFault, not_seen_good
from app.records import (
    Base,
    Colourway,
    CustomerOrder,
    DyeLot,
    OrderLine,
    Personal,
    Plate,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)


@dataclass(frozen=True, slots=True)
class Shelf:
    """A place that skeins lie on."""

    id: int
    words: str


@dataclass(frozen=True, slots=True)
class TagScanned:
    """What the packer must know of a tag; no skein where it hangs on none."""

    mark: str
    lot: int
    lot_code: str | None
    colourway: int
    colourway_name: str
    base: int
    base_name: str
    void: bool
    successor: str | None
    yarn: int | None
    put_up: str | None
    state: str | None
    ends: datetime | None
    customer: int | None
    """For whom it is put by, or who bought it."""
    name: str | None
    order: int | None
    order_number: str | None
    last_shelf: Shelf | None
    holds: tuple[HoldFacts, ...]
    told: tuple[ToldFault, ...]
    """Faults that were told of it, where nobody saw it good since."""


_AFTER = aliased(Tag)
_TAG = (
    select(Tag.mark, Tag.lot, DyeLot.code, DyeLot.colourway, Colourway.name, DyeLot.base,
           Base.name.label("base_name"), Tag.void, _AFTER.mark.label("successor"), TagOn.yarn,
           Yarn.put_up, Whereabouts.state, Whereabouts.ends,
           func.coalesce(Whereabouts.customer, CustomerOrder.customer).label("customer"),
           CustomerOrder.id.label("order_id"), CustomerOrder.number)
    .join(DyeLot, DyeLot.id == Tag.lot).join(Colourway, Colourway.id == DyeLot.colourway)
    .join(Base, Base.id == DyeLot.base).outerjoin(_AFTER, _AFTER.id == Tag.successor)
    .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .outerjoin(Yarn, Yarn.id == TagOn.yarn)
    .outerjoin(Whereabouts, (Whereabouts.yarn == TagOn.yarn) & Whereabouts.until.is_(None)
               & Whereabouts.struck.is_(None))
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .outerjoin(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(Tag.struck.is_(None))
)


Offered = Mapping[int, tuple[Offer, ...]]


def orders_to_pack(connection: Connection) -> tuple[tuple[OrderNow, ...], Offered]:
    """All open orders, the oldest first, and from which lots each of their lines can be filled."""
    found = open_orders(connection)
    return found, offers(connection, [line for order in found for line in order.lines])


def order_to_pack(connection: Connection, order: int) -> tuple[OrderNow | None, Offered]:
    """One order with the same; none where it was taken back."""
    found = order_now(connection, order)
    return found, offers(connection, found.lines) if found else {}


def scanned_for(
    connection: Connection, mark: str, order: int
) -> tuple[TagScanned | None, OrderNow | None]:
    """A tag and the order that it was scanned for, both as they stand now."""
    return tag_scanned(connection, mark), order_now(connection, order)


def tag_scanned(connection: Connection, mark: str) -> TagScanned | None:
    """The tag with this mark; none was never printed."""
    row = connection.execute(_TAG.where(Tag.mark == mark)).first()
    if row is None:
        return None
    name = None if row.customer is None else connection.execute(
        select(Personal.value).where(Personal.customer == row.customer, Personal.field == "name",
                                     Personal.struck.is_(None))).scalar()
    return TagScanned(
        row.mark, row.lot, row.code, row.colourway, row.name, row.base, row.base_name,
        row.void is not None, row.successor, row.yarn, row.put_up, row.state, row.ends,
        row.customer, name, row.order_id, row.number, _last_shelf(connection, row.yarn),
        _holds(connection, row.yarn), _told(connection, row.yarn))


def shelf_with(connection: Connection, code: str) -> Shelf | None:
    """The shelf that wears this plate."""
    row = connection.execute(
        select(Plate.id, Plate.kind, Plate.code, Plate.words)
        .where(Plate.code == code, Plate.struck.is_(None))).first()
    return None if row is None else Shelf(row.id, place_words(row.kind, row.code, row.words))


def _last_shelf(connection: Connection, yarn: int | None) -> Shelf | None:
    row = connection.execute(
        select(Plate.id, Plate.kind, Plate.code, Plate.words)
        .join(Whereabouts, Whereabouts.place == Plate.id)
        .where(Whereabouts.yarn == yarn, Whereabouts.state == "shelf",
               Whereabouts.struck.is_(None))
        .order_by(Whereabouts.since.desc(), Whereabouts.id.desc())).first()
    return None if row is None else Shelf(row.id, place_words(row.kind, row.code, row.words))


def _holds(connection: Connection, yarn: int | None) -> tuple[HoldFacts, ...]:
    if yarn is None:
        return ()
    found = thread(connection, [yarn])
    return hold_facts(connection, held_by(found, yarn)) if found.holds else ()


def _told(connection: Connection, yarn: int | None) -> tuple[ToldFault, ...]:
    return () if yarn is None else not_seen_good(connection, [yarn]).get(yarn, ())
