"""Yarn with a fault whose report is another case: what one came from never touched the other."""

from collections import defaultdict
from collections.abc import Collection, Mapping

from sqlalchemy import Connection, bindparam, select

from app.lookups.thread import Thing, thread
from app.lookups.walks import below
from app.records import Cause, Report, Sighting

_TOLD = (
    select(Report.id, Sighting.yarn).join(Sighting, Sighting.report == Report.id)
    .where(Report.fault == bindparam("fault"), Sighting.faulty == 1, Sighting.struck.is_(None),
           Report.struck.is_(None))
)
_CAUSES = (
    select(Cause.report, Cause.kind, Cause.thing).join(Report, Report.id == Cause.report)
    .where(Report.fault == bindparam("fault"), Cause.struck.is_(None)).order_by(Cause.id)
)
_OPEN_AS_STATED = (
    select(Report.id, Report.lot)
    .where(Report.fault == bindparam("fault"), Report.lot.is_not(None), Report.struck.is_(None))
)
_FAULT = select(Report.fault).where(Report.id == bindparam("report"), Report.struck.is_(None))
Told = Mapping[int, Collection[int]]


def other_cases(connection: Connection, fault: str, report: int | None = None) -> frozenset[int]:
    """Yarn with this fault that says nothing of this report, or of the open ones.

    A closed report counts on for open ones while yarn of theirs went through its cause too; for a
    closed one, all count that went through its cause. "Not found" settles nothing, and where all
    are closed and none is asked for, all of them count.
    """
    causes = {number: cause for number, cause in _causes(connection, fault).items()
              if cause[1] is not None}
    if not causes:
        return frozenset()
    told = _told(connection, fault)
    kept = _of_open(connection, told, causes)
    if report is not None and report in causes:
        kept = {report, *_of_one(connection, told, causes[report])}
    of_case = set[int]().union(*(told[number] for number in kept if number in told))
    return frozenset(set[int]().union(*told.values()) - of_case)


def open_of_case(connection: Connection, report: int) -> tuple[int, ...]:
    """Open reports of the same fault whose yarn went, or may have gone, through this one's cause.

    None where it is open itself, or where its cause is no thing that yarn goes through.
    """
    fault = connection.execute(_FAULT, {"report": report}).scalar()
    causes = _causes(connection, fault or "")
    cause = causes.get(report)
    if cause is None or cause[1] is None:
        return ()
    told = _told(connection, fault or "")
    for number, lot in connection.execute(_OPEN_AS_STATED, {"fault": fault}):
        if number not in told and lot is not None:
            told[number] = below(connection, "lot", lot)
    return tuple(sorted(number for number, yarn in told.items()
                        if number not in causes and cause in _met(connection, yarn)))


def _causes(connection: Connection, fault: str) -> dict[int, Thing]:
    """{report: the newest cause that was said}; it may be "not found"."""
    return {row.report: (row.kind, row.thing)
            for row in connection.execute(_CAUSES, {"fault": fault})}


def _told(connection: Connection, fault: str) -> dict[int, Collection[int]]:
    """{report: its faulty yarn}, of those that name some."""
    told: dict[int, set[int]] = defaultdict(set)
    for number, yarn in connection.execute(_TOLD, {"fault": fault}):
        told[number].add(yarn)
    return {**told}


def _of_one(connection: Connection, told: Told, cause: Thing) -> set[int]:
    return {number for number, yarn in told.items() if cause in _met(connection, yarn)}


def _of_open(connection: Connection, told: Told, causes: Mapping[int, Thing]) -> set[int]:
    still_open = {yarn for number, some in told.items() if number not in causes for yarn in some}
    if not still_open:
        return {*told}
    met = _met(connection, still_open)
    return {number for number in told if number not in causes or causes[number] in met}


def _met(connection: Connection, yarn: Collection[int]) -> set[Thing]:
    return {thing for own in thread(connection, yarn).own.values() for thing in own}
