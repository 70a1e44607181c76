"""Holds as people ask about them: what was held, why, by whom and since when."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, func, select

from app.calculations.codes import shown
from app.lookups.studio import name_of
from app.records import (
    Cone,
    DeedRow,
    DyeLot,
    Fill,
    Hold,
    Jar,
    Load,
    Supplier,
    SupplierLot,
    Tag,
    TagOn,
)
from app.records.holds import SOURCES
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class HoldFacts:
    """One hold: the thing it was placed on, and whom to ask."""

    id: int
    source: tuple[str, int]
    """What it was placed on: cone, lot, load, bath, fill, yarn, maker's lot, and its number."""
    on: str
    """'cone C·0114·F', 'jar 3, fill 4', 'batch 7731 of Aske Mill', 'some skeins' and the like."""
    code: str | None
    """The code of what it is on, where that has one."""
    why: str
    person: str
    name: str | None
    since: datetime
    lifted: bool

    @property
    def ask(self) -> str:
        """'OW, Osk Wray' where the name is known."""
        return self.person if self.name is None else f"{self.person}, {self.name}"


_FIRST_LOT = (
    select(func.min(DyeLot.code)).where(DyeLot.bath == Hold.bath, DyeLot.struck.is_(None))
    .correlate(Hold).scalar_subquery()
)
_HOLDS = (
    select(Hold.id, Hold.why, Hold.lifted, Hold.cone, Hold.lot, Hold.load, Hold.bath, Hold.fill,
           Hold.yarn, Hold.supplier_lot, SupplierLot.said, Supplier.name.label("supplier"),
           Cone.code.label("cone_code"),
           func.coalesce(DyeLot.code, _FIRST_LOT).label("lot_code"), Load.step,
           Jar.code.label("jar_code"), Fill.number.label("fill_number"),
           Tag.mark, DeedRow.person, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Hold.deed)
    .outerjoin(Cone, Cone.id == Hold.cone).outerjoin(DyeLot, DyeLot.id == Hold.lot)
    .outerjoin(Load, Load.id == Hold.load)
    .outerjoin(SupplierLot, SupplierLot.id == Hold.supplier_lot)
    .outerjoin(Supplier, Supplier.id == SupplierLot.supplier)
    .outerjoin(Fill, Fill.id == Hold.fill).outerjoin(Jar, Jar.id == Fill.jar)
    .outerjoin(TagOn, (TagOn.yarn == Hold.yarn) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .outerjoin(Tag, Tag.id == TagOn.tag)
    .where(among(Hold.id, "ids"), Hold.struck.is_(None)).order_by(Hold.id)
)


def live_holds(connection: Connection) -> tuple[HoldFacts, ...]:
    """The holds that stand, the oldest first."""
    return hold_facts(connection, connection.execute(
        select(Hold.id).where(Hold.lifted.is_(None), Hold.struck.is_(None))).scalars().all())


def hold_facts(connection: Connection, holds: Iterable[int]) -> tuple[HoldFacts, ...]:
    """What is known of these holds, the oldest first."""
    return tuple(
        HoldFacts(row.id, _source(row), _on(row),
                  row.cone_code or row.lot_code or row.jar_code or row.mark, row.why, row.person,
                  name_of(connection, row.person), row.happened, row.lifted is not None)
        for row in connection.execute(_HOLDS, {"ids": listed(holds)}).all()
    )


def _source(row: Row[*tuple[Any, ...]]) -> tuple[str, int]:
    return next((kind, thing) for kind in SOURCES if (thing := getattr(row, kind)) is not None)


def _on(row: Row[*tuple[Any, ...]]) -> str:
    if row.cone:
        return f"cone {shown(row.cone_code)}"
    if row.lot or row.bath:
        lot = f"lot {shown(row.lot_code)}" if row.lot_code else "a lot without a code yet"
        return lot if row.lot else f"the bath of {lot}"
    if row.fill:
        return f"jar {int(row.jar_code[1:-1])}, fill {row.fill_number}"
    if row.supplier_lot:
        return f"batch {row.said or 'not stated'} of {row.supplier}"
    if row.load:
        return f"{row.step} {row.load}"
    return f"skein {shown(row.mark)}" if row.mark else "some skeins"
