"""A recall list that lay there, in earnest or for practice: how much it held, and how long it took.
"""

from datetime import datetime

from sqlalchemy import select

from app.calculations.moments import clock_words, took_words
from app.lookups.past_recalls import seconds_between
from app.lookups.recall import recall_list
from app.lookups.source_names import source_names
from app.problems import Refused
from app.records import DeedRow, Recall
from app.records.holds import SOURCES
from app.store.deed import Deed


def keep_recall(
    deed: Deed, kind: str, thing: int, began: datetime, *, practice: bool,
    hold: int | None = None,
) -> int:
    """Puts down that all who have something of it were listed, as the book stands; its row.

    The same list, opened once and holding the same, is kept once.
    """
    if kind not in SOURCES:
        raise Refused(f"Nothing comes of a {kind}; nothing was saved.",
                      "Ask for the list of a cone, batch, lot, load, bath, jar fill or yarn.")
    found = recall_list(deed.connection, kind, thing)
    row = Recall(
        practice=int(practice), kind=kind, thing=thing, hold=hold, began=began,
        skeins=found.count, mg=found.mg, accounted=found.accounted)
    _must_be_new(deed, row)
    on = source_names(deed.connection, [(kind, thing)])[kind, thing]
    took = took_words(seconds_between(began, deed.happened))
    deed.say(f"{'practised' if practice else 'kept'} the recall of {on}, took {took}: "
             f"{found.accounted} of {found.count} accounted for")
    return deed.add(row)


def _must_be_new(deed: Deed, row: Recall) -> None:
    kept = deed.one(
        select(DeedRow.happened).join(Recall, Recall.deed == DeedRow.seq).where(
            Recall.struck.is_(None), Recall.kind == row.kind, Recall.thing == row.thing,
            Recall.practice == row.practice, Recall.began == row.began,
            Recall.skeins == row.skeins, Recall.mg == row.mg, Recall.accounted == row.accounted,
            Recall.hold.is_not_distinct_from(row.hold)))
    if kept is not None:
        raise Refused(f"This list was kept at {clock_words(kept.happened)} already and holds the "
                      "same now; nothing was saved.",
                      "For another practice go back and open it again: the time runs from there.")
