"""The makers' batches that a cone, or what is in a jar, came of, as their makers named them."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.lookups.fills import fill_at, fills_of, shares_of
from app.lookups.things import Found
from app.records import Cone, Supplier, SupplierLot
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Batch:
    """One batch, and what ever came of it: so many cones, or so many fillings of jars."""

    id: int
    said: str
    supplier: str
    cones: int
    fills: int

    @property
    def words(self) -> str:
        """'batch 7731 of Aske Mill'."""
        return f"batch {self.said} of {self.supplier}"


_NAMED = (
    select(SupplierLot.id, SupplierLot.said, Supplier.name)
    .join(Supplier, Supplier.id == SupplierLot.supplier)
    .where(among(SupplierLot.id, "ids"), SupplierLot.said.is_not(None))
)
_CONES = select(func.count()).select_from(Cone).where(Cone.struck.is_(None))


def batches_of(connection: Connection, found: Found, at: datetime) -> tuple[Batch, ...]:
    """Those of a cone, or of what was in a jar then, the most of it first; none not stated."""
    ids = _of_cone(connection, found.id) if found.kind == "cone" else (
        _in_jar(connection, found.id, at) if found.kind == "jar" else [])
    named = {row.id: row for row in connection.execute(_NAMED, {"ids": listed(ids)})}
    return tuple(
        Batch(one, named[one].said, named[one].name,
              connection.execute(_CONES.where(Cone.supplier_lot == one)).scalar_one(),
              len(fills_of(connection, one)))
        for one in ids if one in named)


def _of_cone(connection: Connection, cone: int) -> list[int]:
    return list(connection.execute(
        select(Cone.supplier_lot).where(Cone.id == cone)).scalars())


def _in_jar(connection: Connection, jar: int, at: datetime) -> list[int]:
    fill = fill_at(connection, jar, at)
    shares = () if fill is None else shares_of(connection, fill)
    return [one.supplier_lot for one in sorted(shares, key=lambda one: -one.share)]
