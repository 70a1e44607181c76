"""What came in at the door, what is left of it, and what the next delivery may be called."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.lookups.cones import ConeFacts, cone_yield, cones_on_hand
from app.records import Base, BaseVersion, Cone, Delivery, Draw, Supplier, SupplierLot, Yarn

JOINED = " and "
"""Between the two threads of a skein over a join, which is neither cone's own tie."""


@dataclass(frozen=True, slots=True)
class DeliveryRow:
    """A delivery as the door sees it."""

    id: int
    arrived: datetime
    opening_stock: bool
    supplier: str
    note_no: str
    base: str
    cones: int
    net_mg: int


def last_deliveries(connection: Connection, limit: int = 6) -> tuple[DeliveryRow, ...]:
    """The newest deliveries, the newest first."""
    rows = connection.execute(
        select(Delivery.id, Delivery.arrived, Delivery.kind, Delivery.note_no,
               func.coalesce(Supplier.name, "not stated").label("supplier"),
               func.min(Base.name).label("base"), func.count(Cone.id).label("cones"),
               func.sum(Cone.gross_mg - Cone.tare_mg).label("net_mg"))
        .join(Cone, Cone.delivery == Delivery.id)
        .join(BaseVersion, BaseVersion.id == Cone.base_version)
        .join(Base, Base.id == BaseVersion.base)
        .outerjoin(Supplier, Supplier.id == Delivery.supplier)
        .where(Delivery.struck.is_(None), Cone.struck.is_(None))
        .group_by(Delivery.id, Supplier.name)
        .order_by(Delivery.arrived.desc(), Delivery.id.desc()).limit(limit)
    )
    return tuple(
        DeliveryRow(row.id, row.arrived, row.kind == "opening stock", row.supplier, row.note_no,
                    row.base, row.cones, row.net_mg)
        for row in rows
    )


@dataclass(frozen=True, slots=True)
class ConeOnHand:
    """A cone that was not wound to its end; `tie` is the colour it wears, if any was wound."""

    id: int
    code: str
    base: str
    batch: str | None
    net_mg: int
    left_mm: int
    skeins: int
    begun: bool
    tie: str | None


def on_hand(connection: Connection) -> tuple[ConeOnHand, ...]:
    """All cones on hand, the oldest first."""
    return tuple(_cone(connection, facts) for facts in cones_on_hand(connection))


def _cone(connection: Connection, facts: ConeFacts) -> ConeOnHand:
    gives = cone_yield(connection, facts)
    ties = connection.execute(
        select(Yarn.tie).join(Draw, Draw.yarn == Yarn.id)
        .where(Draw.cone == facts.id, Draw.struck.is_(None), Yarn.tie.is_not(None))
        .order_by(Draw.id)
    ).scalars()
    return ConeOnHand(
        facts.id, facts.code, facts.base_name, facts.batch, facts.net_mg, facts.left_mm,
        gives.skeins, facts.drawn_mm > 0,
        next((tie for tie in ties if tie and JOINED not in tie), None),
    )


@dataclass(frozen=True, slots=True)
class BaseOnHand:
    """Cones on hand of one base."""

    base: str
    cones: int
    begun: int
    skeins: int


def on_hand_by_base(connection: Connection) -> tuple[BaseOnHand, ...]:
    """Every base of which there are cones, by name."""
    by_base: dict[str, list[ConeOnHand]] = {}
    for cone in on_hand(connection):
        by_base.setdefault(cone.base, []).append(cone)
    return tuple(
        BaseOnHand(base, len(mine), sum(one.begun for one in mine), sum(one.skeins for one in mine))
        for base, mine in sorted(by_base.items())
    )


@dataclass(frozen=True, slots=True)
class AtTheDoor:
    """What the door offers, so that little has to be typed."""

    suppliers: tuple[str, ...]
    next_cone: int
    """Number of the next new cone."""


def at_the_door(connection: Connection) -> AtTheDoor:
    """Names of the suppliers who sent something before, and the next free number of a cone."""
    newest = connection.execute(
        select(Cone.code).order_by(func.length(Cone.code).desc(), Cone.code.desc()).limit(1)
    ).scalar()
    names = connection.execute(
        select(Supplier.name).where(Supplier.struck.is_(None)).order_by(Supplier.name)
    ).scalars()
    return AtTheDoor(tuple(names), int(newest[1:-1]) + 1 if newest else 1)


def batches_of(connection: Connection, supplier: str) -> tuple[str, ...]:
    """Batches that this supplier sent before, the newest first."""
    return tuple(said for said in connection.execute(
        select(SupplierLot.said).join(Supplier, Supplier.id == SupplierLot.supplier)
        .where(Supplier.name == supplier, SupplierLot.struck.is_(None))
        .order_by(SupplierLot.id.desc())
    ).scalars() if said)
