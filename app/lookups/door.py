"""What the door asks before cones come in, and what goes on their cards afterwards."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.records import Base, BaseVersion, Cone, Delivery, Supplier, SupplierLot
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class BaseNow:
    """A base as it is described now, for the cones that come in next."""

    name: str
    fibre: str
    millitex: int


def bases_now(connection: Connection) -> tuple[BaseNow, ...]:
    """Every base that is described, by name, in its newest version."""
    newest = (
        select(BaseVersion.base, func.max(BaseVersion.number).label("number"))
        .where(BaseVersion.struck.is_(None)).group_by(BaseVersion.base).subquery()
    )
    rows = connection.execute(
        select(Base.name, BaseVersion.fibre, BaseVersion.millitex)
        .join(newest, newest.c.base == Base.id)
        .join(BaseVersion, (BaseVersion.base == Base.id) & (BaseVersion.number == newest.c.number))
        .where(Base.struck.is_(None)).order_by(Base.name)
    )
    return tuple(BaseNow(row.name, row.fibre, row.millitex) for row in rows)


@dataclass(frozen=True, slots=True)
class CameBefore:
    """Cones of the same note and base that are in the book already."""

    supplier: str
    arrived: datetime
    cones: int


def came_before(connection: Connection, note_no: str, base: str) -> tuple[CameBefore, ...]:
    """By whom and when cones of this base came in on a note of this number, the first first."""
    rows = connection.execute(
        select(Supplier.name, func.min(Delivery.arrived).label("first"), func.count(Cone.id))
        .join(Supplier, Supplier.id == Delivery.supplier).join(Cone, Cone.delivery == Delivery.id)
        .join(BaseVersion, BaseVersion.id == Cone.base_version)
        .join(Base, Base.id == BaseVersion.base)
        .where(Delivery.note_no == note_no, Base.name == base, Delivery.kind == "delivery",
               Delivery.struck.is_(None), Cone.struck.is_(None))
        .group_by(Supplier.name).order_by("first")
    )
    return tuple(CameBefore(*row) for row in rows)


@dataclass(frozen=True, slots=True)
class ConeCard:
    """What is written on the card inside a cone."""

    code: str
    base: str
    batch: str | None
    gross_mg: int
    tare_mg: int


def cone_cards(connection: Connection, cones: Iterable[int]) -> tuple[ConeCard, ...]:
    """The cards of these cones that are in the book, in the order they came in."""
    rows = connection.execute(
        select(Cone.code, Base.name, SupplierLot.said, Cone.gross_mg, Cone.tare_mg)
        .join(BaseVersion, BaseVersion.id == Cone.base_version)
        .join(Base, Base.id == BaseVersion.base)
        .join(SupplierLot, SupplierLot.id == Cone.supplier_lot)
        .where(among(Cone.id, "ids"), Cone.struck.is_(None)).order_by(Cone.id),
        {"ids": listed(cones)},
    )
    return tuple(ConeCard(*row) for row in rows)


def numbers_taken(connection: Connection) -> frozenset[int]:
    """Every number that a cone has; one whose delivery was taken back is free again."""
    codes = connection.execute(select(Cone.code).where(Cone.struck.is_(None))).scalars()
    return frozenset(int(code[1:-1]) for code in codes)
