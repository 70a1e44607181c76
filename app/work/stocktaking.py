"""Counting a shelf with the scanner alone, and putting the book right by entries."""

from collections.abc import Sequence

from sqlalchemy import select

from app.lookups.stocktakes import stocktake as counted_there
from app.problems import NotFound, Refused
from app.records import Counted, Stocktake
from app.store.deed import Deed
from app.work.bundling import number_of
from app.work.dividing import must_be_known, skeins
from app.work.mixing import lose
from app.work.moving import WORDS, To, lay, move
from app.work.selling import sell

NOT_MET = {
    "looked for, and not found": "lost",
    "sold without a scan": "sent",
    "given away or used in the studio": "given",
    "thrown away": "discarded",
    "laid elsewhere, not known where": "lost",
}
"""{why a skein is not on its shelf: the state it is in from then on}; common practice, no source.
What is laid elsewhere counts as lost until its tag is scanned there."""
MET_HERE = ("laid here without a scan", "back from a fair or an order", "lost before, and found")
"""Why a skein lies on another shelf than the book says; common practice, no source."""


def begin_stocktake(deed: Deed, place: int) -> int:
    """A place is counted from now on; the stocktake's row."""
    deed.say(f"counting {number_of(deed, place)}")
    return deed.add(Stocktake(place=place))


def met(deed: Deed, stocktake: int, tagged: Sequence[int]) -> None:
    """These lie there, by their tags; one scanned before is not counted twice."""
    _must_stand(deed, stocktake)
    must_be_known(deed, tagged)
    before = {yarn for (yarn,) in deed.all(select(Counted.yarn).where(
        Counted.stocktake == stocktake, Counted.struck.is_(None), Counted.yarn.is_not(None)))}
    fresh = [row for row in dict.fromkeys(tagged) if row not in before]
    deed.add_all([Counted(stocktake=stocktake, yarn=row) for row in fresh])
    deed.say(f"counted {skeins(len(fresh))}" if fresh else "counted before")


def met_untagged(deed: Deed, stocktake: int, lot: int, count: int) -> None:
    """So many lie there without tags, as somebody takes them for that lot: a list of its own."""
    _must_stand(deed, stocktake)
    if count < 1:
        raise Refused("None were counted; nothing was saved.", "Count what lies there.")
    deed.add(Counted(stocktake=stocktake, lot=lot, count=count))
    deed.say(f"counted {skeins(count)} without tags")


def put_right(deed: Deed, stocktake: int, why: str) -> None:
    """The book follows the count, by entries: what lies here is here, what does not is gone.

    How it went is said by a reason of `NOT_MET`, as stated; for any other it is lost. That it went
    has happened: a hold or a promise marks it, and does not refuse it. What was sold or given away
    and lies here is left as it is: it is a question for the owner, not a move. Refused: no reason,
    nothing to put right.
    """
    place = _must_stand(deed, stocktake)
    if not why.strip():
        raise Refused("A correction needs its reason; nothing was saved.", "Say what was found.")
    found = counted_there(deed.connection, stocktake)
    assert found is not None
    here = [one.yarn for one in found.to_move]
    gone, state = [one.yarn for one in found.missing], NOT_MET.get(why.strip().lower(), "lost")
    if not here and not gone:
        raise Refused("Nothing here is to be put right; nothing was saved.",
                      "Count on, or put the shelf away.")
    if here:
        lay(deed, here, place, "counted")
    if state == "lost":
        for yarn in gone:
            lose(deed, yarn, 1)
    elif gone and state == "sent":
        deed.late = True  # the sale was before the count
        sell(deed, gone, basis="stated")
    elif gone:
        move(deed, gone, To(state, basis="stated"))
    deed.say(f"put right: {skeins(len(here))} here, {len(gone)} {WORDS[state]}: {why.strip()}")


def _must_stand(deed: Deed, stocktake: int) -> int:
    place: int | None = deed.value(select(Stocktake.place).where(
        Stocktake.id == stocktake, Stocktake.struck.is_(None)))
    if place is None:
        raise NotFound("This stocktake is not in the book; nothing was saved.",
                       "Scan the shelf again.")
    return place
