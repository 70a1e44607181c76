"""A recall list that lay there, in earnest or for practice: how much it held, and how long it took.
"""

from datetime import datetime

from app.lookups.recall import recall_list
from app.problems import Refused
from app.records import Recall
from app.records.holds import SOURCES
from app.store.deed import Deed


def keep_recall(
    deed: Deed, kind: str, thing: int, began: datetime, *, practice: bool,
    hold: int | None = None,
) -> int:
    """Puts down that all who have something of it were listed, as the book stands; its row."""
    if kind not in SOURCES:
        raise Refused(f"Nothing comes of a {kind}; nothing was saved.",
                      "Ask for the list of a cone, batch, lot, load, bath, jar fill or yarn.")
    found = recall_list(deed.connection, kind, thing)
    deed.say(f"{'practised' if practice else 'kept'} a recall list: {found.accounted} of "
             f"{found.count} accounted for")
    return deed.add(Recall(
        practice=int(practice), kind=kind, thing=thing, hold=hold, began=began,
        skeins=found.count, mg=found.mg, accounted=found.accounted))
