"""Yarn that met a suspect and wears no tag: where it lies, and what eyes should look for on it."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.evidence import Suspect
from app.lookups.certainty import nearest
from app.lookups.discs import disc_of
from app.lookups.piles import look_for
from app.lookups.present import HERE, Leaf, leaves
from app.lookups.shared_faults import shared_with_earlier
from app.lookups.things import Found, lot_found
from app.lookups.thread import Thread, thread
from app.lookups.untagged import wearing
from app.lookups.walks import below
from app.records import Cause, Report

_STEPS = {"group": "on its cord", "pile": "counted, not tagged"}
_OF_A_DYE = ("off shade", "bleed")
"""Faults that a jar fill may give; any other is looked for only where a cone or a wash is shared.
"""
_OPEN = (
    select(Report.fault).where(
        Report.struck.is_(None),
        ~select(Cause.id).where(Cause.report == Report.id, Cause.struck.is_(None)).exists())
    .distinct().order_by(Report.fault)
)


@dataclass(frozen=True, slots=True)
class MetUntagged:
    """So many in one place that went through a thing, or may have, and wear no tag."""

    count: int
    put_up: str
    step: str
    """'on its cord', 'counted, not tagged', or where a single one lies."""
    disc: str | None
    lot: str | None


def met_untagged(connection: Connection, kind: str, thing: int) -> tuple[MetUntagged, ...]:
    """What came of a cone, lot, load or jar fill and no tag tells of yet, by cord and pile."""
    found = [leaf for leaf in leaves(connection, below(connection, kind, thing))
             if leaf.kind in _STEPS or leaf.state in HERE]
    worn = wearing(connection, (leaf.yarn for leaf in found))
    bare = [leaf for leaf in found
            if leaf.yarn not in worn and leaf.state != "missing at a count"]
    above = thread(connection, [leaf.yarn for leaf in bare])
    return tuple(_told(connection, above, leaf) for leaf in bare)


def one_lot_of(connection: Connection, rows: Sequence[int]) -> Found | None:
    """The lot that all of these rows are of; none where they are of several or of none."""
    above = thread(connection, rows)
    lots = {lot for row in rows for lot in nearest(above, row, "lot")}
    lot = lots.pop() if len(lots) == 1 else None
    return None if lot is None else lot_found(connection, lot)


def to_look_for(
    connection: Connection, rows: Sequence[int], at: datetime
) -> tuple[str, ...]:
    """What eyes should look for on a cord: joins, a hold, and open faults of yarn near to it.

    Near is what shares a cone or a wash with it, or for the shade a jar fill.
    """
    sentences = list(look_for(connection, rows))
    for fault in connection.execute(_OPEN).scalars().all():
        shared = _looked_for(fault, shared_with_earlier(connection, fault, rows, None, at))
        if shared:
            sentences.append(
                f"Look for “{fault}”: it was told of yarn that shares "
                f"{', '.join(str(one) for one in shared[:2])} with this, and the cause is open.")
    return tuple(sentences)


def _looked_for(fault: str, shared: Collection[Suspect]) -> list[Suspect]:
    return [one for one in shared if one.kind == "cone" or fault in _OF_A_DYE
            or one.kind.startswith("wash")]


def _told(connection: Connection, above: Thread, leaf: Leaf) -> MetUntagged:
    lots = nearest(above, leaf.yarn, "lot") - {None}
    lot = next(iter(lots)) if len(lots) == 1 else None
    return MetUntagged(
        leaf.count, leaf.put_up, _STEPS.get(leaf.kind, leaf.state), disc_of(connection, leaf.yarn),
        None if lot is None else lot_found(connection, lot).shown)
