"""What yarn with a fault shares with yarn of an earlier report: the second complaint tells more."""

from collections.abc import Collection, Iterable
from datetime import datetime, timedelta

from sqlalchemy import Connection, select

from app.calculations.evidence import Suspect
from app.lookups.suspect_names import named
from app.lookups.thread import Thing, thread
from app.lookups.walks import below
from app.records import DeedRow, Report, Sighting

WITHIN = timedelta(days=180)
"""Two complaints further apart than this are not held together; common practice, no source."""
KINDS = ("cone", "fill", "load")


def shared_with_earlier(
    connection: Connection, fault: str, yarn: Collection[int], lot: int | None, at: datetime
) -> tuple[Suspect, ...]:
    """Cones, jar fills and loads that yarn of an earlier report of this fault went through too.

    What was stated without a tag stands for its whole lot.
    """
    told = connection.execute(
        select(Report.id, Report.lot).join(DeedRow, DeedRow.seq == Report.deed)
        .where(Report.fault == fault, Report.struck.is_(None),
               DeedRow.happened > at - WITHIN, DeedRow.happened <= at)).all()
    seen = connection.execute(
        select(Sighting.yarn).where(Sighting.report.in_([row.id for row in told]),
                                    Sighting.faulty == 1, Sighting.struck.is_(None))).scalars()
    mine = _with_lots(connection, yarn, [lot])
    others = set(_with_lots(connection, seen, [row.lot for row in told])) - set(yarn)
    if not others:
        return ()
    both = _went_through(connection, mine) & _went_through(connection, others)
    return tuple(sorted(named(connection, both, {}).values()))


def _with_lots(
    connection: Connection, yarn: Iterable[int], lots: Iterable[int | None]
) -> set[int]:
    stated = {row for lot in set(lots) if lot is not None for row in below(connection, "lot", lot)}
    return {*yarn, *stated}


def _went_through(connection: Connection, yarn: Collection[int]) -> set[Thing]:
    return {thing for own in thread(connection, yarn).own.values() for thing in own
            if thing[0] in KINDS and thing[1] is not None}
