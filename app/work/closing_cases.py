"""Reports of one case that are closed together, with the cause of the one that was closed first."""

from collections.abc import Collection

from sqlalchemy import select

from app.lookups.fault_cases import open_of_case
from app.lookups.source_names import source_names
from app.problems import Refused
from app.records import Cause, Report
from app.store.deed import Deed
from app.work.dividing import skeins


def close_with_it(deed: Deed, report: int, others: Collection[int]) -> list[int]:
    """Those of `others` that are open and of this report's case get its cause and words."""
    closing = [one for one in open_of_case(deed.connection, report) if one in others]
    if not closing:
        raise Refused("None of them is open and of the same case any more; nothing was saved.",
                      "Look at the reports again.")
    cause = deed.one(
        select(Report.fault, Cause.kind, Cause.thing, Cause.words)
        .join(Report, Report.id == Cause.report)
        .where(Cause.report == report, Cause.struck.is_(None)).order_by(Cause.id.desc()))
    thing = cause.kind, cause.thing
    deed.say(f"{cause.fault}: {skeins(len(closing), 'more report')} closed, from "
             f"{source_names(deed.connection, [thing])[thing]}")
    return deed.add_all([Cause(report=one, kind=cause.kind, thing=cause.thing, words=cause.words)
                         for one in closing])
