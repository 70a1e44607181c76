"""For which line of an order a scanned skein is; and why for none, with the way out."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.calculations.moments import day_words
from app.lookups.orders import LineNow, OrderNow
from app.lookups.packing import TagScanned
from app.problems import Refused

_FROM = (None, "table", "shelf", "put by", "fair", "taken")
_IS = {
    "sent": ("was sold already", "If it came back, take it back at the Counter first."),
    "kit": ("is in a kit", "Open the kit first, or take another."),
    "lost": ("is lost by what the book says", "It is here: put it on its shelf first."),
    "given": ("was given away", "If it came back, take it back at the Counter first."),
    "discarded": ("was thrown away", "Look whether it may be sold at all, and shelve it first."),
}


def lines_for(tag: TagScanned, order: OrderNow) -> tuple[LineNow, ...]:
    """The open lines it may be for: one that names its lot goes before those it looks right for,
    and words that nobody could read are for anything where nothing else fits.
    """
    still = [line for line in order.lines if line.open]
    named = [line for line in still if line.lot == tag.lot and _form(tag, line)]
    alike = [line for line in still if line.lot is None and line.is_read and _is_it(tag, line)]
    return tuple(named or alike or [line for line in still if not line.is_read])


def no_skein(tag: TagScanned) -> Refused | None:
    """Why this tag stands for no skein; none where it hangs on one."""
    mark = shown(tag.mark)
    if tag.void:
        after = f": {shown(tag.successor)} took its place" if tag.successor else ""
        return Refused(f"{mark} is void{after}; nothing was taken.",
                       "Throw this tag away, and scan the one that counts.")
    if tag.yarn is None:
        return Refused(f"{mark} hangs on no skein by what the book says; nothing was taken.",
                       "Tie it on at Tagging first.")
    return None


def obstacle(tag: TagScanned, order: OrderNow, now: datetime) -> Refused | None:
    """Why this skein may not go into the parcel whatever the order wants; holds apart."""
    mark, none = shown(tag.mark), no_skein(tag)
    if none is not None:
        return none
    if tag.state == "taken" and tag.order != order.id:
        return Refused(f"{mark} is taken for order {tag.order_number}; nothing was taken.",
                       f"Scan order {tag.order_number} and take it out there, or take another.")
    if tag.state == "put by" and _kept(tag, order, now):
        until = f" until {day_words(tag.ends)}" if tag.ends else ""
        return Refused(f"{mark} is put by for {tag.name or 'somebody else'}{until}; nothing was "
                       "taken.", "Take another, or end its put-by at the Counter first.")
    if tag.state in _FROM:
        return None
    what, way = _IS[tag.state or ""]
    where = f" with order {tag.order_number}" if tag.state == "sent" and tag.order_number else ""
    return Refused(f"{mark} {what}{where}; nothing was taken.", way)


def why_none(tag: TagScanned, order: OrderNow) -> Refused:
    """Why it is for no line of the order."""
    still = [line for line in order.lines if line.open]
    if not still:
        return Refused(f"Order {order.number} wants nothing more; nothing was taken.",
                       "Put this one back, and send the parcel." if order.taken
                       else "Put this one back.")
    other_lot = next((line for line in still if _looks(tag, line)), None)
    if other_lot is not None:
        return Refused(
            f"This is of {lot_words(tag.lot_code)}; order {order.number} was promised "
            f"{lot_words(other_lot.lot_code)} of {other_lot.colourway_name}. Nothing was taken.",
            "Take that lot, or ask the customer first.")
    full = next((line for line in order.lines if _looks(tag, line)), None)
    if full is not None:
        done = "is called off" if full.over else (
            "has the one it wants" if full.wanted == 1 else f"has all {full.wanted} of it")
        return Refused(f"This is {tag.colourway_name}, and order {order.number} {done}; nothing "
                       "was taken.", "Put it back.")
    return Refused(f"This is {_what(tag, still)}; order {order.number} wants "
                   f"{_wants(tag, still)}. Nothing was taken.",
                   "Put it back, and take what is wanted.")


def why_not_sent(order: OrderNow) -> Refused:
    """Why the parcel does not leave by DONE, and what can be done."""
    if not order.open:
        return Refused(f"Nothing of order {order.number} is left to send; nothing was saved.",
                       "Leave it with F8.")
    return Refused(
        f"Order {order.number} was not sent: {order.open} of {order.wanted} "
        f"{'is' if order.open == 1 else 'are'} still to be taken.",
        "Take what is wanted, or send what is there: F6 keeps the rest open, F7 calls it off."
        if order.taken else "Take what is wanted, or call it off with F7.")


def _kept(tag: TagScanned, order: OrderNow, now: datetime) -> bool:
    ours = tag.customer is not None and tag.customer == order.customer
    return not ours and (tag.ends is None or tag.ends > now)


def _form(tag: TagScanned, line: LineNow) -> bool:
    return line.put_up in (None, tag.put_up)


def _is_it(tag: TagScanned, line: LineNow) -> bool:
    return (line.colourway in (None, tag.colourway) and line.base in (None, tag.base)
            and _form(tag, line))


def _looks(tag: TagScanned, line: LineNow) -> bool:
    """Whether it is the yarn of this line, whatever its lot."""
    return line.is_read and _is_it(tag, line)


@dataclass(frozen=True, slots=True)
class _Differs:
    base: bool
    form: bool


def _differs(tag: TagScanned, still: Sequence[LineNow]) -> _Differs:
    """Of lines of the same colourway: whether base or put-up tell them apart from the tag."""
    same = [line for line in still if line.colourway == tag.colourway]
    return _Differs(any(line.base not in (None, tag.base) for line in same),
                    any(not _form(tag, line) for line in same))


def _what(tag: TagScanned, still: Sequence[LineNow]) -> str:
    differs = _differs(tag, still)
    words = f"a {tag.put_up} of {tag.colourway_name}" if differs.form else tag.colourway_name
    return f"{words} on {tag.base_name}" if differs.base else words


def _wants(tag: TagScanned, still: Sequence[LineNow]) -> str:
    same = [line for line in still if line.colourway == tag.colourway]
    if same:
        line = same[0]
        form = f"a {line.put_up}" if not _form(tag, line) else "it"
        return f"{form} on {line.base_name}" if line.base not in (None, tag.base) else form
    names = list(dict.fromkeys(line.colourway_name or line.base_name or line.what
                               for line in still))
    more = [f"{len(names) - 3} more"] if len(names) > 3 else []
    return listing([*names[:3], *more])


def lot_words(lot: str | None) -> str:
    """A lot by its code, as it is read."""
    return shown(lot) if lot else "a lot without a code"
