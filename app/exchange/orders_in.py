"""A web shop's list from file to book: looked at first, taken in as one deed or not at all."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from pathlib import Path
from typing import TypeVar

from sqlalchemy import Connection, select

from app.calculations.codes import bare_characters
from app.calculations.listing import listing
from app.calculations.moments import day_words
from app.exchange.cells import Table
from app.exchange.columns import ColumnMatch, known_columns, match_columns, with_remembered
from app.exchange.list_file import gathered
from app.exchange.order_headings import ORDERS
from app.exchange.orders_file import (
    Buyer,
    InShop,
    LotFacts,
    OrderRead,
    OrdersList,
    key_of_mail,
    number_of_order,
    read_orders,
)
from app.exchange.reading import bytes_of, read_table
from app.lookups.left_to_sell import left_of
from app.lookups.order_words import studio_names
from app.lookups.studio import setting
from app.problems import Refused
from app.records import Base, Colourway, CustomerOrder, DyeLot, Personal
from app.store.deed import Deed
from app.work.selling import OrderIn, know_customer, pieces, place_order
from app.work.studio import choose

SETTING = "order columns"
MAIL, NUMBER = "mail", "web number"
"""The fields that are kept of a customer of the web shop, beside the name."""
_AT_ONCE = 500  # words that one question takes

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class OrdersSeen:
    """A list as it was understood; nothing of it is in the book yet.

    No orders while a column is lacking or in doubt.
    """

    match: ColumnMatch
    lacks: tuple[str, ...]
    orders: OrdersList | None


def look_at_orders(
    connection: Connection, data: bytes, said: Mapping[str, str], now: datetime
) -> OrdersSeen:
    """Read a list with what the studio remembers of such lists; raises BadInput.

    `said` is {field: heading}, as a person says it now.
    """
    table = read_table(data)
    known = known_columns(setting(connection, SETTING))
    match = match_columns(table, known, said, ORDERS)
    lacks = match.lacks(())
    orders = None if lacks else read_orders(table, match, _in_shop(connection, table, match), now)
    return OrdersSeen(match, lacks, orders)


def see_orders(
    connection: Connection, path: Path, said: Mapping[str, str], now: datetime
) -> OrdersSeen:
    """The same from a file; raises BadInput where it cannot be read at all."""
    return look_at_orders(connection, bytes_of(path), said, now)


def take_in_orders(deed: Deed, seen: OrdersSeen) -> list[int]:
    """All whole orders of a list and how its columns were matched, as one deed; their lines.

    A customer is one that the book knows only where e-mail or customer number are the same.
    """
    orders = seen.orders.orders if seen.orders else ()
    if not orders:
        raise Refused("Nothing of this list can be taken in; nothing was saved.",
                      "Put its rows right, or look whether it is the right file.")
    lines: list[int] = []
    met: dict[str, int] = {}
    for order in orders:
        wanted = tuple(line.wanted for line in order.lines)
        lines += place_order(deed, OrderIn(order.number, order.placed, "web", wanted,
                                           _customer(deed, order.buyer, met)))
    if not seen.match.remembered:
        remembered = with_remembered(setting(deed.connection, SETTING), seen.match)
        choose(deed, {SETTING: remembered})
    out = len(seen.orders.out) if seen.orders else 0
    deed.say(f"took in {told(orders)}" + (f"; {_orders(out)} left out" if out else ""))
    return lines


def told(orders: Sequence[OrderRead]) -> str:
    """'12 orders, 31 pieces'."""
    return f"{_orders(len(orders))}, {pieces(sum(order.count for order in orders))}"


def stays_out(orders: OrdersList) -> Iterator[str]:
    """A sentence for all that is not taken in, and why."""
    yield from gathered(orders.troubles)
    if orders.out:
        many = len(orders.out) > 1
        yield (f"Order{'s' if many else ''} {_listed(orders.out)} stay{'' if many else 's'} out "
               "whole: nothing is half taken in.")
    for number, placed in list(orders.before.items())[:_FEW]:
        yield f"Order {number} of {day_words(placed)} is in the book already: it is skipped."
    if len(orders.before) > _FEW:
        yield f"So are {len(orders.before) - _FEW} more."


_FEW = 4


def _listed(numbers: Sequence[str]) -> str:
    more = [f"{len(numbers) - _FEW} more"] if len(numbers) > _FEW else []
    return listing([*numbers[:_FEW], *more])


def _orders(count: int) -> str:
    return "1 order" if count == 1 else f"{count} orders"


def _customer(deed: Deed, buyer: Buyer | None, met: dict[str, int]) -> int | None:
    """The customer of an order; who stands in this list twice is known once."""
    if buyer is None or buyer.known is not None:
        return buyer.known if buyer else None
    keys = [key for key in (buyer.mail and f"{MAIL} {key_of_mail(buyer.mail)}",
                            buyer.number and f"{NUMBER} {buyer.number}") if key]
    found = next((met[key] for key in keys if key in met), None)
    if found is None:
        fields = {MAIL: buyer.mail, NUMBER: buyer.number}
        found = know_customer(deed, buyer.name, {f: words for f, words in fields.items() if words})
    met.update(dict.fromkeys(keys, found))
    return found


def _in_shop(connection: Connection, table: Table, match: ColumnMatch) -> InShop:
    numbers = {number_of_order(words) for words in _column(table, match, "number")}
    codes = {bare_characters(words) for words in _column(table, match, "lot")}
    orders = {row.number: row.placed for some in _in_parts(numbers) for row in connection.execute(
        select(CustomerOrder.number, CustomerOrder.placed)
        .where(CustomerOrder.number.in_(some), CustomerOrder.struck.is_(None)))}
    lots = [row for some in _in_parts(codes) for row in connection.execute(
        select(DyeLot.code, DyeLot.id, DyeLot.colourway, DyeLot.base, Colourway.name,
               Base.name.label("of"))
        .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == DyeLot.base)
        .where(DyeLot.code.in_(some), DyeLot.struck.is_(None)))]
    left = left_of(connection, [row.id for row in lots])
    known: dict[str, dict[str, int]] = {MAIL: {}, NUMBER: {}}
    for row in connection.execute(
            select(Personal.field, Personal.value, Personal.customer)
            .where(Personal.field.in_(known), Personal.customer.is_not(None),
                   Personal.value.is_not(None), Personal.struck.is_(None))
            .order_by(Personal.id.desc())):
        key = key_of_mail(row.value) if row.field == MAIL else row.value
        known[row.field][key] = row.customer
    return InShop(
        studio_names(connection),
        {row.code: LotFacts(row.id, row.colourway, row.base, f"{row.name}, {row.of}",
                            left[row.id].count) for row in lots},
        orders, known[MAIL], known[NUMBER])


def _column(table: Table, match: ColumnMatch, name: str) -> Iterator[str]:
    place = match.places.get(name)
    if place is not None:
        for row in table.rows:
            cell = row[place] if row.number > match.row else ""
            if cell != "":
                yield f"{cell.normalize():f}" if isinstance(cell, Decimal) else str(cell)


def _in_parts(words: Collection[T]) -> Iterator[list[T]]:
    every = list(words)
    yield from (every[at:at + _AT_ONCE] for at in range(0, len(every), _AT_ONCE))
