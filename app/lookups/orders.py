"""Open orders: what each still wants, what is taken for it, and what was sent."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, and_, exists, func, or_, select

from app.calculations.codes import shown
from app.lookups.left_to_sell import FILLED
from app.records import (
    Base,
    Colourway,
    CustomerOrder,
    DeedRow,
    DyeLot,
    OrderLine,
    Personal,
    Tag,
    TagOn,
    Touched,
    Whereabouts,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class OnLine:
    """A skein that is taken for a line, or was sent with it."""

    yarn: int
    mark: str
    lot: int
    lot_code: str | None
    sent: bool


@dataclass(frozen=True, slots=True)
class LineNow:
    """A line of an order as it stands; what its words were not read as is none."""

    id: int
    what: str
    wanted: int
    filled: int
    over: bool
    colourway: int | None
    colourway_name: str | None
    swatch: str | None
    base: int | None
    base_name: str | None
    put_up: str | None
    lot: int | None
    lot_code: str | None
    skeins: tuple[OnLine, ...] = ()

    @property
    def open(self) -> int:
        """How many are still to be taken."""
        return 0 if self.over else max(0, self.wanted - self.filled)

    @property
    def taken(self) -> int:
        """How many lie ready to be sent."""
        return sum(not one.sent for one in self.skeins)

    @property
    def is_read(self) -> bool:
        """Whether its words name any yarn of the studio."""
        return not (self.colourway is None and self.base is None and self.lot is None)

    @property
    def name(self) -> str:
        """'Ferry Ledger, Tarnfield 4-ply, mini': as it was read, else as it was said."""
        if self.colourway_name is None:
            return self.what
        form = None if self.put_up == "skein" else self.put_up
        return ", ".join(filter(None, (self.colourway_name, self.base_name, form)))

    @property
    def lots(self) -> tuple[str, ...]:
        """The lots that it was filled from so far."""
        return tuple(dict.fromkeys(shown(one.lot_code or "?") for one in self.skeins))


@dataclass(frozen=True, slots=True)
class OrderNow:
    """An order with its lines; no name where the buyer is not known or was removed."""

    id: int
    number: str
    placed: datetime
    customer: int | None
    name: str | None
    lines: tuple[LineNow, ...]

    @property
    def wanted(self) -> int:
        """Skeins, minis and balls that it wants in all, without what was called off."""
        return sum(line.filled if line.over else line.wanted for line in self.lines)

    @property
    def filled(self) -> int:
        """How many of these are taken or sent."""
        return sum(line.filled for line in self.lines)

    @property
    def taken(self) -> int:
        """How many lie ready to be sent."""
        return sum(line.taken for line in self.lines)

    @property
    def open(self) -> int:
        """How many are still to be taken."""
        return sum(line.open for line in self.lines)


@dataclass(frozen=True, slots=True)
class Parcel:
    """What left with an order at one moment."""

    number: str
    name: str | None
    count: int
    sent: datetime


_LINES = (
    select(OrderLine.id, OrderLine.customer_order, OrderLine.what, OrderLine.wanted,
           FILLED.label("filled"), OrderLine.over, OrderLine.put_up, OrderLine.lot, DyeLot.code,
           OrderLine.colourway, Colourway.name.label("colourway_name"), Colourway.swatch,
           OrderLine.base, Base.name.label("base_name"))
    .outerjoin(DyeLot, DyeLot.id == OrderLine.lot)
    .outerjoin(Colourway, Colourway.id == OrderLine.colourway)
    .outerjoin(Base, Base.id == OrderLine.base)
    .where(among(OrderLine.customer_order, "ids"), OrderLine.struck.is_(None))
    .order_by(OrderLine.id)
)
_ON_LINES = (
    select(Whereabouts.line, Whereabouts.yarn, Whereabouts.state, Tag.mark, Tag.lot, DyeLot.code)
    .join(TagOn, (TagOn.yarn == Whereabouts.yarn) & TagOn.until.is_(None)
          & TagOn.struck.is_(None))
    .join(Tag, Tag.id == TagOn.tag).join(DyeLot, DyeLot.id == Tag.lot)
    .where(among(Whereabouts.line, "ids"), Whereabouts.until.is_(None),
           Whereabouts.struck.is_(None))
    .order_by(Whereabouts.since, Whereabouts.id)
)
_ORDERS = (
    select(CustomerOrder.id, CustomerOrder.number, CustomerOrder.placed, CustomerOrder.customer)
    .where(among(CustomerOrder.id, "ids"), CustomerOrder.struck.is_(None))
    .order_by(CustomerOrder.placed, CustomerOrder.id)
)
_NAMES = (
    select(Personal.customer, Personal.value)
    .where(among(Personal.customer, "ids"), Personal.field == "name",
           Personal.value.is_not(None), Personal.struck.is_(None)).order_by(Personal.id)
)
_ON_THIS_LINE = (Whereabouts.line == OrderLine.id) & Whereabouts.struck.is_(None)
_SENT = (
    select(func.count(func.distinct(Whereabouts.yarn)))
    .where(_ON_THIS_LINE, Whereabouts.state == "sent").scalar_subquery()
)
_READY = exists().where(_ON_THIS_LINE, Whereabouts.state == "taken", Whereabouts.until.is_(None))
_TO_DO = (
    select(OrderLine.customer_order).distinct()
    .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(OrderLine.struck.is_(None), CustomerOrder.struck.is_(None),
           or_(and_(OrderLine.over.is_(None), OrderLine.wanted > _SENT),
               and_(OrderLine.over.is_not(None), _READY)))
)
_NEWEST = select(DeedRow.seq, DeedRow.name, DeedRow.happened).order_by(DeedRow.seq.desc())
_PARCELS = (
    select(Touched.deed, CustomerOrder.number, CustomerOrder.customer,
           func.count().label("skeins"))
    .join(Whereabouts, Whereabouts.id == Touched.row)
    .join(OrderLine, OrderLine.id == Whereabouts.line)
    .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(among(Touched.deed, "ids"), Touched.tbl == Whereabouts.__tablename__,
           Whereabouts.state == "sent", Whereabouts.struck.is_(None))
    .group_by(Touched.deed, CustomerOrder.id).order_by(Touched.deed.desc())
)
_PACKED = ("send", "send_parcel")
_LOOKED_AT = 1_500  # newest entries: more than any day has


def open_orders(connection: Connection) -> tuple[OrderNow, ...]:
    """Orders that still want something, or have something ready to be sent; the oldest first."""
    return orders_now(connection, connection.execute(_TO_DO).scalars().all())


def order_now(connection: Connection, order: int) -> OrderNow | None:
    """One order as it stands; none where it was taken back."""
    return next(iter(orders_now(connection, [order])), None)


def orders_now(connection: Connection, orders: Iterable[int]) -> tuple[OrderNow, ...]:
    """These orders as they stand, the oldest first."""
    ids = listed(orders)
    rows = connection.execute(_ORDERS, {"ids": ids}).all()
    lines = connection.execute(_LINES, {"ids": ids}).all()
    on: dict[int, list[OnLine]] = {}
    for row in connection.execute(_ON_LINES, {"ids": listed(line.id for line in lines)}):
        on.setdefault(row.line, []).append(
            OnLine(row.yarn, row.mark, row.lot, row.code, row.state == "sent"))
    names = _names(connection, [row.customer for row in rows])
    return tuple(
        OrderNow(row.id, row.number, row.placed, row.customer, names.get(row.customer),
                 tuple(_line(line, on.get(line.id, ())) for line in lines
                       if line.customer_order == row.id))
        for row in rows)


def sent_since(connection: Connection, moment: datetime) -> tuple[Parcel, ...]:
    """Parcels that left since then, the last first; sales at the till are none."""
    newest = connection.execute(_NEWEST.limit(_LOOKED_AT)).all()
    sent = {row.seq: row.happened for row in newest
            if row.name in _PACKED and row.happened >= moment}
    rows = connection.execute(_PARCELS, {"ids": listed(sent)}).all()
    names = _names(connection, [row.customer for row in rows])
    return tuple(Parcel(row.number, names.get(row.customer), row.skeins, sent[row.deed])
                 for row in rows)


def _line(row: Row[*tuple[Any, ...]], skeins: Sequence[OnLine]) -> LineNow:
    return LineNow(row.id, row.what, row.wanted, row.filled, row.over is not None, row.colourway,
                   row.colourway_name, row.swatch, row.base, row.base_name, row.put_up, row.lot,
                   row.code, tuple(skeins))


def _names(connection: Connection, customers: Iterable[int | None]) -> dict[int | None, str]:
    ids = listed({customer for customer in customers if customer is not None})
    return {row.customer: row.value for row in connection.execute(_NAMES, {"ids": ids})}
