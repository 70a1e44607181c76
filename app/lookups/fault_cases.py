"""Yarn with a fault whose report is another case: what one came from never touched the other."""

from collections import defaultdict
from collections.abc import Collection, Mapping

from sqlalchemy import Connection, bindparam, select

from app.lookups.thread import Thing, thread
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
Told = Mapping[int, Collection[int]]


def other_cases(connection: Connection, fault: str, report: int | None = None) -> frozenset[int]:
    """Yarn with this fault that says nothing of this report, or of the open ones.

    A closed report counts on for open ones while yarn of theirs went through its cause too; for a
    closed one, all count that went through its cause. "Not found" settles nothing, and where all
    are closed and none is asked for, all of them count.
    """
    causes: dict[int, Thing] = {}
    for row in connection.execute(_CAUSES, {"fault": fault}):
        causes[row.report] = row.kind, row.thing
    causes = {number: cause for number, cause in causes.items() if cause[1] is not None}
    if not causes:
        return frozenset()
    told: dict[int, set[int]] = defaultdict(set)
    for number, yarn in connection.execute(_TOLD, {"fault": fault}):
        told[number].add(yarn)
    kept = _of_open(connection, told, causes)
    if report is not None and report in causes:
        kept = {report, *_of_one(connection, told, causes[report])}
    of_case = set[int]().union(*(told[number] for number in kept if number in told))
    return frozenset(set[int]().union(*told.values()) - of_case)


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
