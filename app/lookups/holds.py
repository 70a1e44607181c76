"""Holds as people ask about them: what was held, why, by whom and since when."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.studio import name_of
from app.records import Cone, DeedRow, DyeLot, Hold, Load
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class HoldFacts:
    """One hold: the thing it was placed on, and whom to ask."""

    id: int
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
    select(Hold.id, Hold.why, Hold.lifted, Cone.code.label("cone"), DyeLot.code.label("lot"),
           Hold.lot.label("any_lot"), Load.step, Load.id.label("load"), DeedRow.person,
           DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Hold.deed)
    .outerjoin(Cone, Cone.id == Hold.cone).outerjoin(DyeLot, DyeLot.id == Hold.lot)
    .outerjoin(Load, Load.id == Hold.load)
    .where(among(Hold.id, "ids"), Hold.struck.is_(None)).order_by(Hold.id)
)


def hold_facts(connection: Connection, holds: Iterable[int]) -> tuple[HoldFacts, ...]:
    """What is known of these holds, the oldest first."""
    rows = connection.execute(_HOLDS, {"ids": listed(holds)}).all()
    return tuple(
        HoldFacts(row.id, _on(row.cone, row.any_lot, row.lot, row.step, row.load), row.why,
                  row.person, name_of(connection, row.person), row.happened,
                  row.lifted is not None)
        for row in rows
    )


def _on(
    cone: str | None, lot: int | None, code: str | None, step: str | None, load: int | None
) -> str:
    if cone:
        return f"cone {shown(cone)}"
    if lot:
        return f"lot {shown(code)}" if code else "a lot without a code yet"
    return f"{step} {load}" if load else "some skeins"
