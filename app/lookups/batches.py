"""The maker's batch that a cone came of: what was said to be in it, and how many cones are."""

from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.records import Cone, Supplier, SupplierLot


@dataclass(frozen=True, slots=True)
class Batch:
    """One batch as its maker named it, and the cones of it that ever came."""

    id: int
    said: str
    supplier: str
    cones: int

    @property
    def words(self) -> str:
        """'batch 7731 of Aske Mill'."""
        return f"batch {self.said} of {self.supplier}"


def batch_of(connection: Connection, cone: int) -> Batch | None:
    """The batch of a cone; none where it was not stated."""
    row = connection.execute(
        select(SupplierLot.id, SupplierLot.said, Supplier.name)
        .join(Cone, Cone.supplier_lot == SupplierLot.id)
        .join(Supplier, Supplier.id == SupplierLot.supplier).where(Cone.id == cone)).first()
    if row is None or row.said is None:
        return None
    cones = connection.execute(
        select(func.count()).where(Cone.supplier_lot == row.id, Cone.struck.is_(None))
    ).scalar_one()
    return Batch(row.id, row.said, row.name, cones)
