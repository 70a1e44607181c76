"""How the packing bench says orders, skeins and what can be taken now."""

from collections.abc import Mapping, Sequence

from app.calculations.codes import shown
from app.lookups.offers import Offer
from app.lookups.orders import LineNow, OnLine, OrderNow

NOBODY = "buyer not known"
_KEPT_TOGETHER = "\u00a0"


def skeins(count: int) -> str:
    """'1 skein', '4 skeins'; minis and balls count as skeins here."""
    return "1 skein" if count == 1 else f"{count} skeins"


def orders(count: int) -> str:
    """'1 order', '4 orders'."""
    return "1 order" if count == 1 else f"{count} orders"


def can_be_taken(order: OrderNow, offered: Mapping[int, Sequence[Offer]]) -> str:
    """What can be taken for an order now, in words."""
    still = [line for line in order.lines if line.open]
    if not still:
        return "all taken: to be sent"
    whole = [line for line in still if _best(line, offered) >= line.open]
    if len(whole) == len(still):
        return "now, each from one lot" if len(still) > 1 else "now, from one lot"
    if whole:
        return f"{len(whole)} of {len(still)} lines now"
    if any(not line.is_read for line in still):
        return "words to be looked at"
    short = sum(max(0, line.open - sum(offer.count for offer in offered.get(line.id, ())))
                for line in still)
    return f"{short} too few" if short else "only from several lots"


def taken_words(line: LineNow) -> str:
    """'In the parcel: 26·15·R6F 7M, 3K. Sent: 26·15·R6F 2H.'; nothing where nothing is."""
    ready = [one for one in line.skeins if not one.sent]
    sent = [one for one in line.skeins if one.sent]
    said = [f"{where}: {_marks(some)}." for where, some in
            (("In the parcel", ready), ("Sent", sent)) if some]
    return " ".join(said)


def offer_words(line: LineNow, offered: Sequence[Offer]) -> str:
    """Where free ones lie, two lots at the most; what can fill the line comes first."""
    if not line.open:
        return ""
    if not offered:
        return ("None lies free on a shelf." if line.is_read
                else "No yarn of the studio could be read from these words: scan what goes in "
                     "for it.")
    return "   ".join(_kept_together(offer.words) for offer in offered[:2])


def state_words(line: LineNow) -> str:
    """What stands below the count."""
    if line.over:
        return "the rest called off"
    return "taken" if line.taken or not line.filled else "sent"


def _kept_together(words: str) -> str:
    """A line may break between a count and the next, but not within one."""
    return ", ".join(part.replace(" ", _KEPT_TOGETHER) for part in words.split(", "))


def _best(line: LineNow, offered: Mapping[int, Sequence[Offer]]) -> int:
    return max((offer.count for offer in offered.get(line.id, ())), default=0)


def _marks(some: Sequence[OnLine]) -> str:
    """The marks of one lot after its code, said once."""
    by_lot: dict[str, list[str]] = {}
    for one in some:
        lot, _, mark = shown(one.mark).rpartition(" ")
        by_lot.setdefault(lot, []).append(mark)
    return "; ".join(f"{lot} {', '.join(marks)}".strip() for lot, marks in by_lot.items())
