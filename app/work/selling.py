"""Orders and sales: what was promised, and what really left."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import func, select

from app.calculations.codes import shown
from app.lookups.left_to_sell import left_to_sell
from app.problems import NotFound, Refused
from app.records import (
    Customer,
    CustomerOrder,
    DyeLot,
    OrderLine,
    Personal,
    Price,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.deed import Deed
from app.work.dividing import skeins
from app.work.moving import To, move
from app.work.people import personal


@dataclass(frozen=True, slots=True)
class Wanted:
    """One line of an order: so many, of a lot if it was named; price for one."""

    what: str
    count: int
    lot: int | None = None
    price: int | None = None


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
    deed.add_all([personal(field, value, customer=customer) for field, value in said.items()])
    deed.say(f"customer {customer} is known")
    return customer


def forget_customer(deed: Deed, customer: int) -> None:
    """On request: what is known of them goes, value and salt; the yarn's history stays."""
    rows = [row for (row,) in deed.all(select(Personal.id).where(
        Personal.customer == customer, Personal.value.is_not(None)))]
    if not rows:
        raise NotFound(f"Nothing is known of customer {customer}; nothing was removed.",
                       "Look whether it was removed before.")
    for row in rows:
        deed.change(Personal, row, value=None, salt=None)
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
    for wanted in order.lines:
        _may_promise(deed, wanted)
    row = deed.add(CustomerOrder(number=order.number, customer=order.customer,
                                 channel=order.channel, placed=order.placed))
    lines = deed.add_all([
        OrderLine(customer_order=row, wanted=wanted.count, what=wanted.what, lot=wanted.lot,
                  price=wanted.price)
        for wanted in order.lines
    ])
    deed.say(f"order {order.number}: {skeins(sum(w.count for w in order.lines))}")
    return lines


def take_for(deed: Deed, line: int, tagged: Sequence[int]) -> None:
    """Skeins are taken from the shelf for a line, by scan.

    Refused over what is wanted, and for another lot than the one that was promised. A line filled
    from two lots is said.
    """
    row = deed.one(
        select(OrderLine.wanted, OrderLine.lot, CustomerOrder.number)
        .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(OrderLine.id == line, OrderLine.struck.is_(None)))
    if row is None:
        raise NotFound("This line is not in the book; nothing was saved.", "Scan the order.")
    fresh = list(dict.fromkeys(tagged))
    if len(fresh) > row.wanted - _on_line(deed, line):
        deed.refuse(f"Order {row.number} wants {row.wanted} of these, and "
                    f"{_on_line(deed, line)} are taken; nothing was saved.", "Put the rest back.")
    lots = _lots_of(deed, fresh)
    if row.lot is not None and lots - {row.lot}:
        deed.refuse(f"Order {row.number} was promised {_code(deed, row.lot)}; nothing was saved.",
                    "Take that lot, or ask the customer first.")
    lots |= _lots_of(deed, _yarn_on(deed, line))
    if len(lots) > 1:
        deed.note(f"One line from {len(lots)} lots: "
                  f"{' and '.join(sorted(_code(deed, lot) for lot in lots))}. Ask the customer, "
                  "or put a note about alternating rows in.")
    move(deed, fresh, To("taken", line=line))
    deed.say(f"took {skeins(len(fresh))} for order {row.number}")


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
    deed: Deed, tagged: Sequence[int], customer: int | None = None, channel: str = "shop"
) -> int:
    """Over the counter or at a fair: sold as they are scanned. The order that keeps it."""
    number = f"T{(deed.value(select(func.max(CustomerOrder.id))) or 0) + 1}"
    rows = list(dict.fromkeys(tagged))
    price = _price_of(deed, rows[0]) if rows else None
    (line,) = place_order(deed, OrderIn(
        number, deed.happened, channel, (Wanted("as scanned", max(1, len(rows)), price=price),),
        customer))
    move(deed, rows, To("sent", line=line))
    deed.say(f"sold {skeins(len(rows))}" + ("" if customer else ", buyer not known"))
    order: int = deed.value(select(OrderLine.customer_order).where(OrderLine.id == line))
    return order


def set_price(deed: Deed, base: int, put_up: str, price: int) -> None:
    """What a put-up costs from now on, in the smallest unit of the studio's currency."""
    if price < 0:
        raise Refused("A price is not below nothing; nothing was saved.", "Write it again.")
    deed.add(Price(base=base, put_up=put_up, price=price))
    deed.say(f"priced {put_up}s at {price / 100:.2f}")


def _may_promise(deed: Deed, wanted: Wanted) -> None:
    if wanted.count < 1:
        raise Refused(f"{wanted.count} of {wanted.what} cannot be wanted; nothing was saved.",
                      "Say how many.")
    if wanted.lot is None:
        return
    free = left_to_sell(deed.connection, wanted.lot).count
    if wanted.count > free:
        deed.refuse(f"{free} of {_code(deed, wanted.lot)} can still be promised, not "
                    f"{wanted.count}; nothing was saved.", "Offer another lot, or fewer.")


def _on_line(deed: Deed, line: int) -> int:
    """Skeins that were taken or sent for a line, whether they came back since or not."""
    count: int = deed.value(select(func.count(func.distinct(Whereabouts.yarn))).where(
        Whereabouts.line == line, Whereabouts.struck.is_(None)))
    return count


def _yarn_on(deed: Deed, line: int, state: str | None = None) -> list[int]:
    rows = select(Whereabouts.yarn).where(
        Whereabouts.line == line, Whereabouts.until.is_(None), Whereabouts.struck.is_(None))
    if state is not None:
        rows = rows.where(Whereabouts.state == state)
    return [yarn for (yarn,) in deed.all(rows)]


def _lots_of(deed: Deed, tagged: Sequence[int]) -> set[int]:
    return {lot for (lot,) in deed.all(
        select(Tag.lot).join(TagOn, TagOn.tag == Tag.id)
        .where(TagOn.yarn.in_(tagged), TagOn.until.is_(None), TagOn.struck.is_(None)))}


def _code(deed: Deed, lot: int) -> str:
    return shown(deed.value(select(DyeLot.code).where(DyeLot.id == lot)) or "a lot without a code")


def _price_of(deed: Deed, yarn: int) -> int | None:
    price: int | None = deed.value(
        select(Price.price).join(Yarn, (Yarn.base == Price.base) & (Yarn.put_up == Price.put_up))
        .where(Yarn.id == yarn, Price.struck.is_(None)).order_by(Price.id.desc()))
    return price
