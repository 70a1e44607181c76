"""At the packing bench: what goes into a parcel, what comes out of it again, and when it leaves."""

from sqlalchemy import select

from app.calculations.moments import day_words
from app.lookups.left_to_sell import FILLED
from app.lookups.two_lots import unsettled
from app.problems import Refused
from app.records import CustomerOrder, OrderLine, Whereabouts
from app.store.deed import Deed
from app.work.bundling import number_of
from app.work.dividing import mark_of, skeins
from app.work.moving import To, move
from app.work.selling import call_off, send, take_for


def pack(deed: Deed, line: int, yarn: int) -> str:
    """One skein goes into the parcel, for a line of its order. What is to be settled, or ''.

    Refused as `take_for` refuses, and where it is put by for somebody else. What is to be settled
    is that the line is from several lots now.
    """
    kept = deed.one(
        select(Whereabouts.customer, Whereabouts.ends)
        .where(Whereabouts.yarn == yarn, Whereabouts.state == "put by",
               Whereabouts.until.is_(None), Whereabouts.struck.is_(None)))
    buyer = deed.value(
        select(CustomerOrder.customer)
        .join(OrderLine, OrderLine.customer_order == CustomerOrder.id).where(OrderLine.id == line))
    if kept and kept.ends > deed.written and (kept.customer is None or kept.customer != buyer):
        deed.refuse(f"{mark_of(deed, yarn)} is put by for somebody else until "
                    f"{day_words(kept.ends)}; nothing was saved.",
                    "Take another, or end its put-by at the Counter first.")
    return take_for(deed, line, [yarn])


def take_out(deed: Deed, yarn: int, shelf: int) -> None:
    """A skein that was taken by mistake lies on a shelf again."""
    number = deed.value(
        select(CustomerOrder.number)
        .join(OrderLine, OrderLine.customer_order == CustomerOrder.id)
        .join(Whereabouts, Whereabouts.line == OrderLine.id)
        .where(Whereabouts.yarn == yarn, Whereabouts.state == "taken",
               Whereabouts.until.is_(None), Whereabouts.struck.is_(None)))
    if number is None:
        raise Refused(f"{mark_of(deed, yarn)} is not taken for an order; nothing was saved.",
                      "Scan it once more: it may have been put back already.")
    move(deed, [yarn], To("shelf", place=shelf))
    deed.say(f"took {mark_of(deed, yarn)} out of order {number}: shelf {number_of(deed, shelf)}")


def send_parcel(deed: Deed, number: str, call_rest_off: bool = False) -> int:
    """The parcel leaves with what is taken; the rest stays open, or is called off. How many.

    Refused while nobody said what is to be done about a line from several lots.
    """
    asked = unsettled(deed.connection, _lines(deed, number))
    for sentence in asked.values():
        deed.refuse(f"{sentence.partition('. ')[0]}: nobody said yet what the customer wants; "
                    "nothing was sent.",
                    "Say that the customer agreed, or that a rows card was put in.")
    open_lines = _open_lines(deed, number)
    sent = send(deed, number)
    if call_rest_off:
        for line in open_lines:
            call_off(deed, line)
        deed.say(f"sent order {number}: {skeins(sent)}; the rest is called off")
    return sent


def call_rest_off(deed: Deed, number: str) -> None:
    """What is not taken for an order yet is not wanted any more."""
    lines = _open_lines(deed, number)
    if not lines:
        raise Refused(f"Nothing of order {number} is open; nothing was saved.",
                      "Send it, or take its skeins out first.")
    for line in lines:
        call_off(deed, line)
    deed.say(f"called off what was open of order {number}")


def _lines(deed: Deed, number: str) -> list[int]:
    return [line for (line,) in deed.all(
        select(OrderLine.id).join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(CustomerOrder.number == number, CustomerOrder.struck.is_(None),
               OrderLine.struck.is_(None)).order_by(OrderLine.id))]


def _open_lines(deed: Deed, number: str) -> list[int]:
    return [line for (line,) in deed.all(
        select(OrderLine.id).join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(CustomerOrder.number == number, CustomerOrder.struck.is_(None),
               OrderLine.struck.is_(None), OrderLine.over.is_(None), OrderLine.wanted > FILLED)
        .order_by(OrderLine.id))]
