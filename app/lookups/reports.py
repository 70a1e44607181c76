"""Faults that were told or seen, as the owner reads them: what, on which skeins, what it was."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Select, func, select

from app.calculations.codes import shown
from app.lookups.skeins import last_marks
from app.records import Cause, DeedRow, DyeLot, Photo, Report, Sighting
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class ReportRow:
    """One report; no cause while the owner has not said one."""

    id: int
    fault: str
    where_on: str
    repeat_mm: int | None
    seen_at: str
    words: str
    at: datetime
    person: str
    customer: int | None
    lot: str | None
    """The lot that was stated, where no tag was read."""
    count: int | None
    marks: tuple[str, ...]
    """Marks of the faulty skeins; one without a tag is left out."""
    faulty: int
    good: int
    cause: str | None
    photos: int


_REPORTS = (
    select(Report.id, Report.fault, Report.where_on, Report.repeat_mm, Report.seen_at,
           Report.words, Report.customer, Report.count.label("stated"), DyeLot.code,
           DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == Report.deed).outerjoin(DyeLot, DyeLot.id == Report.lot)
    .where(Report.struck.is_(None))
)
_SIGHTINGS = (
    select(Sighting.report, Sighting.yarn, Sighting.faulty)
    .where(among(Sighting.report, "ids"), Sighting.struck.is_(None)).order_by(Sighting.id)
)
_CAUSES = (
    select(Cause.report, Cause.kind, Cause.words)
    .where(among(Cause.report, "ids"), Cause.struck.is_(None)).order_by(Cause.id)
)
_PHOTOS = (
    select(Photo.report, func.count())
    .where(among(Photo.report, "ids"), Photo.struck.is_(None), Photo.picture.is_not(None))
    .group_by(Photo.report)
)


def reports(connection: Connection, limit: int = 200) -> tuple[ReportRow, ...]:
    """The newest reports, those without a cause first."""
    rows = _read(connection, _REPORTS.order_by(Report.id.desc()).limit(limit))
    return tuple(sorted(rows, key=lambda row: row.cause is not None))


def report(connection: Connection, number: int) -> ReportRow | None:
    """One report."""
    return next(iter(_read(connection, _REPORTS.where(Report.id == number))), None)


def _read(connection: Connection, question: Select[*tuple[Any, ...]]) -> list[ReportRow]:
    rows = connection.execute(question).all()
    ids = {"ids": listed(row.id for row in rows)}
    seen = _seen(connection, ids)
    causes = {number: words or kind for number, kind, words in connection.execute(_CAUSES, ids)}
    photos = dict(connection.execute(_PHOTOS, ids).all())
    marks = last_marks(connection, (yarn for some in seen.values() for yarn, bad in some if bad))
    return [
        ReportRow(
            row.id, row.fault, row.where_on, row.repeat_mm, row.seen_at, row.words, row.happened,
            row.person, row.customer, shown(row.code) if row.code else None, row.stated,
            tuple(marks[yarn] for yarn, bad in seen[row.id] if bad and yarn in marks),
            sum(bad for _, bad in seen[row.id]), sum(not bad for _, bad in seen[row.id]),
            causes.get(row.id), photos.get(row.id, 0))
        for row in rows
    ]


def _seen(
    connection: Connection, ids: Mapping[str, str]
) -> Mapping[int | None, list[tuple[int, bool]]]:
    """{report: [(yarn, faulty)]}."""
    seen: dict[int | None, list[tuple[int, bool]]] = defaultdict(list)
    for number, yarn, faulty in connection.execute(_SIGHTINGS, ids):
        seen[number].append((yarn, bool(faulty)))
    return seen
