"""One lot as the shop sees it: what is left to sell, where it lies, and where the others are."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, func, select

from app.lookups.agreed import OfferKept, offers_of
from app.lookups.certainty import held_by
from app.lookups.customers import names_of
from app.lookups.holds import HoldFacts, hold_facts
from app.lookups.left_to_sell import Left, Promise, left_to_sell, wanting
from app.lookups.lot_lines import LotLine, lot_line
from app.lookups.prices import currency, price_of
from app.lookups.thread import thread
from app.lookups.told_faults import ToldFault, not_seen_good
from app.records import (
    CustomerOrder,
    Kit,
    OrderLine,
    Plate,
    PutUp,
    Second,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.dialect import among, listed

UNSOLD = ("table", "shelf", "put by", "kit", "taken", "fair")


@dataclass(frozen=True, slots=True)
class Tagged:
    """A skein that wears a tag of the lot: what it is, and where it is now."""

    yarn: int
    mark: str
    put_up: str
    mm: int | None
    """What its tag promises; none where that is not known."""
    state: str | None
    since: datetime | None
    place: int | None
    place_code: str | None
    place_words: str
    ends: datetime | None
    order: str | None
    customer: int | None
    name: str | None
    """Of whom it is put by for, or who has it; none where that is not known or was removed."""
    kit: str | None
    second: str | None
    """What is seen of a second."""
    price: int | None
    void: bool
    holds: tuple[int, ...] = ()
    told: tuple[ToldFault, ...] = ()
    """Faults that were told of it, where nobody saw it good since."""
    kit_id: int | None = None
    """The bag it is in, by its number in the book."""

    @property
    def order_of_place(self) -> tuple[str, str]:
        """Lowest place first, then by mark: the way of one who fetches."""
        return self.place_code or "~", self.mark


@dataclass(frozen=True, slots=True)
class AtCounter:
    """A lot with all that the shop asks of it."""

    line: LotLine
    left: Left
    skeins: tuple[Tagged, ...]
    remade: int
    """Skeins that wore a tag of it and became something else."""
    undone: int
    """Skeins that wore a tag of it and wear none of it any more."""
    promises: tuple[Promise, ...]
    currency: str
    """The words that stand after a price."""
    holds: tuple[HoldFacts, ...]
    """Those of all its skeins, sold ones too."""
    offers: tuple[OfferKept, ...]
    """What was offered to those who wanted more of it, the last first."""

    @property
    def free(self) -> tuple[Tagged, ...]:
        """Those that lie free, the longest put-up first, of these the lowest place first."""
        ids = set(self.left.skeins)
        return tuple(sorted((one for one in self.skeins if one.yarn in ids),
                            key=lambda one: (-(one.mm or 0), *one.order_of_place)))

    def tagged(self, mark: str) -> Tagged | None:
        """The skein with this mark, if it wears it."""
        return next((one for one in self.skeins if one.mark == mark), None)

    def holds_of(self, skein: Tagged) -> tuple[HoldFacts, ...]:
        """Those that lie above this very skein."""
        return tuple(hold for hold in self.holds if hold.id in skein.holds)

    def holds_in_sight(self, skein: Tagged | None) -> tuple[HoldFacts, ...]:
        """Those of what is still here, and of this very skein, sold or not."""
        here = {hold for one in self.skeins if one.state in UNSOLD or one is skein
                for hold in one.holds}
        return tuple(hold for hold in self.holds if hold.id in here)


_BUYER = func.coalesce(Whereabouts.customer, CustomerOrder.customer)
_SKEINS = (
    select(TagOn.yarn, Tag.mark, Tag.void, Yarn.base, Yarn.put_up, PutUp.nominal_mm,
           Whereabouts.state, Whereabouts.since, Whereabouts.place, Whereabouts.ends,
           Plate.code, Plate.kind, Plate.words, CustomerOrder.number, _BUYER.label("customer"),
           Kit.name.label("kit"), Kit.id.label("kit_id"), Second.why)
    .select_from(Tag)
    .join(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .join(Yarn, Yarn.id == TagOn.yarn)
    .outerjoin(PutUp, (PutUp.base_version == Tag.base_version) & (PutUp.name == Yarn.put_up)
               & PutUp.struck.is_(None))
    .outerjoin(Whereabouts, (Whereabouts.yarn == Yarn.id) & Whereabouts.until.is_(None)
               & Whereabouts.struck.is_(None))
    .outerjoin(Plate, Plate.id == Whereabouts.place)
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .outerjoin(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .outerjoin(Kit, Kit.id == Whereabouts.kit)
    .outerjoin(Second, (Second.yarn == Yarn.id) & Second.struck.is_(None))
    .where(among(Tag.lot, "ids"), Tag.struck.is_(None))
    .order_by(Tag.mark)
)
_WORE = (
    select(TagOn.yarn, Yarn.closed).distinct()
    .join(Tag, Tag.id == TagOn.tag).join(Yarn, Yarn.id == TagOn.yarn)
    .where(among(Tag.lot, "ids"), Tag.struck.is_(None), TagOn.struck.is_(None),
           Yarn.struck.is_(None))
)


def at_counter(connection: Connection, lot: int) -> AtCounter:
    """All that the shop asks of a lot."""
    rows = {row.yarn: row for row in connection.execute(_SKEINS, {"ids": listed([lot])})}
    wore = connection.execute(_WORE, {"ids": listed([lot])}).all()
    gone = [row.closed for row in wore if row.yarn not in rows]
    held, told = _held(connection, list(rows)), not_seen_good(connection, rows)
    names = names_of(connection, {row.customer for row in rows.values()})
    prices = {kind: price_of(connection, *kind)
              for kind in {(row.base, row.put_up) for row in rows.values()}}
    return AtCounter(
        lot_line(connection, lot), left_to_sell(connection, lot),
        tuple(_tagged(row, prices, held.get(row.yarn, ()), told.get(row.yarn, ()), names)
              for row in rows.values()),
        sum(closed is not None for closed in gone), sum(closed is None for closed in gone),
        wanting(connection, lot), currency(connection),
        hold_facts(connection, sorted({one for holds in held.values() for one in holds})),
        offers_of(connection, lot))


def place_words(kind: str | None, code: str | None, words: str | None) -> str:
    """'shelf 004, by the window': the number on the plate, and what else it bears."""
    if code is None:
        return ""
    return f"{kind} {code[1:-1]}" + (f", {words}" if words else "")


def _tagged(
    row: Row[*tuple[Any, ...]], prices: Mapping[tuple[int, str], int | None],
    holds: tuple[int, ...], told: tuple[ToldFault, ...], names: Mapping[int, str],
) -> Tagged:
    return Tagged(
        row.yarn, row.mark, row.put_up, row.nominal_mm, row.state, row.since, row.place, row.code,
        place_words(row.kind, row.code, row.words), row.ends, row.number, row.customer,
        names.get(row.customer), row.kit, row.why, prices.get((row.base, row.put_up)),
        row.void is not None, holds, told, row.kit_id)


def _held(connection: Connection, yarn: Sequence[int]) -> dict[int, tuple[int, ...]]:
    found = thread(connection, yarn)
    return {row: held_by(found, row) for row in yarn} if found.holds else {}

