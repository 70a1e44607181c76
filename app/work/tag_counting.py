"""The end of a day at the tag table: what is in hand of each lot is counted, and adds up."""

from app.calculations.codes import shown
from app.lookups.tag_counts import lot_tag_counts
from app.problems import Refused
from app.records import TagsInHand
from app.store.deed import Deed


def count_in_hand(deed: Deed, lot: int, count: int, why: str = "") -> int:
    """So many printed tags of a lot lie here, neither tied on nor spoiled. The count's row.

    Printed = tied on + spoiled + void + in hand: a count that does not fit needs its reason.
    """
    facts = lot_tag_counts(deed.connection, lot)
    should = facts.counts.in_hand
    name = shown(facts.code)
    if count < 0:
        raise Refused("Less than no tag cannot be counted; nothing was saved.", "Count again.")
    if not facts.counts.printed:
        raise Refused(f"No tag of {name} was ever printed; nothing was saved.",
                      "Choose a lot that was printed.")
    if count != should and not why.strip():
        raise Refused(f"{_tags(should)} of {name} should be in hand, {count} counted: why?",
                      "Look once more, then say what happened.")
    if count > should:
        deed.note(f"{count - should} more of {name} in hand than the book has: look whether void "
                  "ones are among them, or one came off its skein.")
    told = f"counted {_tags(count)} of {name} in hand"
    deed.say(told if count == should else f"{told}, {should} by the book: {why.strip()}")
    return deed.add(TagsInHand(lot=lot, count=count, why=why.strip()))


def _tags(count: int) -> str:
    return "1 tag" if count == 1 else f"{count} tags"
