"""Where skeins stay now: the place, or the order and buyer they went to, and since when."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.records import CustomerOrder, OrderLine, Plate, Whereabouts
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Stay:
    """A place by its words or number; an order's number; who has it or has it put by."""

    place: str | None
    order: str | None
    customer: int | None
    since: datetime | None


NOWHERE = Stay(None, None, None, None)
_STAYS = (
    select(Whereabouts.yarn, Whereabouts.since, Whereabouts.customer, Plate.code, Plate.words,
           CustomerOrder.number, CustomerOrder.customer.label("buyer"))
    .outerjoin(Plate, Plate.id == Whereabouts.place)
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .outerjoin(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(among(Whereabouts.yarn, "ids"), Whereabouts.until.is_(None),
           Whereabouts.struck.is_(None))
)


def stays_of(connection: Connection, yarn: Iterable[int]) -> dict[int, Stay]:
    """The stay of each of these rows that has one."""
    return {row.yarn: Stay(
        row.words or (row.code and str(int(row.code[1:-1]))), row.number,
        row.buyer or row.customer, row.since)
        for row in connection.execute(_STAYS, {"ids": listed(yarn)})}
