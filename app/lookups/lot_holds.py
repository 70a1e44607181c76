"""The holds that reached a lot, those that were lifted too, and what was cleared of them."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, bindparam, select
from sqlalchemy.orm import aliased

from app.lookups.fills import fills_after, fills_of
from app.lookups.holds import HoldFacts, hold_facts
from app.records import Clear, Cone, DeedRow, Hold
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Reach:
    """What lies above and below a lot, where a hold may hang."""

    lot: int
    bath: int | None
    yarn: frozenset[int]
    cones: frozenset[int]
    loads: frozenset[int]
    fills: frozenset[int]


@dataclass(frozen=True, slots=True)
class Cleared:
    """Yarn of the lot that was cleared of a hold, with the evidence."""

    hold: int
    evidence: str
    at: datetime
    person: str


@dataclass(frozen=True, slots=True)
class LotHold:
    """A hold that reaches or reached the lot; lifted by whom, when, with what words."""

    facts: HoldFacts
    lifted: datetime | None
    lifted_by: str | None
    cleared: tuple[Cleared, ...]


_LIFTED = aliased(DeedRow)
_HOLDS = (
    select(Hold.id, Hold.cone, Hold.yarn, Hold.lot, Hold.load, Hold.bath, Hold.fill,
           Hold.supplier_lot, _LIFTED.happened, _LIFTED.person)
    .outerjoin(_LIFTED, _LIFTED.seq == Hold.lifted).where(Hold.struck.is_(None)).order_by(Hold.id)
)
_CONES = select(Cone.id).where(
    Cone.supplier_lot == bindparam("batch"), Cone.struck.is_(None))
_CLEARS = (
    select(Clear.hold, Clear.yarn, Clear.evidence, DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == Clear.deed)
    .where(among(Clear.hold, "ids"), Clear.struck.is_(None)).order_by(Clear.id)
)


def lot_holds(connection: Connection, reach: Reach) -> tuple[LotHold, ...]:
    """Every hold that reaches the lot or did, the oldest first."""
    rows = {row.id: row for row in connection.execute(_HOLDS)
            if row.lot == reach.lot or (row.bath and row.bath == reach.bath)
            or row.yarn in reach.yarn or row.cone in reach.cones or row.load in reach.loads
            or (row.fill and not fills_after(connection, row.fill).isdisjoint(reach.fills))
            or (row.supplier_lot and _is_of_it(connection, row.supplier_lot, reach))}
    cleared = [row for row in connection.execute(_CLEARS, {"ids": listed(rows)})
               if row.yarn in reach.yarn]
    return tuple(
        LotHold(facts, rows[facts.id].happened, rows[facts.id].person, tuple(
            Cleared(row.hold, row.evidence, row.happened, row.person)
            for row in cleared if row.hold == facts.id))
        for facts in hold_facts(connection, rows))


def _is_of_it(connection: Connection, supplier_lot: int, reach: Reach) -> bool:
    """Whether the lot has yarn or powder of a maker's batch."""
    cones = connection.execute(_CONES, {"batch": supplier_lot}).scalars()
    return (not reach.cones.isdisjoint(cones)
            or not reach.fills.isdisjoint(fills_of(connection, supplier_lot)))
