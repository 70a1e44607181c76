"""Orders and sales: what was promised, and what really left."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import func, select

from app.calculations.codes import shown
from app.lookups.left_to_sell import FILLED, left_to_sell
from app.lookups.skeins import named_by_tag
from app.lookups.two_lots import several_words, unsettled
from app.problems import NotFound, Refused
from app.records import (
    Customer,
    CustomerOrder,
    DyeLot,
    OrderLine,
    Personal,
    Price,
    Whereabouts,
    Yarn,
)
from app.store.deed import Deed
from app.work.dividing import must_be_known, skeins
from app.work.moving import To, move
from app.work.people import personal
from app.work.photos import erase_photos_of


@dataclass(frozen=True, slots=True)
class Wanted:
    """One line of an order: so many, of a lot if it was named; price for one.

    `what` is as it was said; colourway, base and put-up are what it was read as.
    """

    what: str
    count: int
    lot: int | None = None
    price: int | None = None
    colourway: int | None = None
    base: int | None = None
    put_up: str | None = None


@dataclass(frozen=True, slots=True)
class OrderIn:
    """An order by hand or from the web shop; no customer means not known to whom."""

    number: str
    placed: datetime
    channel: str
    lines: tuple[Wanted, ...]
    customer: int | None = None


def know_customer(deed: Deed, name: str, fields: dict[str, str] | None = None) -> int:
    """Someone who buys, with as little as is needed; all of it can be removed on request."""
    if not name.strip():
        raise Refused("A customer needs a name; nothing was saved.",
                      "Sell without a customer where none is given.")
    customer = deed.add(Customer())
    said = {"name": name.strip(), **(fields or {})}
    deed.add_all([personal(deed, field, value, customer=customer) for field, value in said.items()])
    deed.say(f"customer {customer} is known")
    return customer


def forget_customer(deed: Deed, customer: int) -> None:
    """On request: what is known of them goes, their pictures too; the yarn's history stays."""
    rows = [row for (row,) in deed.all(select(Personal.id).where(
        Personal.customer == customer, Personal.value.is_not(None)))]
    if not rows:
        raise NotFound(f"Nothing is known of customer {customer}; nothing was removed.",
                       "Look whether it was removed before.")
    for row in rows:
        deed.change(Personal, row, value=None, salt=None)
    erase_photos_of(deed, customer)
    deed.say(f"removed what was known of customer {customer}")


def place_order(deed: Deed, order: OrderIn) -> list[int]:
    """An order with its lines; the lines.

    Refused: a number that is there already, more of a named lot than is left to sell.
    """
    if not order.lines:
        raise Refused("An order needs a line; nothing was saved.", "Say what is wanted.")
    if deed.value(select(CustomerOrder.id).where(
            CustomerOrder.number == order.number, CustomerOrder.struck.is_(None))):
        raise Refused(f"Order {order.number} is in the book already; nothing was saved.",
                      "Look it up instead.")
    if order.customer is not None and deed.value(select(Customer.id).where(
            Customer.id == order.customer, Customer.struck.is_(None))) is None:
        raise NotFound("This customer is not in the book; nothing was saved.",
                       "Choose one who is, or sell without a name.")
    _may_promise(deed, order.lines)
    row = deed.add(CustomerOrder(number=order.number, customer=order.customer,
                                 channel=order.channel, placed=order.placed))
    lines = deed.add_all([
        OrderLine(customer_order=row, wanted=wanted.count, what=wanted.what, lot=wanted.lot,
                  price=wanted.price, colourway=wanted.colourway, base=wanted.base,
                  put_up=wanted.put_up)
        for wanted in order.lines
    ])
    deed.say(f"order {order.number}: {pieces(sum(w.count for w in order.lines))}")
    return lines


def pieces(count: int) -> str:
    """'1 piece', '4 pieces': what is wanted need not be yarn, a pattern book is a piece too."""
    return f"{count} piece" + ("" if count == 1 else "s")


def take_for(deed: Deed, line: int, tagged: Sequence[int]) -> str:
    """Skeins are taken from the shelf for a line, by scan. What is to be settled, or ''.

    Refused over what is wanted, for another lot than the one that was promised, and what another
    order was promised. A line filled from two lots is said, and is to be settled once.
    """
    row = _line(deed, line)
    fresh = list(dict.fromkeys(tagged))
    if row.over:
        deed.refuse(f"This line of order {row.number} was called off; nothing was saved.",
                    "Place it anew.")
    here = _yarn_on(deed, line)
    if twice := [one for one in fresh if one in here]:
        deed.refuse(f"{_marks(deed, twice)} taken for order {row.number} already and counted once; "
                    "nothing was saved.", "Put it back on the shelf, if that was meant.")
        fresh = [one for one in fresh if one not in here]
    if len(fresh) > row.wanted - row.filled:
        deed.refuse(f"Order {row.number} wants {row.wanted} of these, and {row.filled} "
                    f"{'is' if row.filled == 1 else 'are'} taken; nothing was saved.",
                    "Put the rest back.")
    lots = _lots_of(deed, fresh)
    if row.lot is not None and lots - {row.lot}:
        deed.refuse(f"Order {row.number} was promised {_code(deed, row.lot)}; nothing was saved.",
                    "Take that lot, or ask the customer first.")
    lots |= _lots_of(deed, here)
    move(deed, fresh, To("taken", line=line))
    several = ""
    if len(lots) > 1 and (deed.late or line in unsettled(deed.connection, [line])):
        several = several_words(deed.connection, lots)
        deed.note(several)
    deed.say(f"took {skeins(len(fresh))} for order {row.number}")
    return several


def call_off(deed: Deed, line: int) -> None:
    """What is not filled of a line is not wanted any more; what was taken or sent stays so."""
    row = _line(deed, line)
    if row.over:
        raise Refused(f"This line of order {row.number} was called off already; nothing was "
                      "saved.", "Place it anew if it is wanted again.")
    if row.filled >= row.wanted:
        raise Refused(f"Nothing of this line of order {row.number} is open; nothing was saved.",
                      "Put back on the shelf what was taken for it first.")
    deed.change(OrderLine, line, over=deed.seq)
    deed.say(f"called off {row.wanted - row.filled} of {row.wanted} of order {row.number}")


def send(deed: Deed, number: str) -> int:
    """The parcel leaves: what was taken for this order is sold. How many."""
    lines = [line for (line,) in deed.all(
        select(OrderLine.id).join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(CustomerOrder.number == number, CustomerOrder.struck.is_(None)))]
    count = 0
    for line in lines:
        taken = _yarn_on(deed, line, "taken")
        if taken:
            move(deed, taken, To("sent", line=line))
            count += len(taken)
    if not count:
        raise Refused(f"Nothing is taken for order {number}; nothing was sent.",
                      "Take its skeins first, by scan.")
    deed.say(f"sent order {number}: {skeins(count)}")
    return count


def sell(
    deed: Deed, tagged: Sequence[int], customer: int | None = None, channel: str = "shop",
    basis: str = "scanned",
) -> int:
    """Over the counter or at a fair: sold as they are scanned. The order that keeps it."""
    rows = list(dict.fromkeys(tagged))
    must_be_known(deed, rows)
    looks: dict[tuple[int, str], list[int]] = {}
    for row, base, put_up in deed.all(
            select(Yarn.id, Yarn.base, Yarn.put_up).where(Yarn.id.in_(rows)).order_by(Yarn.id)):
        looks.setdefault((base, put_up), []).append(row)
    if not looks:
        raise Refused("No skein was scanned; nothing was saved.", "Scan their tags.")
    lines = place_order(deed, OrderIn(till_number(deed), deed.happened, channel, tuple(
        Wanted("as scanned", len(alike), price=_price_of(deed, base, put_up), base=base,
               put_up=put_up)
        for (base, put_up), alike in looks.items()), customer))
    for line, alike in zip(lines, looks.values(), strict=True):
        move(deed, alike, To("sent", line=line, basis=basis))
    deed.say(f"sold {skeins(len(rows))}" + ("" if customer else ", buyer not known"))
    return order_of(deed, lines[0])


def till_number(deed: Deed) -> str:
    """The number of the next sale over the counter: T and a number of its own."""
    return f"T{(deed.value(select(func.max(CustomerOrder.id))) or 0) + 1}"


def order_of(deed: Deed, line: int) -> int:
    """The order that a line is of."""
    order: int = deed.value(select(OrderLine.customer_order).where(OrderLine.id == line))
    return order


def set_price(deed: Deed, base: int, put_up: str, price: int) -> None:
    """What a put-up costs from now on, in the smallest unit of the studio's currency."""
    if price < 0:
        raise Refused("A price is not below nothing; nothing was saved.", "Write it again.")
    deed.add(Price(base=base, put_up=put_up, price=price))
    deed.say(f"priced {put_up}s at {price / 100:.2f}")


def _may_promise(deed: Deed, lines: Sequence[Wanted]) -> None:
    of_lot = Counter[tuple[int, str | None]]()
    for wanted in lines:
        if wanted.count < 1:
            raise Refused(f"{wanted.count} of {wanted.what} cannot be wanted; nothing was saved.",
                          "Say how many.")
        if wanted.lot is not None:
            for put_up in dict.fromkeys((wanted.put_up, None)):  # and all of the lot
                of_lot[wanted.lot, put_up] += wanted.count
    for (lot, put_up), count in of_lot.items():
        free = left_to_sell(deed.connection, lot, put_up).count
        if count > free:
            deed.refuse(f"{free} of {_code(deed, lot)} can still be promised, not "
                        f"{count}; nothing was saved.", "Offer another lot, or fewer.")


def _line(deed: Deed, line: int) -> Any:
    """A line of an order as it stands; raises NotFound where there is none."""
    row = deed.one(
        select(OrderLine.wanted, OrderLine.lot, OrderLine.over, CustomerOrder.number,
               FILLED.label("filled"))
        .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(OrderLine.id == line, OrderLine.struck.is_(None)))
    if row is None:
        raise NotFound("This line is not in the book; nothing was saved.", "Scan the order.")
    return row


def _yarn_on(deed: Deed, line: int, state: str | None = None) -> list[int]:
    rows = select(Whereabouts.yarn).where(
        Whereabouts.line == line, Whereabouts.until.is_(None), Whereabouts.struck.is_(None))
    if state is not None:
        rows = rows.where(Whereabouts.state == state)
    return [yarn for (yarn,) in deed.all(rows)]


def _lots_of(deed: Deed, tagged: Sequence[int]) -> set[int]:
    return {tag.lot for tag in named_by_tag(deed.connection, tagged).values()}


def _marks(deed: Deed, tagged: Sequence[int]) -> str:
    """'26·15·R6F 7M is', 'these 2 skeins are'."""
    named = named_by_tag(deed.connection, tagged)
    return (f"{shown(named[tagged[0]].mark)} is" if len(named) == 1
            else f"These {skeins(len(tagged))} are")


def _code(deed: Deed, lot: int) -> str:
    return shown(deed.value(select(DyeLot.code).where(DyeLot.id == lot)) or "a lot without a code")


def _price_of(deed: Deed, base: int, put_up: str) -> int | None:
    price: int | None = deed.value(
        select(Price.price).where(Price.base == base, Price.put_up == put_up,
                                  Price.struck.is_(None)).order_by(Price.id.desc()))
    return price
