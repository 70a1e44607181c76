"""Faults that were told of skeins, with what became of the telling: closed, or seen good since."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.calculations.moments import day_words
from app.records import Cause, DeedRow, Report, Sighting
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class ToldFault:
    """One kind of fault of one skein, as it was told last."""

    fault: str
    report: int
    at: datetime
    cause: str | None
    """What the owner says it came from, "not found" too; none while nobody closed the report."""
    seen_good: bool = False
    """Whether somebody looked for it later and found none."""


_NEWEST = (
    select(func.max(Cause.id)).where(Cause.report == Report.id, Cause.struck.is_(None))
    .correlate(Report).scalar_subquery()
)
_SIGHTINGS = (
    select(Sighting.yarn, Sighting.faulty, Report.id.label("report"), Report.fault,
           DeedRow.happened, func.coalesce(func.nullif(Cause.words, ""), Cause.kind).label("cause"))
    .join(DeedRow, DeedRow.seq == Sighting.deed)
    .outerjoin(Report, Report.id == Sighting.report).outerjoin(Cause, Cause.id == _NEWEST)
    .where(among(Sighting.yarn, "ids"), Sighting.struck.is_(None), Report.struck.is_(None))
    .order_by(DeedRow.happened, Sighting.id)
)


def faults_told(
    connection: Connection, yarn: Iterable[int]
) -> dict[int, Mapping[str, ToldFault]]:
    """{skein: {fault: how it was told last}}; skeins of which nothing was told are left out.

    A good look is one at the fault itself, or at all of the skein.
    """
    found: dict[int, dict[str, ToldFault]] = {}
    for row in connection.execute(_SIGHTINGS, {"ids": listed(yarn)}):
        if row.faulty:
            found.setdefault(row.yarn, {})[row.fault] = ToldFault(
                row.fault, row.report, row.happened, row.cause)
        else:
            told = found.get(row.yarn, {})
            for fault in told if row.fault is None else told.keys() & {row.fault}:
                told[fault] = replace(told[fault], seen_good=True)
    return dict(found)


def not_seen_good(
    connection: Connection, yarn: Iterable[int]
) -> dict[int, tuple[ToldFault, ...]]:
    """{skein: what is to be said before it goes to anybody}; other skeins are left out."""
    found = {row: tuple(one for one in told.values() if not one.seen_good)
             for row, told in faults_told(connection, yarn).items()}
    return {row: told for row, told in found.items() if told}


def told_words(one: ToldFault, of: str) -> str:
    """'“streak” was told of this skein on 12 May 2026; nobody closed it.'"""
    became = "nobody closed it" if one.cause is None else f"its cause was {one.cause}"
    return f"“{one.fault}” was told of {of} on {day_words(one.at)}; {became.rstrip('.')}."
