"""What is done where a customer wants more of a lot: it is asked, offered, answered and done."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from functools import partial
from typing import Any

from app.calculations.listing import listing
from app.calculations.moments import short_day
from app.lookups.counter import AtCounter, Tagged, at_counter
from app.lookups.reorder import Asked, Reorder, reorder
from app.lookups.reorder_ways import Does, Way
from app.window.bench import Bench
from app.window.benches.counter.asking import ShelfCard
from app.window.benches.counter.keeping import KEPT_DAYS, KeepCard, PromiseCard
from app.window.benches.counter.till import Till
from app.window.benches.counter.wanting import MoreCard
from app.window.benches.counter.ways_card import (
    DECLINED,
    ON_A_SHELF,
    ON_ORDER,
    TAKEN,
    SaidCard,
    WaysCard,
    does_words,
)
from app.window.benches.counter.words import fetch_words, pieces, plate_words
from app.window.parts.days import end_of
from app.work.answering import (
    end_put_by_offered,
    keep_offered,
    open_kit_offered,
    promise_offered,
    shelve_offered,
)
from app.work.offering import OfferIn, offered
from app.work.serving import Buyer

HUNDREDTHS = 100


class More:
    """One customer's wish for more: the ways are shown until it is filled, or left."""

    def __init__(self, bench: Bench, till: Till) -> None:
        self._bench, self._till = bench, till
        self._lot: AtCounter | None = None
        self._asked: Asked | None = None
        self._wanted = 0
        self.basis = "scanned"  # how the lot in hand is known

    def wanted(self, lot: AtCounter, count: int | None = None) -> None:
        """Ask how much is wanted; a number that was said already shows the ways at once."""
        self._lot = lot
        put_up = _put_up(lot)
        if count is not None:
            self._look(Asked(lot=lot.line.lot, put_up=put_up, skeins=count))
            return
        card = MoreCard(lot.line.lot, lot.line.shown, put_up)
        card.answered.connect(lambda told: self._look(*told))
        self._till.asks.emit(card)

    def _look(self, asked: Asked) -> None:
        self._asked = replace(asked, basis=self.basis)
        self._bench.ask(self._show, reorder, self._asked, self._now())

    def _show(self, found: Reorder) -> None:
        if self._lot is None or self._asked is None:
            return
        self._wanted = found.wanted
        card = WaysCard(self._lot.line.shown, self._asked.put_up, found)
        card.answered.connect(lambda told: self._look_at(*told))
        self._till.asks.emit(card)

    def _look_at(self, way: Way) -> None:
        """What lies free of the lot is looked up first, so that one key can take it."""
        if self._lot is not None:
            self._bench.ask(partial(self._offer, way), at_counter,
                            way.lot or self._lot.line.lot)

    def _offer(self, way: Way, lot: AtCounter) -> None:
        count, buyer = self._count(way), self._till.buyer
        shelf = plate_words(lot.free[0].place_words) if lot.free else ""
        whose = f" for {buyer.name}" if buyer else ""
        order = (f"{count} on an order{whose}" + (
            "" if way.way == "same lot" else ", customer agreed")
            if way.does is Does.KEEP else "")
        card = SaidCard(way, does_words(way, count, shelf, buyer.name if buyer else "",
                                        short_day(self._until())), order, _kept_for(way))
        card.answered.connect(lambda told: self._answer(way, lot, *told))
        self._till.asks.emit(card)

    def _answer(self, way: Way, lot: AtCounter, said: str, place: int | None = None) -> None:
        if said not in (TAKEN, ON_ORDER):
            self._do(way, said, offered)
        elif said == ON_ORDER:
            self._on_order(way, lot)
        elif way.does is Does.KEEP:
            self._keep(way, lot)
        elif way.does in ON_A_SHELF:
            self._on_a_shelf(way, lot, place)
        else:
            self._do(way, TAKEN, offered)

    def _keep(self, way: Way, lot: AtCounter) -> None:
        """Put by at once for who is served; else it is asked for whom, and until when."""
        chosen = self._chosen(way, lot)
        buyer = self._till.buyer
        if buyer is not None:
            self._do(way, TAKEN, keep_offered, _yarn(chosen), self._until(), Buyer(buyer.id),
                     None, "stated", got=len(chosen), fetch=chosen)
            return
        card = KeepCard(lot, (), None, self._now().astimezone().date())
        card.count(len(chosen))
        card.answered.connect(lambda told: self._do(
            way, TAKEN, keep_offered, *told, got=len(told[0])))
        self._till.asks.emit(card)

    def _on_order(self, way: Way, lot: AtCounter) -> None:
        count, buyer = self._count(way), self._till.buyer
        if buyer is not None and self._asked is not None:
            self._do(way, TAKEN, promise_offered, lot.line.lot, count, Buyer(buyer.id),
                     self._asked.put_up, got=count)
            return
        card = PromiseCard(lot, None)
        card.count(count)
        card.answered.connect(lambda told: self._do(
            way, TAKEN, promise_offered, lot.line.lot, *told, got=told[0]))
        self._till.asks.emit(card)

    def _on_a_shelf(self, way: Way, lot: AtCounter, scanned: int | None) -> None:
        """The shelf that was scanned, else where the others of the lot lie; else it is asked for.

        What was put by stays where it lies, unless a shelf is scanned for it.
        """
        bag = way.of[0].kit_id if way.does is Does.OPEN_KIT else None
        does: Callable[..., Any] = (open_kit_offered if bag is not None else shelve_offered
                                    if way.does is Does.SHELVE else end_put_by_offered)
        deed = partial(self._do, way, TAKEN, does, _yarn(way.of) if bag is None else bag, got=0)
        there = lot.free[0].place if lot.free else None
        if scanned is not None:
            deed(scanned)
        elif way.does is Does.END_PUT_BY and all(one.place is not None for one in way.of):
            deed()
        elif way.does is not Does.END_PUT_BY and there is not None:
            deed(there, "stated")
        else:
            card = ShelfCard(f"{pieces(len(way.of), 'skein')}: on which shelf?")
            card.answered.connect(lambda told: deed(*told))
            self._till.asks.emit(card)

    def _do(
        self, way: Way, answer: str, deed: Callable[..., Any], *args: Any,
        got: int | None = None, fetch: tuple[Tagged, ...] = (),
    ) -> None:
        """The offer with its answer, and what is done of it; `got` of what was wanted is filled."""
        if self._lot is None:
            return
        delta = None if way.difference is None else round(way.difference.ciede2000 * HUNDREDTHS)
        buyer, other = self._till.buyer, None if way.way == "same lot" else way.lot
        said = OfferIn(self._lot.line.lot, self._wanted, way.way, answer, other, delta,
                       buyer.id if buyer else None)

        def then(_done: Any) -> None:
            if fetch:
                self._bench.say(f"fetch {fetch_words(fetch)}")
            self._go_on(self._wanted - got if got is not None
                        else self._wanted if answer == DECLINED else 0)

        self._till.do(deed, said, *args, then=then)

    def _go_on(self, still: int) -> None:
        """The ways once more for what is still wanted; or it is filled."""
        if still > 0 and self._asked is not None:
            self._look(replace(self._asked, skeins=still, metres=None, used=None, done=None))
        else:
            self._till.asks.emit(None)

    def _count(self, way: Way) -> int:
        return min(self._wanted, way.skeins)

    def _chosen(self, way: Way, lot: AtCounter) -> tuple[Tagged, ...]:
        put_up = self._asked.put_up if self._asked else "skein"
        return tuple(one for one in lot.free if one.put_up == put_up)[:self._count(way)]

    def _until(self) -> datetime:
        return end_of((self._now() + timedelta(days=KEPT_DAYS)).astimezone().date())

    def _now(self) -> datetime:
        return self._bench.around.session.now()


def _yarn(skeins: tuple[Tagged, ...]) -> tuple[int, ...]:
    return tuple(one.yarn for one in skeins)


def _kept_for(way: Way) -> str:
    """'It is put by for Ada Nygård: ask before it is given to another.'"""
    names = [one.name for one in way.of if one.name] if way.does is Does.END_PUT_BY else []
    if not names:
        return ""
    return f"It is put by for {listing(dict.fromkeys(names))}: ask before it is given to another."


def _put_up(lot: AtCounter) -> str:
    return next((one.put_up for one in lot.free or lot.skeins), "skein")
