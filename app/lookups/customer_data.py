"""All that the book keeps of one customer, for the answer to somebody who asks for it."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, literal_column, select

from app.lookups.bought import Bought, bought_by
from app.lookups.skeins import named_by_tag
from app.records import Customer, DeedRow, DyeLot, Offer, Personal, Report, Whereabouts


@dataclass(frozen=True, slots=True)
class KeptFor:
    """A skein that is put by for them."""

    mark: str
    until: datetime


@dataclass(frozen=True, slots=True)
class OfferedTo:
    """What they were offered, and what they said."""

    at: datetime
    lot: str
    way: str
    wanted: int
    answer: str


@dataclass(frozen=True, slots=True)
class Reported:
    """A fault that they told of, in the words that were kept."""

    at: datetime
    fault: str
    words: str


@dataclass(frozen=True, slots=True)
class CustomerData:
    """Everything of one customer; `fields` are the words about the person, as given."""

    customer: int
    fields: tuple[tuple[str, str], ...]
    removed: bool
    """Whether what was known of the person was removed on request."""
    bought: tuple[Bought, ...]
    kept: tuple[KeptFor, ...]
    offered: tuple[OfferedTo, ...]
    reported: tuple[Reported, ...]


def customer_data(connection: Connection, customer: int) -> CustomerData | None:
    """Everything of one customer; none where there is no such customer."""
    if connection.execute(select(Customer.id).where(
            Customer.id == customer, Customer.struck.is_(None))).scalar() is None:
        return None
    fields = connection.execute(
        select(Personal.field, Personal.value)
        .where(Personal.customer == customer, Personal.struck.is_(None))
        .order_by(Personal.id)).all()
    known = tuple((row.field, row.value) for row in fields if row.value is not None)
    return CustomerData(
        customer, known, bool(fields) and not known, bought_by(connection, customer),
        _kept(connection, customer), _offered(connection, customer),
        _reported(connection, customer))


def _kept(connection: Connection, customer: int) -> tuple[KeptFor, ...]:
    rows = connection.execute(
        select(Whereabouts.yarn, Whereabouts.ends)
        .where(Whereabouts.customer == customer, Whereabouts.state == literal_column("'put by'"),
               Whereabouts.ends.is_not(None), Whereabouts.until.is_(None),
               Whereabouts.struck.is_(None))
        .order_by(Whereabouts.ends, Whereabouts.yarn)).all()
    tags = named_by_tag(connection, [row.yarn for row in rows])
    return tuple(KeptFor(tags[row.yarn].mark if row.yarn in tags else "", row.ends)
                 for row in rows)


def _offered(connection: Connection, customer: int) -> tuple[OfferedTo, ...]:
    rows = connection.execute(
        select(DeedRow.happened, DyeLot.code, Offer.way, Offer.wanted, Offer.answer)
        .join(DeedRow, DeedRow.seq == Offer.deed).join(DyeLot, DyeLot.id == Offer.lot)
        .where(Offer.customer == customer, Offer.struck.is_(None)).order_by(Offer.id))
    return tuple(OfferedTo(row.happened, row.code or "", row.way, row.wanted, row.answer)
                 for row in rows)


def _reported(connection: Connection, customer: int) -> tuple[Reported, ...]:
    rows = connection.execute(
        select(DeedRow.happened, Report.fault, Report.words)
        .join(DeedRow, DeedRow.seq == Report.deed)
        .where(Report.customer == customer, Report.struck.is_(None)).order_by(Report.id))
    return tuple(Reported(row.happened, row.fault, row.words or "") for row in rows)
