"""The door: cones come in with their note, batch and weights."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import func, select

from app.calculations.codes import Kind, numbered
from app.problems import Refused
from app.records import (
    Base,
    BaseVersion,
    Cone,
    Delivery,
    Reading,
    Supplier,
    SupplierLot,
)
from app.store.deed import Deed

LEAST_NET_MG, MOST_NET_MG = 700_000, 2_200_000
COUNT_OFF = 0.03
ECRU_OFF = 150  # hundredths of Delta E


@dataclass(frozen=True, slots=True)
class ConeIn:
    """A cone at the door. No number: the next free one. No batch: not stated, on purpose."""

    gross_mg: int
    tare_mg: int
    batch: str | None
    number: int | None = None
    wrap_mg: int | None = None
    """Weight of 100 m, reeled off to check the count."""
    moisture_permille: int | None = None
    ecru_off: int | None = None
    """Difference of the undyed shade from the kept cone, in hundredths of Delta E."""


@dataclass(frozen=True, slots=True)
class DeliveryIn:
    """A delivery of one base with its note."""

    supplier: str
    note_no: str
    base: str
    arrived: datetime
    cones: tuple[ConeIn, ...]
    opening_stock: bool = False


def receive(deed: Deed, delivery: DeliveryIn) -> list[int]:
    """Take a delivery in: every cone gets its number; what looks off is said and kept.

    Refused: no cones, an unknown base, a weight that cannot be, a number that is taken.
    """
    version = _version_now(deed, delivery.base)
    numbers = _numbers(deed, delivery.cones)
    supplier = supplier_named(deed, delivery.supplier)
    row = deed.add(Delivery(
        supplier=supplier, kind="opening stock" if delivery.opening_stock else "delivery",
        note_no=delivery.note_no, arrived=delivery.arrived,
    ))
    batches = {cone.batch: _batch(deed, supplier, cone.batch) for cone in delivery.cones}
    cones = deed.add_all([
        Cone(code=numbered(Kind.CONE, number).text, delivery=row, base_version=version.id,
             supplier_lot=batches[cone.batch], gross_mg=cone.gross_mg, tare_mg=cone.tare_mg)
        for cone, number in zip(delivery.cones, numbers, strict=True)
    ])
    for cone, number, came in zip(cones, numbers, delivery.cones, strict=True):
        _read_off(deed, cone, came)
        for sentence in looks_off(numbered(Kind.CONE, number).grouped, came, version.millitex,
                                  opened=delivery.opening_stock):
            deed.note(sentence)
    if len(set(batches.values())) > 1:
        deed.note(batches_apart(len(set(batches.values()))))
    deed.say(f"took in {_cones(len(cones))} of {delivery.base}, note {delivery.note_no}")
    return cones


def _cones(count: int) -> str:
    return "1 cone" if count == 1 else f"{count} cones"


@dataclass(frozen=True, slots=True)
class _Version:
    id: int
    millitex: int


def _version_now(deed: Deed, base: str) -> _Version:
    row = deed.one(
        select(BaseVersion.id, BaseVersion.millitex).join(Base, Base.id == BaseVersion.base)
        .where(Base.name == base, Base.struck.is_(None), BaseVersion.struck.is_(None))
        .order_by(BaseVersion.number.desc())
    )
    if row is None:
        known = ", ".join(deed.connection.execute(
            select(Base.name).where(Base.struck.is_(None)).order_by(Base.name)).scalars())
        raise Refused(f"{base or 'No base'} is not described in the book; nothing was taken in.",
                      f"Describe it first, or choose one of: {known or 'none yet'}.")
    return _Version(row.id, row.millitex)


def _numbers(deed: Deed, cones: Sequence[ConeIn]) -> list[int]:
    if not cones:
        raise Refused("A delivery needs at least one cone; nothing was taken in.",
                      "Weigh its cones first.")
    newest = deed.value(select(Cone.code).order_by(func.length(Cone.code).desc(), Cone.code.desc()))
    last = max([int(newest[1:-1]) if newest else 0,
                *(cone.number for cone in cones if cone.number)])
    numbers = []
    for cone in cones:
        if cone.number is None:
            last += 1
        numbers.append(last if cone.number is None else cone.number)
    for place, (cone, number) in enumerate(zip(cones, numbers, strict=True), 1):
        _may_come_in(deed, cone, number, place, numbers.count(number))
    return numbers


def _may_come_in(deed: Deed, cone: ConeIn, number: int, place: int, times: int) -> None:
    code = numbered(Kind.CONE, number)
    if not 0 <= cone.tare_mg < cone.gross_mg:
        raise Refused(f"Cone {place}: {cone.gross_mg / 1000:g} g with its centre and "
                      f"{cone.tare_mg / 1000:g} g without cannot be; nothing was taken in.",
                      "Weigh it again.")
    if times > 1:
        raise Refused(f"{code.grouped} stands twice in this delivery; nothing was taken in.",
                      "Give each cone its own number.")
    if deed.value(select(Cone.id).where(Cone.code == code.text, Cone.struck.is_(None))):
        raise Refused(f"{code.grouped} is another cone; nothing was taken in.",
                      "Take the next free number: leave the field empty.")


def supplier_named(deed: Deed, supplier: str) -> int:
    """The mill or maker called so, put into the book where it is not there yet."""
    name = supplier.strip() or "not stated"
    row = deed.value(select(Supplier.id).where(Supplier.name == name, Supplier.struck.is_(None)))
    return row or deed.add(Supplier(name=name))


def _batch(deed: Deed, supplier: int, said: str | None) -> int:
    words = said.strip() or None if said else None
    row = deed.value(select(SupplierLot.id).where(
        SupplierLot.supplier == supplier, SupplierLot.struck.is_(None),
        SupplierLot.said.is_(None) if words is None else SupplierLot.said == words,
    ))
    return row or deed.add(SupplierLot(supplier=supplier, said=words))


def _read_off(deed: Deed, cone: int, came: ConeIn) -> None:
    readings = {"wrap mg": came.wrap_mg, "moisture permille": came.moisture_permille,
                "ecru centi-delta": came.ecru_off}
    deed.add_all([
        Reading(cone=cone, kind=kind, value=value)
        for kind, value in readings.items() if value is not None
    ])


def looks_off(name: str, came: ConeIn, millitex: int, *, opened: bool = False) -> tuple[str, ...]:
    """What looks wrong with a cone of a base of this count, as sentences that begin with its name.

    `opened`: it was in use before the book began, so it may hold little.
    """
    said, net = [], came.gross_mg - came.tare_mg
    if net > MOST_NET_MG or (net < LEAST_NET_MG and not opened):
        said.append(f"{name} holds {net / 1000:,.10g} g: a cone has 700 to 2,200 g as a rule. "
                    "Weigh it again.")
    if came.wrap_mg is not None:
        wanted = millitex / 10  # milligrams in 100 m
        off = (came.wrap_mg - wanted) / wanted
        if abs(off) > COUNT_OFF:
            said.append(f"{name}: 100 m weigh {came.wrap_mg / 1000:g} g, {abs(off) * 100:.1f} % "
                        f"{'over' if off > 0 else 'under'} the base's count. Wrap a second cone.")
    if came.ecru_off is not None and came.ecru_off > ECRU_OFF:
        said.append(f"{name} differs from the kept cone by {came.ecru_off / 100:g} undyed: "
                    "keep it for deep shades.")
    return tuple(said)


def batches_apart(batches: int) -> str:
    """What is said of so many batches in one delivery."""
    return f"{batches} batches in one delivery: wind and dye them apart."
