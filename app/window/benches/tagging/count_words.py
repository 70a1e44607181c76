"""A count of a shelf in words: its sums, what differs, the doubt, and the question why."""

from app.exchange.tracing import STATE_WORDS
from app.lookups.stocktakes import Count, OneMet
from app.window.parts.why_card import Why
from app.work.dividing import skeins
from app.work.stocktaking import MET_HERE, NOT_MET

SCAN = "Scan every tag that lies here, then DONE."
ALL_OF_IT = "DONE says yes: all of it is counted. Else scan on; nothing is put right yet."
_LOOK_FIRST = "Look once more first: a tag that is scanned now is met."
_SAY = "Say what was found: the entry keeps it."


def sums(count: Count) -> str:
    """'14 skeins right, 1 skein missing'."""
    parts = ((len(count.right), "right"), (len(count.to_move), "elsewhere by the book"),
             (len(count.sold), "sold by the book, yet here"), (len(count.missing), "missing"))
    return ", ".join(f"{skeins(number)} {words}" for number, words in parts if number) or (
        "Nothing lies here, and nothing should.")


def rows(count: Count) -> list[tuple[str, str]]:
    """Tag by tag what differs."""
    return [*((one.mark or "", _elsewhere(one)) for one in count.elsewhere),
            *((one.mark or "", "The book has it here; nobody met it.") for one in count.missing)]


def doubt(count: Count) -> str:
    """'14 of the 82 that the book has here were scanned: is the whole shelf counted?'"""
    met, booked = len(count.right), count.booked
    if booked == 1:
        said = "The one that the book has here was not scanned"
    else:
        said = (f"{met or 'None'} of the {booked} that the book has here "
                f"{'were' if met > 1 else 'was'} scanned")
    return f"{said}: is the whole shelf counted?"


def is_over(count: Count, *, put_right: bool) -> str:
    """Nothing is left that the shop may put right."""
    if not count.sold:
        return "The book is put right." if put_right else "The shelf is as the book says."
    but = "All else is put right. " if put_right else ""
    return but + ("Show it to the owner: the book has it sold." if len(count.sold) == 1 else
                  "Show these to the owner: the book has them sold.")


def after(count: Count) -> str:
    """What becomes of what is left, and of the shelf."""
    stands = "" if not count.sold else "It stands" if len(count.sold) == 1 else "They stand"
    till = f"{stands} among the Balances (Desk, Alt+B) until that is put right. " if stands else ""
    return f"{till}DONE puts this shelf away."


def differs(count: Count) -> str:
    """What can be done about it now."""
    if count.sold:
        return "What is sold stays as it is: ask the owner. All else can be put right."
    return "It differs. Scan what you find; else say why, and the book is put right."


def why_differs(count: Count) -> Why:
    """Before the book follows the count."""
    gone, here = len(count.missing), len(count.to_move)
    booked = f"{skeins(here)} {'is' if here == 1 else 'are'} booked here."
    if gone:
        title = ("What became of the skein that nobody met?" if gone == 1 else
                 f"What became of the {gone} skeins that nobody met?")
        means = f"{_LOOK_FIRST} COUNT says why{f', for all {gone}' if gone > 1 else ''}."
        return Why(title, f"{means} {booked}" if here else means, "Put the book right", _SAY,
                   tuple(NOT_MET))
    title = "Why does this skein lie here?" if here == 1 else f"Why do these {here} lie here?"
    return Why(title, f"COUNT says why. {booked}", "Put the book right", _SAY, MET_HERE)


def _elsewhere(one: OneMet) -> str:
    if one.with_a_buyer:
        return f"{'Sold' if one.state == 'sent' else 'Given away'} by the book, yet it lies here."
    state = STATE_WORDS.get(one.state, one.state)
    return f"The book has it {state}{f': {one.place}' if one.place else ''}."
