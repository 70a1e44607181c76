"""What is known of a cone: what it weighed, what was drawn, and what it still gives."""

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from sqlalchemy import Connection, bindparam, func, select

from app.calculations.units import grams, metres, milligrams, millimetres
from app.calculations.winding import Yield, checked_tex, fibre_g, metres_in, winding_yield
from app.problems import NotFound
from app.records import (
    Base,
    BaseVersion,
    Cone,
    Delivery,
    Draw,
    PutUp,
    Reading,
    Supplier,
    SupplierLot,
    Waste,
)

PERMILLE = Decimal(1000)
END_WASTE_MM = 8_000  # lost at the two ends of a cone; common practice, no source


@dataclass(frozen=True, slots=True)
class ConeFacts:
    """One cone with what is left on it; lengths as wound."""

    id: int
    code: str
    base: int
    base_name: str
    base_version: int
    delivery: int
    arrived: datetime
    note_no: str
    opening_stock: bool
    supplier: str
    batch: str | None
    net_mg: int
    fibre_mg: int
    """Without spinning oil, at the agreed regain."""
    millitex: int
    checked: bool
    """The count was checked by weighing 100 m, not taken from the label."""
    drawn_mg: int
    drawn_mm: int
    waste_mg: int
    ended: bool

    @property
    def left_mm(self) -> int:
        """Length still to be wound, by weight and count, less what is lost at the ends."""
        ends = 0 if self.ended else END_WASTE_MM
        return max(0, self._whole_mm - self.drawn_mm - ends)

    @property
    def overdrawn(self) -> bool:
        """More was counted than it held: what is left is not known."""
        return self.drawn_mm > self._whole_mm

    @property
    def _whole_mm(self) -> int:
        return millimetres(metres_in(grams(self.fibre_mg), Decimal(self.millitex) / 1000))


_CONE = (
    select(Cone.code, Cone.delivery, Cone.base_version, Cone.gross_mg, Cone.tare_mg,
           Base.id.label("base"), Base.name.label("base_name"), SupplierLot.said,
           Supplier.name.label("supplier"), Delivery.arrived, Delivery.kind, Delivery.note_no,
           BaseVersion.millitex, BaseVersion.oil_permille, BaseVersion.regain_permille)
    .join(BaseVersion, BaseVersion.id == Cone.base_version)
    .join(Base, Base.id == BaseVersion.base)
    .join(SupplierLot, SupplierLot.id == Cone.supplier_lot)
    .join(Supplier, Supplier.id == SupplierLot.supplier)
    .join(Delivery, Delivery.id == Cone.delivery)
    .where(Cone.id == bindparam("cone"), Cone.struck.is_(None))
)
_DRAWN = select(func.coalesce(func.sum(Draw.mg), 0), func.coalesce(func.sum(Draw.mm), 0)).where(
    Draw.cone == bindparam("cone"), Draw.struck.is_(None))
_WASTED = select(func.coalesce(func.sum(Waste.mg), 0), func.count()).where(
    Waste.cone == bindparam("cone"), Waste.struck.is_(None))
_READ_OFF = select(Reading.value).where(
    Reading.cone == bindparam("cone"), Reading.kind == bindparam("kind"),
    Reading.struck.is_(None)).order_by(Reading.id.desc())


def cone_facts(connection: Connection, cone: int) -> ConeFacts:
    """All of one cone; raises NotFound."""
    row = connection.execute(_CONE, {"cone": cone}).first()
    if row is None:
        raise NotFound("This cone is not in the book.", "Receive it first.")
    drawn = connection.execute(_DRAWN, {"cone": cone}).one()
    wasted = connection.execute(_WASTED, {"cone": cone}).one()
    wrap = _read_off(connection, cone, "wrap mg")
    metered = _read_off(connection, cone, "moisture permille")
    agreed = Decimal(row.regain_permille) / PERMILLE
    now = agreed if metered is None else Decimal(metered) / PERMILLE
    fibre = fibre_g(grams(row.gross_mg - row.tare_mg), row.oil_permille / PERMILLE, now, agreed)
    return ConeFacts(
        id=cone, code=row.code, base=row.base, base_name=row.base_name,
        base_version=row.base_version, delivery=row.delivery, arrived=row.arrived,
        note_no=row.note_no, opening_stock=row.kind == "opening stock", supplier=row.supplier,
        batch=row.said, net_mg=row.gross_mg - row.tare_mg, fibre_mg=milligrams(fibre),
        millitex=row.millitex if wrap is None else int(checked_tex(grams(wrap), Decimal("0.1"))),
        checked=wrap is not None, drawn_mg=drawn[0], drawn_mm=drawn[1], waste_mg=wasted[0],
        ended=wasted[1] > 0,
    )


def cone_yield(connection: Connection, facts: ConeFacts) -> Yield:
    """What the rest of the cone gives in the put-ups of its base."""
    wound = {
        name: metres(turns * reel_mm)
        for name, turns, reel_mm in connection.execute(
            select(PutUp.name, PutUp.turns, PutUp.reel_mm)
            .where(PutUp.base_version == facts.base_version, PutUp.struck.is_(None))
        )
    }
    left = metres(facts.left_mm)
    skein = wound.get("skein", left + 1)
    return winding_yield(left, skein, wound.get("mini", skein), Decimal(0))


def cones_on_hand(connection: Connection) -> tuple[ConeFacts, ...]:
    """Cones that were not wound to their end, the oldest first."""
    ended = select(Waste.cone).where(Waste.cone.is_not(None), Waste.struck.is_(None))
    ids = connection.execute(
        select(Cone.id).where(Cone.struck.is_(None), Cone.id.not_in(ended)).order_by(Cone.id)
    ).scalars()
    return tuple(cone_facts(connection, cone) for cone in ids.all())


def _read_off(connection: Connection, cone: int, kind: str) -> int | None:
    return connection.execute(_READ_OFF, {"cone": cone, "kind": kind}).scalar()
