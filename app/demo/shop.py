"""Orders, the till, what is put by, kits, the fair, and what comes back."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, time

from sqlalchemy import Connection, select

from app.demo.hands import Hands
from app.demo.opening import base_called, colourway_called
from app.demo.sources import Line, rows
from app.exchange.orders_in import MAIL, look_at_orders, take_in_orders
from app.lookups.left_to_sell import FILLED, left_to_sell
from app.problems import NotFound
from app.records import (
    CustomerOrder,
    DyeLot,
    OrderLine,
    Personal,
    Second,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.dialect import among, listed
from app.work.kits import make_kit, open_kit, sell_kit
from app.work.mixing import lose
from app.work.moving import To, move, put_by
from app.work.returning import came_back, came_back_untagged
from app.work.selling import (
    OrderIn,
    Wanted,
    know_customer,
    place_order,
    sell,
    send,
    take_for,
)

AT_THE_TILL = (1, 1, 1, 2, 2, 3)
"""How many skeins someone buys who comes in."""


@dataclass(frozen=True, slots=True)
class OpenLine:
    """A line of an order that still wants something."""

    id: int
    number: str
    lot: int | None
    colourway: int | None
    base: int | None
    open: int


def web_orders(hands: Hands, line: Line) -> None:
    """A list of the web shop."""
    data = (hands.folder / "orders" / line["file"]).read_bytes()
    hands.do(take_in_orders, hands.book.ask(look_at_orders, data, {}, hands.now()))


def order(hands: Hands, line: Line) -> None:
    """An order that was written down in the shop."""
    wanted = tuple(_wanted(hands, one) for one in line["lines"])
    placed = OrderIn(line["number"], hands.now(), line["channel"], wanted,
                     _customer(hands, line))
    hands.do(place_order, placed)


def pack(hands: Hands, line: Line) -> None:
    """All open orders that can be filled are, each line from one lot, and the parcels leave."""
    for number in dict.fromkeys(row.number for row in hands.book.ask(open_lines)):
        lines = [row for row in hands.book.ask(open_lines) if row.number == number]
        found: dict[int, list[int]] = {}
        for row in lines:
            gone = [skein for skeins in found.values() for skein in skeins]
            found[row.id] = _skeins_for(hands, row, gone)
        if all(found.values()):
            for line_of, skeins in found.items():
                hands.do(take_for, line_of, skeins)
            hands.do(send, number)


def take(hands: Hands, line: Line) -> None:
    """Skeins of a named lot are taken for an order, by scan."""
    row = next(one for one in hands.book.ask(open_lines) if one.number == line["order"])
    hands.do(take_for, row.id, hands.skeins(hands.lot(line["lot"]))[:line["skeins"]])


def send_order(hands: Hands, line: Line) -> None:
    """The parcel leaves."""
    hands.do(send, line["order"])


def walk_in(hands: Hands, line: Line) -> None:
    """Someone comes in and buys what is named, or what pleases; no name is asked."""
    if "lot" in line:
        lot = hands.lot(line["lot"])
        skeins = (hands.book.ask(free_skeins, lot) or hands.skeins(lot))[:line["skeins"]]
    else:
        skeins = _whatever_pleases(hands)[:hands.whim.choice(AT_THE_TILL)]
    hands.do(sell, skeins, _customer(hands, line), line.get("channel", "shop"))


def sell_down(hands: Hands, line: Line) -> None:
    """A shop takes all that is over, lot by lot, of what the paper names."""
    wanted, taken = [], []
    for over in line["over"]:
        for lot, skeins in _over(hands, over):
            taken.append(skeins)
            wanted.append(Wanted(f"{over['colourway']}, {over['base']}", len(skeins), lot,
                                 over.get("price")))
    lines = hands.do(place_order, OrderIn(line["number"], hands.now(), "web", tuple(wanted),
                                          _customer(hands, line)))
    for row, skeins in zip(lines, taken, strict=True):
        hands.do(take_for, row, skeins)
    hands.do(send, line["number"])


def keep(hands: Hands, line: Line) -> None:
    """Put by for someone."""
    skeins = hands.skeins(hands.lot(line["lot"]))[:line["skeins"]]
    until = datetime.combine(line["until"], time(18), UTC)
    hands.do(put_by, skeins, hands.place(line), until, _customer(hands, line))


def kit(hands: Hands, line: Line) -> None:
    """A bag is filled: from the named lots, else from whichever has enough."""
    skeins = [row for one in line["of"] for row in _for_kit(hands, one)]
    hands.kits[line["name"]] = hands.do(make_kit, line["title"], skeins)


def kit_opened(hands: Hands, line: Line) -> None:
    """A bag that was not sold is opened again."""
    hands.do(open_kit, hands.kits[line["name"]], hands.place(line))


def kit_sold(hands: Hands, line: Line) -> None:
    """A bag is sold as it is."""
    hands.do(sell_kit, hands.kits[line["name"]], _customer(hands, line), line["price"])


def to_fair(hands: Hands, line: Line) -> None:
    """A box for the fair."""
    skeins = [row for one in line["of"] for row in _for_kit(hands, one)]
    hands.do(move, skeins, To("fair", hands.place(line)))
    hands.kept["fair"] = skeins


def at_fair(hands: Hands, line: Line) -> None:
    """What was sold there, what was lost, and what came home."""
    box = hands.kept.pop("fair")
    for _ in range(line["sold"]):
        hands.do(sell, [box.pop()], None, "fair")
    for _ in range(line["lost"]):
        hands.do(lose, box.pop(), 1)
    hands.do(move, box, To("shelf", hands.place(line)))


def back(hands: Hands, line: Line) -> None:
    """Skeins of an order come back, with their tags."""
    rows = hands.book.ask(sent_with, line["order"])[:line["skeins"]]
    hands.do(came_back, rows, line["order"])


def back_untagged(hands: Hands, line: Line) -> None:
    """One comes back without its tag: it is one of those that were sent."""
    hands.do(came_back_untagged, hands.book.ask(base_called, line["base"]),
             round(line["g"] * 1000), line["order"])


def _customer(hands: Hands, line: Line) -> int | None:
    name = line.get("customer", "")
    if not name:
        return None
    known = hands.book.ask(customer_called, name)
    if known is not None:
        return known
    mails = {row["name"]: row["mail"] for row in rows(hands.folder / "customers.csv")}
    customer: int = hands.do(know_customer, name, {MAIL: mails[name]} if name in mails else None)
    return customer


def _wanted(hands: Hands, one: Line) -> Wanted:
    lot = hands.lot(one["lot"]) if "lot" in one else None
    return Wanted(f"{one['colourway']}, {one['base']}", one["count"], lot, one.get("price"),
                  hands.book.ask(colourway_called, one["colourway"]),
                  hands.book.ask(base_called, one["base"]), "skein")


def _whatever_pleases(hands: Hands) -> list[int]:
    """Free skeins of one lot or another that no paper names."""
    lots = hands.book.ask(lots_there, hands.kept_lots())
    hands.whim.shuffle(lots)
    return next(free for lot in lots if (free := hands.book.ask(free_skeins, lot)))


def _skeins_for(hands: Hands, row: OpenLine, gone: Collection[int]) -> list[int]:
    """Skeins for a line from one lot, the smallest that has enough: of what is still there."""
    lots = hands.book.ask(lots_there, hands.kept_lots(), row.colourway, row.base)
    there = ([skein for skein in hands.book.ask(free_skeins, lot) if skein not in gone]
             for lot in lots)
    enough = [skeins for skeins in there if len(skeins) >= row.open]
    return min(enough, key=len, default=[])[:row.open]


def _for_kit(hands: Hands, one: Line) -> list[int]:
    if "lot" in one:
        return hands.skeins(hands.lot(one["lot"]))[one.get("from", 0):][:one["count"]]
    lots = hands.book.ask(lots_there, hands.kept_lots(),
                          hands.book.ask(colourway_called, one["colourway"]),
                          hands.book.ask(base_called, one["base"]))
    enough = (hands.book.ask(free_skeins, lot) for lot in lots)
    skeins = next((rows for rows in enough if len(rows) >= one["count"]), None)
    if skeins is None:
        raise NotFound(f"There are no {one['count']} of {one['colourway']} in one lot.")
    return skeins[:one["count"]]


def _over(hands: Hands, over: Line) -> Iterator[tuple[int, list[int]]]:
    """Lots of a colourway, the oldest first, as far as more than wanted are there."""
    colourway = hands.book.ask(colourway_called, over["colourway"])
    base = hands.book.ask(base_called, over["base"])
    everything = hands.book.ask(lots_there, (), colourway, base)
    left = {lot: hands.book.ask(free_skeins, lot) for lot in everything}
    count = sum(map(len, left.values())) - over["down_to"]
    free = hands.book.ask(lots_there, hands.kept_lots(), colourway, base)
    for lot in free:
        skeins = left[lot][:max(0, count)]
        count -= len(skeins)
        if skeins:
            yield lot, skeins
    if count > 0:
        raise NotFound(f"Not so many of {over['colourway']} may go.")


def customer_called(connection: Connection, name: str) -> int | None:
    """The customer who is known by this name; the studio's papers know one of each."""
    return connection.execute(
        select(Personal.customer).where(Personal.field == "name", Personal.value == name,
                                        Personal.customer.is_not(None))).scalar()


def open_lines(connection: Connection) -> list[OpenLine]:
    """Lines of orders that want something still, the oldest first."""
    return [OpenLine(*row) for row in connection.execute(
        select(OrderLine.id, CustomerOrder.number, OrderLine.lot, OrderLine.colourway,
               OrderLine.base, OrderLine.wanted - FILLED)
        .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(OrderLine.over.is_(None), OrderLine.wanted > FILLED)
        .order_by(OrderLine.id))]


def lots_there(
    connection: Connection, but: Collection[int], colourway: int | None = None,
    base: int | None = None,
) -> list[int]:
    """Lots that lie on a shelf, the oldest first, but those; of one look where it is said."""
    there = (
        select(Tag.lot).join(TagOn, TagOn.tag == Tag.id)
        .join(Whereabouts, Whereabouts.yarn == TagOn.yarn)
        .where(TagOn.until.is_(None), TagOn.struck.is_(None), Whereabouts.until.is_(None),
               Whereabouts.struck.is_(None), Whereabouts.state == "shelf"))
    found = select(DyeLot.id).where(DyeLot.id.in_(there), DyeLot.id.not_in(list(but)))
    if colourway is not None:
        found = found.where(DyeLot.colourway == colourway, DyeLot.base == base)
    return list(connection.execute(found.order_by(DyeLot.id)).scalars())


def free_skeins(connection: Connection, lot: int) -> list[int]:
    """The whole skeins of a lot that are first quality, lie on a shelf and are promised to nobody.
    """
    left = left_to_sell(connection, lot)
    whole = connection.execute(
        select(Yarn.id).outerjoin(Second, (Second.yarn == Yarn.id) & Second.struck.is_(None))
        .where(among(Yarn.id, "ids"), Yarn.put_up == "skein", Second.id.is_(None))
        .order_by(Yarn.id), {"ids": listed(left.skeins)}).scalars().all()
    return list(whole[:left.count])


def sent_with(connection: Connection, order: str) -> list[int]:
    """The skeins that are with the buyer of an order."""
    return list(connection.execute(
        select(Whereabouts.yarn).join(OrderLine, OrderLine.id == Whereabouts.line)
        .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(CustomerOrder.number == order, Whereabouts.state == "sent",
               Whereabouts.until.is_(None), Whereabouts.struck.is_(None))
        .order_by(Whereabouts.yarn)).scalars())
