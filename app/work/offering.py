"""What was offered to somebody who wants more of a lot, and what they agreed to."""

from dataclasses import dataclass

from sqlalchemy import select

from app.calculations.codes import shown
from app.problems import NotFound, Refused
from app.records import Customer, CustomerOrder, DyeLot, LineAgreed, Offer, OrderLine
from app.records.orders import OFFERS
from app.store.deed import Deed

ANSWERS = ("taken", "thinks it over", "declined")
AGREED = ("customer agreed", "rows card put in")


@dataclass(frozen=True, slots=True)
class OfferIn:
    """One offer with its answer. `centi_delta` is the CIEDE2000 that was named, in hundredths."""

    lot: int
    wanted: int
    way: str
    answer: str
    other_lot: int | None = None
    centi_delta: int | None = None
    customer: int | None = None


def offered(deed: Deed, said: OfferIn) -> int:
    """Keep what was offered and what was said to it. It promises nothing. The offer."""
    if said.way not in OFFERS or said.answer not in ANSWERS:
        raise Refused("This is no way to offer, or no answer; nothing was saved.",
                      f"The answers are: {', '.join(ANSWERS)}.")
    if said.wanted < 1:
        raise Refused("Nothing was wanted; nothing was saved.", "Say how many were wanted.")
    code = _lot(deed, said.lot)
    other = "" if said.other_lot is None else f", {_lot(deed, said.other_lot)}"
    if said.customer is not None and deed.value(select(Customer.id).where(
            Customer.id == said.customer, Customer.struck.is_(None))) is None:
        raise NotFound("This customer is not in the book; nothing was saved.",
                       "Choose one who is, or keep the offer without a name.")
    deed.say(f"offered for {said.wanted} of {code}: {said.way}{other}; {said.answer}")
    return deed.add(Offer(lot=said.lot, wanted=said.wanted, way=said.way, answer=said.answer,
                          other_lot=said.other_lot, centi_delta=said.centi_delta,
                          customer=said.customer))


def agree_line(deed: Deed, line: int, how: str) -> int:
    """A line may be filled from two lots: the customer agreed, or a rows card is put in."""
    if how not in AGREED:
        raise Refused("This does not say who agreed; nothing was saved.",
                      f"Choose: {' or '.join(AGREED)}.")
    number = deed.value(
        select(CustomerOrder.number).join(OrderLine, OrderLine.customer_order == CustomerOrder.id)
        .where(OrderLine.id == line, OrderLine.struck.is_(None)))
    if number is None:
        raise NotFound("This line is not in the book; nothing was saved.", "Open its order again.")
    deed.say(f"order {number}, a line from two lots: {how}")
    return deed.add(LineAgreed(line=line, how=how))


def _lot(deed: Deed, lot: int) -> str:
    row = deed.one(select(DyeLot.code).where(DyeLot.id == lot, DyeLot.struck.is_(None)))
    if row is None:
        raise NotFound("This lot is not in the book; nothing was saved.", "Scan it again.")
    return shown(row.code) if row.code else "a lot without a code"
