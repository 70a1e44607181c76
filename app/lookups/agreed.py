"""What customers agreed to: lines from two lots, and the answers to what they were offered."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select
from sqlalchemy.orm import aliased

from app.calculations.cards import Compared, compared
from app.lookups.customers import names_of
from app.lookups.shades import newest, read_of_lots
from app.records import DeedRow, DyeLot, LineAgreed, Offer
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Agreed:
    """How a line from two lots was settled, when and by whom."""

    how: str
    at: datetime
    person: str


@dataclass(frozen=True, slots=True)
class OfferKept:
    """An offer as it was made; no difference where none was named."""

    way: str
    wanted: int
    other: str | None
    ciede2000: float | None
    answer: str
    customer: int | None
    name: str | None
    """Of the customer; none where that is not known or was removed."""
    at: datetime
    person: str


_AGREED = (
    select(LineAgreed.line, LineAgreed.how, DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == LineAgreed.deed)
    .where(among(LineAgreed.line, "ids"), LineAgreed.struck.is_(None)).order_by(LineAgreed.id)
)
_OTHER = aliased(DyeLot)
_OFFERS = (
    select(Offer.way, Offer.wanted, _OTHER.code, Offer.centi_delta, Offer.answer, Offer.customer,
           DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == Offer.deed).outerjoin(_OTHER, _OTHER.id == Offer.other_lot)
    .where(Offer.struck.is_(None)).order_by(Offer.id.desc())
)


def agreed_lines(connection: Connection, lines: Iterable[int]) -> Mapping[int, Agreed]:
    """{line: how it was settled}, the last word of each; a line that was not is not there."""
    return {row.line: Agreed(row.how, row.happened, row.person)
            for row in connection.execute(_AGREED, {"ids": listed(lines)})}


def offers_of(connection: Connection, lot: int) -> tuple[OfferKept, ...]:
    """What was offered in the place of a lot, the last first."""
    rows = connection.execute(_OFFERS.where(Offer.lot == lot)).all()
    names = names_of(connection, {row.customer for row in rows})
    return tuple(
        OfferKept(row.way, row.wanted, row.code,
                  None if row.centi_delta is None else row.centi_delta / 100, row.answer,
                  row.customer, names.get(row.customer), row.happened, row.person)
        for row in rows)


def apart_by_card(connection: Connection, lots: Iterable[int]) -> Compared | None:
    """The two least alike of the lots on one line; none where no two of them were read alike."""
    read = read_of_lots(connection, lots)
    cards = [newest(read[lot]) for lot in sorted(read)]
    pairs = [found for number, one in enumerate(cards) for other in cards[number + 1:]
             if (found := compared(one, other)) is not None]
    return max(pairs, key=lambda pair: pair.decisive.at_worst, default=None)
