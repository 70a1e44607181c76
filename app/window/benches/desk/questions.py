"""The questions of why, in words: before a hold, a clearing, a lifting."""

from app.calculations.evidence import Suspect
from app.lookups.batches import Batch
from app.lookups.holds import HoldFacts
from app.lookups.recognising import MayBeOf
from app.lookups.things import Found
from app.lookups.untagged import Untagged
from app.window.benches.desk.desk_words import came_of, how_many, kind_words
from app.window.parts.why_card import FAULTS, Why

_HOW_MATCHED = "Say how it was matched: whoever traces it will ask."
_MATCHED = ("by eye, beside skeins of the lot", "measured beside the lot", "by its tie",
            "its tag lay beside it")


def why_hold(found: Found) -> Why:
    """Before a hold is put on the thing in hand."""
    return Why(
        f"Put a hold on {kind_words(found.kind)} {found.shown}?",
        "Nothing made of it is printed, promised or sold until the hold is lifted; what is in "
        "work goes on, marked.",
        "Put the hold", "Say what was seen: whoever meets the hold will read it.", FAULTS,
    )


def why_hold_batch(batch: Batch) -> Why:
    """Before a hold is put on all that came of a maker's batch."""
    return Why(
        f"Put a hold on the whole {batch.words}?",
        f"{came_of(batch)} came of it: nothing made of any of them is printed, "
        "promised or sold until the hold is lifted; what is in work goes on, marked.",
        "Put the hold", "Say what was seen: whoever meets the hold will read it.", FAULTS,
    )


def why_hold_suspect(suspect: Suspect) -> Why:
    """Before a hold is put on a suspect of a fault."""
    return Why(
        f"Put a hold on {suspect}?",
        "Nothing that went through it is printed, promised or sold until the hold is lifted; what "
        "is in work goes on, marked.",
        "Put the hold", "Say what was seen: whoever meets the hold will read it.", FAULTS,
    )


def why_closed(cause: str) -> Why:
    """Before the reports of a fault are closed with their cause."""
    return Why(
        f"Close the report: {cause}?",
        "It leaves the open ones. A later answer may still replace this one.",
        "Close it", "Say how it is known.",
        ("seen on the thing itself", "by the skeins that were looked at", "nothing more to find"),
    )


def why_erased() -> Why:
    """Before a picture is removed for good."""
    return Why(
        "Erase this picture?",
        "It is gone for good and cannot be brought back; that there was one stays in the book.",
        "Erase it", "Say who asked for it, without a name.",
        ("its sender asked for it", "a person can be seen on it", "it shows nothing of use"),
    )


def why_by_mistake(fault: str) -> Why:
    """Before a report is taken out of all reckoning."""
    return Why(
        f"“{fault}” was told by mistake?",
        "It counts no more against what its yarn went through, and nobody is warned of it. That it "
        "was told stays in the journal.",
        "It was", "Say what it truly was, without a name.",
        ("another skein was meant", "it is no fault", "it was told twice"),
    )


def why_clear(hold: HoldFacts, found: Found) -> Why:
    """Before one skein is let through a hold."""
    return Why(
        f"Clear skein {found.shown} of this hold?",
        f"The hold stays on {hold.on} and on all else that it reaches.",
        "Clear this skein", "Say what was looked at: clearing needs its evidence.",
    )


def why_lift(hold: HoldFacts) -> Why:
    """Before a hold ends."""
    return Why(
        f"Lift the hold on {hold.on}?",
        f"It was put because of: {hold.why}. All that it stops is free again.",
        "Lift the hold", "Say what was found: lifting needs its reason.",
    )


def why_recognised(found: Found, one: MayBeOf) -> Why:
    """Before yarn out of a pool is told to be of one of its origins."""
    return Why(
        f"{found.shown} is of {one.words}?",
        "It is told once, and what is made of it inherits it; what is left in the pool is told "
        "apart by that too.",
        "It is", "Say how it was recognised: whoever traces it will ask.",
        ("by its tie", "by the wound card", "by eye, beside the others"),
    )


def why_lost(found: Found, count: int) -> Why:
    """Before some are put down as gone."""
    what = found.shown if count == 1 else f"{how_many(count)} of {found.shown}"
    return Why(
        f"{what} lost?",
        "They stay in every count as lost, and may be found again.",
        "Lost", "Say how it is known.", ("not there at a count", "torn or felted in the wash"),
    )


def which_other_lot(found: Found) -> Why:
    """Before a skein is told to be of another lot than its tag says."""
    return Why(
        f"Which lot is the skein with {found.shown} of?",
        "Its tag comes off and is void; it gets one of its own lot, and so does the skein that "
        "this tag was printed for.",
        "This lot", "Say the code of its lot: scan the lot, or a tag of it.",
        asks="Its lot",
    )


def why_other_lot(found: Found, lot: Found) -> Why:
    """The evidence for that."""
    return Why(
        f"The skein with {found.shown} is of {lot.shown}, {lot.words}?",
        "Cut the tag off when this is saved.",
        "It is", _HOW_MATCHED, _MATCHED,
    )


def why_missing(find: Untagged, lot: Found) -> Why:
    """Before a find is told to be the one that a count missed."""
    return Why(
        f"The {find.put_up} without a tag was missing at the count of {lot.shown}?",
        "It is of this lot then, and is missing no more.",
        "It was", _HOW_MATCHED, _MATCHED,
    )


def why_waiting(find: Untagged, lot: Found) -> Why:
    """Before a find is told to be one that was counted and lies on its pile by the book."""
    return Why(
        f"The {find.put_up} without a tag is the one of {lot.shown} that was counted and never got "
        "its tag?",
        "It is of this lot then, and waits for its tag here; the pile has one less.",
        "It is", _HOW_MATCHED, _MATCHED,
    )


def why_one_of(find: Untagged, lot: Found, count: int) -> Why:
    """Before a find is told to be one of a lot's tagged ones, or the very one that lost its tag."""
    if lot.kind == "skein":
        return Why(
            f"The {find.put_up} without a tag is {lot.shown}?",
            f"It is of its lot then; {lot.shown} is void once another tag hangs on it.",
            "It is", _HOW_MATCHED, _MATCHED,
        )
    return Why(
        f"The {find.put_up} without a tag is one of {how_many(count, find.put_up)} of "
        f"{lot.shown}?",
        "It is of this lot then, and stands for one of them; which of them stays not known.",
        "It is", _HOW_MATCHED, _MATCHED,
    )
