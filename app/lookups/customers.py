"""Who buys: customers by their name, and orders by their number.

Names can be removed on request, so they stand in no index of their own: they are read through,
few and short as they are.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.records import CustomerOrder, Personal
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Known:
    """Someone who buys: the name, and when they bought last."""

    id: int
    name: str
    orders: int
    last: datetime | None


@dataclass(frozen=True, slots=True)
class OrderFound:
    """An order by its number."""

    id: int
    number: str
    placed: datetime
    channel: str
    customer: int | None
    name: str | None


_NAMES = (
    select(Personal.customer, Personal.value)
    .where(Personal.customer.is_not(None), Personal.field == "name",
           Personal.value.is_not(None), Personal.struck.is_(None))
    .order_by(Personal.id)
)
_ORDERS = (
    select(CustomerOrder.customer, func.count().label("orders"),
           func.max(CustomerOrder.placed).label("last"))
    .where(among(CustomerOrder.customer, "ids"), CustomerOrder.struck.is_(None))
    .group_by(CustomerOrder.customer)
)


def customers_named(connection: Connection, words: str, limit: int = 20) -> tuple[Known, ...]:
    """Customers in whose name every one of these words begins a word, the last buyer first."""
    asked = words.casefold().split()
    if not asked:
        return ()
    names = {row.customer: row.value for row in connection.execute(_NAMES)
             if _called(row.value, asked)}
    known = _known(connection, names)
    return tuple(sorted(known, key=lambda one: (one.last is None, -_stamp(one.last))))[:limit]


def customers_sought(
    connection: Connection, words: str, number: str,
    month: tuple[datetime, datetime, str] | None = None,
) -> tuple[Known, ...]:
    """By a name, an order's number, or the month in which somebody so called bought.

    `month` is from when, until when, and the other words, which may be none.
    """
    order = order_numbered(connection, number)
    if order is not None:
        known = None if order.customer is None else customer_known(connection, order.customer)
        return () if known is None else (known,)
    named = customers_named(connection, words)
    if named or month is None:
        return named
    since, until, rest = month
    bought = set(connection.execute(
        select(CustomerOrder.customer)
        .where(CustomerOrder.placed >= since, CustomerOrder.placed < until,
               CustomerOrder.customer.is_not(None), CustomerOrder.struck.is_(None))).scalars())
    return tuple(one for one in _known(connection, names_of(connection, bought))
                 if _called(one.name, rest.casefold().split()))


def customer_known(connection: Connection, customer: int) -> Known | None:
    """One customer; none where the name was removed."""
    name = connection.execute(_NAMES.where(Personal.customer == customer)).first()
    return None if name is None else _known(connection, {customer: name.value})[0]


def names_of(connection: Connection, customers: Iterable[int | None]) -> dict[int, str]:
    """{customer: name} of those whose name is known."""
    ids = listed(sorted({one for one in customers if one is not None}))
    rows = connection.execute(_NAMES.where(among(Personal.customer, "ids")), {"ids": ids})
    return {row.customer: row.value for row in rows}


def order_numbered(connection: Connection, number: str) -> OrderFound | None:
    """The order with this number, as it was written or in capitals."""
    row = connection.execute(
        select(CustomerOrder.id, CustomerOrder.number, CustomerOrder.placed,
               CustomerOrder.channel, CustomerOrder.customer, Personal.value.label("name"))
        .outerjoin(Personal, (Personal.customer == CustomerOrder.customer)
                   & (Personal.field == "name") & Personal.struck.is_(None))
        .where(CustomerOrder.number.in_({number, number.upper()}), CustomerOrder.struck.is_(None))
    ).first()
    return None if row is None else OrderFound(*row)


def _known(connection: Connection, names: dict[int, str]) -> list[Known]:
    orders = _orders(connection, names)
    return [Known(customer, name, *orders.get(customer, (0, None)))
            for customer, name in names.items()]


def _orders(
    connection: Connection, customers: Iterable[int]
) -> dict[int, tuple[int, datetime | None]]:
    return {row.customer: (row.orders, row.last)
            for row in connection.execute(_ORDERS, {"ids": listed(customers)})}


def _called(name: str, asked: list[str]) -> bool:
    parts = name.casefold().replace("-", " ").replace(".", " ").split()
    return all(any(part.startswith(word.strip(".")) for part in parts) for word in asked)


def _stamp(moment: datetime | None) -> float:
    return moment.timestamp() if moment else 0.0
