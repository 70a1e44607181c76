"""What lies before the person at the counter: a page, the basket beside it, a question above."""

from collections.abc import Sequence
from datetime import datetime
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.calculations.moments import day_words
from app.lookups.bought import Bought
from app.lookups.counter import AtCounter, Tagged
from app.lookups.customers import Known
from app.lookups.lot_lines import LotLine, NextLook
from app.lookups.shelves import ShelfLot
from app.scanning.read_back import ReadBack
from app.window.benches.counter.asking import Ask
from app.window.benches.counter.basket import Basket
from app.window.benches.counter.basket_card import BasketCard
from app.window.benches.counter.looking import Answer, OnShelf, Purchases
from app.window.benches.counter.lot_card import LotCard, NextLookCard
from app.window.benches.counter.pages import EmptyPage, ListPage
from app.window.benches.counter.words import age_words, bought_words, left_short, pieces
from app.window.look.look import Gap
from app.window.parts.card import Actions, SideBySide
from app.window.parts.key_button import KeyButton
from app.window.parts.offer_rows import Offer
from app.window.parts.read_page import ReadPage
from app.window.parts.sight import to_top

SEVERAL = ("More than one lot fits: ask for 2 m of the yarn or the tag, and look at both. Nothing "
           "was chosen for you.")
CHOOSE = "Arrow keys and Enter choose. Nothing was chosen for you."


class Hand(QWidget):
    """`lot`, `code` and `buyer` give what was chosen from a list."""

    lot = Signal(int)
    code = Signal(str)
    buyer = Signal(object)  # Known

    def __init__(self) -> None:
        super().__init__()
        self.empty, self.listed, self.lot_card = EmptyPage(), ListPage(), LotCard()
        self.read = ReadPage()
        self.next_look, self.basket_card = NextLookCard(), BasketCard()
        self.away_key = KeyButton("Put away", "F8")
        self.question: Ask | None = None
        self._views: tuple[QWidget, ...] = (self.empty, self.listed, self.read, self.lot_card)
        self._side = _column(self.basket_card, self.next_look)
        self._side.layout().addStretch(1)  # type: ignore[union-attr]
        main = _column(*self._views, Actions(self.away_key))
        main.layout().addStretch(1)  # type: ignore[union-attr]
        self._asked = QVBoxLayout()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addLayout(self._asked)
        column.addWidget(SideBySide(main, self._side, shares=(3, 2)), 1)
        self.turn_to(self.empty)

    def turn_to(self, view: QWidget) -> None:
        """Show one of the pages."""
        for one in self._views:
            one.setVisible(one is view)
        if view is not self.lot_card:
            self.next_look.hide()
        self._fit()

    def show_lot(self, lot: AtCounter, skein: Tagged | None, note: str, now: datetime) -> None:
        """A lot, and this very skein of it."""
        self.lot_card.show_lot(lot, skein, note, now)
        self.turn_to(self.lot_card)
        to_top(self)

    def show_sisters(self, sisters: Sequence[NextLook], now: datetime) -> None:
        """Where to look next."""
        self.next_look.show_sisters([
            Offer(one.line.shown, "" if one.fills_known else "its jars not known",
                  age_words(one.line.dyed, now), partial(self.lot.emit, one.line.lot),
                  left_short(one.line), one.line.swatch) for one in sisters])
        self.next_look.setVisible(bool(sisters) and not self.lot_card.isHidden())
        self._fit()

    def show_choices(self, answer: Answer, now: datetime) -> None:
        """Things of which one is meant."""
        offers = [
            *(_buyer(one, partial(self.buyer.emit, one)) for one in answer.buyers),
            *(self._line(line, now) for line in answer.lots),
            *(Offer(tag.shown, "void" if tag.void else "", tag.words,
                    partial(self.code.emit, tag.code), swatch=tag.swatch) for tag in answer.tags),
        ]
        self.listed.show_list(answer.sentence, CHOOSE, offers)
        self._begin_list()

    def show_read(self, read: ReadBack) -> None:
        """What was read back: nothing of it lies on the counter."""
        self.read.show_read(read)
        self.turn_to(self.read)
        self.read.begin()
        to_top(self)

    def show_purchases(self, bought: Purchases, order: str) -> None:
        """What was bought, line by line; `order` is where something may come back to."""
        lots = {(one.lot.colourway, one.lot.base, one.lot.lot) for one in bought.rows if one.lot}
        several = len(lots) > len({(colourway, base) for colourway, base, _ in lots})
        hint = SEVERAL if several else "Enter opens a lot." if lots else ""
        self.listed.show_list(
            bought.title if bought.rows else f"{bought.title}: nothing is in the book.",
            hint, [self._bought(one) for one in bought.rows], untagged=bool(order))
        self._begin_list()

    def show_shelf(self, shelf: OnShelf) -> None:
        """What lies on a shelf."""
        name = shelf.words[:1].upper() + shelf.words[1:]
        many = pieces(sum(one.count for one in shelf.lots), "piece")
        self.listed.show_list(f"{name}: {many}" if shelf.lots else f"{name} is empty.", "",
                              [self._lying(one) for one in shelf.lots])
        self._begin_list()

    def show_basket(self, basket: Basket, buyer: Known | None) -> None:
        """What lies on the counter, and who is served."""
        self.basket_card.show_basket(basket, buyer)
        name = f" for {buyer.name}" if buyer else ""
        self.lot_card.put_by_key.say(f"Put by{name}")
        self.lot_card.promise_key.say(f"Promise{name}")
        self._fit()

    def ask(self, card: Ask | None) -> None:
        """Put a question above the page, or take it away."""
        if self.question is not None:
            self._asked.removeWidget(self.question)
            self.question.hide()
            self.question.deleteLater()
        self.question = card
        if card is not None:
            self._asked.addWidget(card)
            card.show()  # now, so that it can have the focus
            card.begin()
            to_top(self)
        self._fit()

    def _fit(self) -> None:
        begun = self.empty.isHidden() or not self.basket_card.isHidden()
        self.away_key.setVisible(begun and self.question is None)
        self._side.setHidden(self.basket_card.isHidden() and self.next_look.isHidden())

    def _begin_list(self) -> None:
        self.turn_to(self.listed)
        self.listed.rows.begin()
        to_top(self)

    def _line(self, line: LotLine, now: datetime) -> Offer:
        return Offer(line.shown, age_words(line.dyed, now), f"{line.colourway}, {line.base}",
                     partial(self.lot.emit, line.lot), left_short(line), line.swatch)

    def _bought(self, one: Bought) -> Offer:
        line = one.lot
        if line is None:
            return Offer(one.what, bought_words(one), "its lot is not known", None,
                         is_code=False)
        return Offer(line.shown, bought_words(one), f"{line.colourway}, {line.base}",
                     partial(self.lot.emit, line.lot), left_short(line), line.swatch)

    def _lying(self, one: ShelfLot) -> Offer:
        kept = f"{one.put_by} of them put by" if one.put_by else ""
        chosen = None if one.lot is None else partial(self.lot.emit, one.lot)
        code = shown(one.code) if one.code else "without a tag"
        return Offer(code, kept, ", ".join(filter(None, (one.colourway, one.base))), chosen,
                     pieces(one.count, one.put_up), one.swatch, is_code=one.code is not None)


def _buyer(one: Known, chosen: partial[None]) -> Offer:
    orders = pieces(one.orders, "order")
    last = f", the last on {day_words(one.last)}" if one.last else ""
    return Offer(one.name, f"a customer: {orders}{last}", "", chosen, coloured=False,
                 is_code=False)


def _column(*widgets: QWidget) -> QWidget:
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(Gap.PART)
    for widget in widgets:
        column.addWidget(widget)
    return holder
