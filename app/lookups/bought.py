"""Same as last time: what left for a customer or on an order, line by line, lot by lot."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, select

from app.lookups.agreed import Agreed, agreed_lines
from app.lookups.lot_lines import LotLine, lot_lines, lots_named
from app.records import (
    CustomerOrder,
    OrderLine,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.dialect import among, listed

WALK_IN_LOTS = 150
"""Newest lots of a name, dyed before the month's end, in which a sale without a name is sought."""


@dataclass(frozen=True, slots=True)
class Bought:
    """So many of one lot on one line of an order; no lot: nothing left for the line yet."""

    order: int
    number: str
    placed: datetime
    channel: str
    what: str
    lot: LotLine | None
    put_up: str
    count: int
    """Skeins that were sold, back since or not."""
    back: int = 0
    waiting: int = 0
    """Taken for the order and not sent yet."""
    wanted: int = 0
    over: bool = False
    """Whether what was not filled of the line was called off."""
    agreed: Agreed | None = None
    """How it was settled that the line is from two lots, or from another than was asked for."""


_LINES = (
    select(OrderLine.id, OrderLine.what, OrderLine.wanted, OrderLine.lot, OrderLine.put_up,
           OrderLine.over, CustomerOrder.id.label("order"), CustomerOrder.number,
           CustomerOrder.placed, CustomerOrder.channel)
    .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(among(OrderLine.customer_order, "ids"), OrderLine.struck.is_(None))
    .order_by(CustomerOrder.placed.desc(), OrderLine.id)
)
_LEFT_FOR = (
    select(Whereabouts.line, Whereabouts.yarn, Whereabouts.state, Whereabouts.since,
           Whereabouts.until, Yarn.put_up)
    .join(Yarn, Yarn.id == Whereabouts.yarn)
    .where(among(Whereabouts.line, "ids"), Whereabouts.struck.is_(None))
    .order_by(Whereabouts.since, Whereabouts.id)
)
_WORN = (
    select(TagOn.yarn, TagOn.since, Tag.lot).join(Tag, Tag.id == TagOn.tag)
    .where(among(TagOn.yarn, "ids"), TagOn.struck.is_(None)).order_by(TagOn.since)
)
_SOLD_OF_LOTS = (
    select(CustomerOrder.id).distinct()
    .select_from(Tag).join(TagOn, (TagOn.tag == Tag.id) & TagOn.struck.is_(None))
    .join(Whereabouts, (Whereabouts.yarn == TagOn.yarn) & Whereabouts.struck.is_(None))
    .join(OrderLine, OrderLine.id == Whereabouts.line)
    .join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(among(Tag.lot, "ids"), Whereabouts.state == "sent", CustomerOrder.customer.is_(None))
)


def bought_by(connection: Connection, customer: int) -> tuple[Bought, ...]:
    """All that a customer bought or was promised, the last first."""
    return bought_on(connection, connection.execute(
        select(CustomerOrder.id).where(CustomerOrder.customer == customer,
                                       CustomerOrder.struck.is_(None))).scalars().all())


def bought_on(connection: Connection, orders: Iterable[int]) -> tuple[Bought, ...]:
    """All that left on these orders, and what they still wait for, the last order first."""
    lines = connection.execute(_LINES, {"ids": listed(orders)}).all()
    left_for = connection.execute(
        _LEFT_FOR, {"ids": listed(line.id for line in lines)}).all()
    lots = _lots_when_they_left(connection, left_for)
    wanted = {*lots.values(), *(line.lot for line in lines)} - {None}
    shown = {one.lot: one for one in lot_lines(connection, (lot for lot in wanted if lot))}
    agreed = agreed_lines(connection, (line.id for line in lines))
    return tuple(replace(one, agreed=agreed.get(line.id))
                 for line in lines for one in _of_line(line, left_for, lots, shown))


def sold_without_a_name(
    connection: Connection, since: datetime, until: datetime, words: str
) -> tuple[Bought, ...]:
    """What of a colourway or base was sold in this time to nobody known, the last first."""
    year, week, _ = until.isocalendar()
    lots = lots_named(connection, words, WALK_IN_LOTS, f"{year % 100:02}{week + 1:02}")
    orders = connection.execute(
        _SOLD_OF_LOTS.where(Whereabouts.since >= since, Whereabouts.since < until),
        {"ids": listed(lots)}).scalars().all()
    return tuple(one for one in bought_on(connection, orders)
                 if one.lot is not None and one.lot.lot in lots)


def _lots_when_they_left(
    connection: Connection, rows: Sequence[Row[*tuple[Any, ...]]]
) -> dict[int, int]:
    """{skein: lot} by the tag it wore when it left; by its first where it left before that."""
    moved = {row.yarn: row.since for row in rows}
    lots: dict[int, int] = {}
    for yarn, since, lot in connection.execute(_WORN, {"ids": listed(moved)}):
        if yarn not in lots or since <= moved[yarn]:
            lots[yarn] = lot
    return lots


def _of_line(
    line: Row[*tuple[Any, ...]], left_for: Sequence[Row[*tuple[Any, ...]]],
    lots: dict[int, int], shown: dict[int, LotLine],
) -> list[Bought]:
    last = {row.yarn: row for row in left_for if row.line == line.id}
    groups: dict[tuple[int | None, str], list[Row[*tuple[Any, ...]]]] = {}
    for yarn, row in last.items():
        if row.state == "sent" or row.until is None:
            groups.setdefault((lots.get(yarn), row.put_up), []).append(row)
    made = [
        Bought(line.order, line.number, line.placed, line.channel, line.what,
               shown.get(lot) if lot else None, put_up,
               sum(row.state == "sent" for row in rows),
               sum(row.state == "sent" and row.until is not None for row in rows),
               sum(row.state == "taken" for row in rows), line.wanted, line.over is not None)
        for (lot, put_up), rows in groups.items()
    ]
    return made or [Bought(line.order, line.number, line.placed, line.channel, line.what,
                           shown.get(line.lot) if line.lot else None,
                           line.put_up or "skein", 0, wanted=line.wanted,
                           over=line.over is not None)]
