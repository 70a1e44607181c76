"""What the counter asks the book for one text: a lot, a skein, a shelf, a buyer, or a choice."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, time
from typing import Any

from app.calculations.codes import Kind, bare_characters, code_of
from app.calculations.typed_codes import UNREADABLE
from app.exchange.orders_file import number_of_order
from app.lookups.bought import Bought, bought_by, bought_on, sold_without_a_name
from app.lookups.counter import AtCounter, Tagged, at_counter
from app.lookups.customers import (
    Known,
    OrderFound,
    customer_known,
    customers_named,
    order_numbered,
)
from app.lookups.kits import KitNow, kit_now, kits_named
from app.lookups.lot_lines import LotLine, lot_lines, lots_named
from app.lookups.shelves import ShelfLot, on_shelf, shelf_words
from app.lookups.things import Found, by_codes
from app.scanning.gaps import said_with_gaps
from app.scanning.how_known import Came
from app.scanning.read_back import ReadBack, read_with_gaps
from app.scanning.resolve import MOST_LISTED, Resolution, resolve
from app.scanning.saying import quoted, that_is
from app.window.benches.counter.words import skein_words
from app.window.parts.days import month_said

_ASKED_HERE = (Kind.LOT, Kind.SKEIN, "tag", Kind.SHELF, Kind.KIT)


@dataclass(frozen=True, slots=True)
class Purchases:
    """What somebody bought, what an order holds, or what was sold in a month without a name."""

    title: str
    rows: tuple[Bought, ...]
    buyer: Known | None = None
    order: OrderFound | None = None

    @property
    def one_order(self) -> str:
        """The one order before the person, to which something may come back."""
        numbers = {one.number for one in self.rows if one.count}
        return numbers.pop() if len(numbers) == 1 else ""


@dataclass(frozen=True, slots=True)
class OnShelf:
    """A shelf and what lies there."""

    id: int
    words: str
    lots: tuple[ShelfLot, ...]


@dataclass(frozen=True, slots=True)
class Answer:
    """What a text stands for: one of these, or several to choose from, or a sentence why not."""

    text: str
    lot: AtCounter | None = None
    skein: Tagged | None = None
    note: str = ""
    """What is said of the tag itself: that it hangs on nothing, or is void and what wears another.
    """
    purchases: Purchases | None = None
    shelf: OnShelf | None = None
    kit: KitNow | None = None
    read: ReadBack | None = None
    """What was read of photographs, or may be meant by a code with gaps."""
    lots: tuple[LotLine, ...] = ()
    tags: tuple[Found, ...] = ()
    buyers: tuple[Known, ...] = ()
    sentence: str = ""
    next_step: str = ""
    basis: str = "scanned"
    """How the lot is known: a photograph, or what was told, only states it."""

    @property
    def choices(self) -> int:
        """Of how many things one is to be chosen."""
        return len(self.lots) + len(self.tags) + len(self.buyers)


def find(connection: Any, text: str, typed: bool, now: datetime) -> Answer:
    """What was scanned or typed."""
    gaps = said_with_gaps(text) if typed else None
    if gaps is not None:
        came = Came.GAPS if UNREADABLE in text else Came.TOLD
        return Answer(text, read=read_with_gaps(connection, *gaps, came))
    may_be_order = typed or code_of(bare_characters(text)) is None
    order = order_numbered(connection, number_of_order(text)) if may_be_order else None
    if order is not None:
        return Answer(text, purchases=_of_order(connection, order))
    only_words = typed and not any(c.isdigit() or c == UNREADABLE for c in text)
    answer = _several(connection, text, Resolution(), now) if only_words else None
    if answer is not None:  # no code is all letters
        return answer
    told = resolve(connection, text, typed)
    if told.found is not None:
        return _one(connection, text, told, told.found, now)
    answer = _several(connection, text, told, now) if typed else None
    return answer or Answer(text, sentence=told.sentence, next_step=told.next_step)


def look_at_lot(connection: Any, lot: int) -> Answer:
    """A lot that was chosen."""
    return Answer("", lot=at_counter(connection, lot))


def look_as_stated(connection: Any, thing: Found, from_words: str, now: datetime) -> Answer:
    """A lot or a tag that was only named: its skein does not lie on the counter."""
    answer = find(connection, thing.code, False, now)
    stated = f"{thing.shown} as stated, {from_words}: scan its tag when it is here."
    more = skein_words(answer.skein, now) if answer.skein else answer.note
    return replace(answer, skein=None, basis="stated", note=f"{stated} {more}".strip())


def look_at_buyer(connection: Any, buyer: Known) -> Answer:
    """A customer who was chosen."""
    return Answer("", purchases=_of_buyer(connection, buyer))


def as_they_are(connection: Any, lots: Iterable[int]) -> Mapping[int, AtCounter]:
    """Lots once more, after something was done."""
    return {lot: at_counter(connection, lot) for lot in lots}


def buyer_of(connection: Any, answer: Purchases) -> Purchases:
    """The same purchases as they are now."""
    if answer.buyer is not None and answer.order is None:
        return _of_buyer(connection, answer.buyer)
    return _of_order(connection, answer.order) if answer.order is not None else answer


def called(connection: Any, words: str) -> tuple[str, tuple[Known, ...]]:
    """Who is called so, with the words that were asked."""
    return words, customers_named(connection, words)


def _one(
    connection: Any, text: str, told: Resolution, found: Found, now: datetime
) -> Answer:
    if found.kind not in _ASKED_HERE:
        return Answer(text, sentence=that_is(found), next_step="The counter has no use for it.")
    if found.kind == Kind.SHELF:
        return Answer(text, shelf=OnShelf(found.id, shelf_words(connection, found.id),
                                          on_shelf(connection, found.id)))
    if found.kind == Kind.KIT:
        kit = kit_now(connection, found.id)
        if kit.gone is not None:
            return Answer(text, sentence=kit.gone[0], next_step=kit.gone[1])
        return Answer(text, kit=kit)
    if found.kind == Kind.LOT:
        return Answer(text, lot=at_counter(connection, found.id))
    (lot,) = by_codes(connection, [found.code.rpartition("-")[0]])
    at = at_counter(connection, lot.id)
    if found.void:
        after = at.tagged(found.successor or "")
        more = f" {skein_words(after, now)}" if after else ""
        return Answer(text, lot=at, note=told.sentence + more)
    note = told.sentence if found.kind == "tag" or told.choices else ""
    return Answer(text, lot=at, skein=at.tagged(found.code), note=note)


def _several(connection: Any, text: str, told: Resolution, now: datetime) -> Answer | None:
    """Names, parts of codes, a buyer with words of what they bought, a month with the same."""
    named = lots_named(connection, text)
    buyers = customers_named(connection, text)
    offered = {thing.id for thing in told.choices if thing.kind == Kind.LOT}
    tags = (*(thing for thing in told.choices if thing.kind in (Kind.SKEIN, "tag")),
            *kits_named(connection, text))
    lots = lot_lines(connection, {*named, *offered})
    if not (lots or tags or buyers):
        return _bought_such(connection, text) or _in_month(connection, text, now)
    if buyers and not (lots or tags or len(buyers) > 1):
        return Answer(text, purchases=_of_buyer(connection, buyers[0]))
    if named and not (buyers or tags or len(lots) > 1):
        return Answer(text, lot=at_counter(connection, named[0]))
    said = f"These fit {quoted(text)}." if named or buyers or not told.choices else told.sentence
    return Answer(text, lots=lots[:MOST_LISTED], tags=tags, buyers=buyers, sentence=said)


def _bought_such(connection: Any, text: str) -> Answer | None:
    """A customer's name with words of a colourway or base: only what fits of what they bought."""
    words = text.split()
    for cut in range(len(words) - 1, 0, -1):
        for name, rest in ((words[:cut], words[cut:]), (words[-cut:], words[:-cut])):
            buyers = customers_named(connection, " ".join(name))
            if len(buyers) == 1:
                wanted = set(lots_named(connection, " ".join(rest), 10_000))
                if wanted:
                    rows = tuple(one for one in bought_by(connection, buyers[0].id)
                                 if one.lot is not None and one.lot.lot in wanted)
                    title = f"{buyers[0].name}, “{' '.join(rest)}”"
                    return Answer(text, purchases=Purchases(title, rows, buyers[0]))
            elif buyers:
                return Answer(text, buyers=buyers)
    return None


def _in_month(connection: Any, text: str, now: datetime) -> Answer | None:
    there = now.astimezone()
    said = month_said(text, there.date())
    if said is None:
        return None
    since, until, words = said
    first, after = (datetime.combine(day, time()).astimezone() for day in (since, until))
    buyers = customers_named(connection, words)
    if len(buyers) > 1:
        return Answer(text, buyers=buyers, sentence=f"These fit {quoted(text)}.")
    if buyers:
        there_then = tuple(one for one in bought_by(connection, buyers[0].id)
                           if first <= one.placed < after)
        return Answer(text, purchases=Purchases(
            f"{buyers[0].name}, in {since:%B %Y}", there_then, buyers[0]))
    rows = sold_without_a_name(connection, first, after, words)
    return Answer(text, purchases=Purchases(
        f"Sold without a name in {since:%B %Y}, “{words}”", rows))


def _of_buyer(connection: Any, buyer: Known) -> Purchases:
    known = customer_known(connection, buyer.id) or buyer
    return Purchases(known.name, bought_by(connection, buyer.id), known)


def _of_order(connection: Any, order: OrderFound) -> Purchases:
    buyer = customer_known(connection, order.customer) if order.customer else None
    title = f"Order {order.number}" + (f", {order.name}" if order.name else ", without a name")
    return Purchases(title, bought_on(connection, [order.id]), buyer, order)

