"""Holds as people ask about them: what was held, why, by whom and since when."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, select

from app.calculations.codes import shown
from app.lookups.studio import name_of
from app.records import Cone, DeedRow, DyeLot, Hold, Load
from app.records.holds import SOURCES
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class HoldFacts:
    """One hold: the thing it was placed on, and whom to ask."""

    id: int
    source: tuple[str, int]
    """What it was placed on: cone, lot, load or yarn, and its number."""
    on: str
    """'cone C·0114·F', 'lot 26·15·R6F', 'some skeins'."""
    why: str
    person: str
    name: str | None
    since: datetime
    lifted: bool

    @property
    def ask(self) -> str:
        """'OW, Osk Wray' where the name is known."""
        return self.person if self.name is None else f"{self.person}, {self.name}"


_HOLDS = (
    select(Hold.id, Hold.why, Hold.lifted, Hold.cone, Hold.lot, Hold.load, Hold.yarn,
           Cone.code.label("cone_code"), DyeLot.code.label("lot_code"), Load.step,
           DeedRow.person, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Hold.deed)
    .outerjoin(Cone, Cone.id == Hold.cone).outerjoin(DyeLot, DyeLot.id == Hold.lot)
    .outerjoin(Load, Load.id == Hold.load)
    .where(among(Hold.id, "ids"), Hold.struck.is_(None)).order_by(Hold.id)
)


def live_holds(connection: Connection) -> tuple[HoldFacts, ...]:
    """The holds that stand, the oldest first."""
    return hold_facts(connection, connection.execute(
        select(Hold.id).where(Hold.lifted.is_(None), Hold.struck.is_(None))).scalars().all())


def hold_facts(connection: Connection, holds: Iterable[int]) -> tuple[HoldFacts, ...]:
    """What is known of these holds, the oldest first."""
    return tuple(
        HoldFacts(row.id, _source(row), _on(row), row.why, row.person,
                  name_of(connection, row.person), row.happened, row.lifted is not None)
        for row in connection.execute(_HOLDS, {"ids": listed(holds)}).all()
    )


def _source(row: Row[*tuple[Any, ...]]) -> tuple[str, int]:
    return next((kind, thing) for kind in SOURCES if (thing := getattr(row, kind)) is not None)


def _on(row: Row[*tuple[Any, ...]]) -> str:
    if row.cone:
        return f"cone {shown(row.cone_code)}"
    if row.lot:
        return f"lot {shown(row.lot_code)}" if row.lot_code else "a lot without a code yet"
    return f"{row.step} {row.load}" if row.load else "some skeins"
