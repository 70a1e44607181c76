"""The counter: one box that takes anything, and what is left to sell of it."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from app.calculations.codes import Kind, bare_characters, code_of
from app.lookups.counter import AtCounter
from app.lookups.customers import Known
from app.lookups.lot_lines import NextLook, base_names, sisters_left
from app.lookups.put_bys import put_bys_over
from app.problems import NotFound
from app.window.bench import Around, Bench
from app.window.benches.counter.asking import Ask
from app.window.benches.counter.bags import Bags
from app.window.benches.counter.basket import item_of
from app.window.benches.counter.for_whom import ForWhom
from app.window.benches.counter.hand import Hand
from app.window.benches.counter.keeping import KeepCard
from app.window.benches.counter.looked_at import seen_at_counter
from app.window.benches.counter.looking import (
    Answer,
    OnShelf,
    Purchases,
    as_they_are,
    buyer_of,
    called,
    find,
    look_at_buyer,
    look_at_lot,
)
from app.window.benches.counter.more import More
from app.window.benches.counter.reading import ReadingBack
from app.window.benches.counter.returns import Returns
from app.window.benches.counter.till import Till
from app.window.faults.at_hand import FaultsAtHand
from app.window.in_turn import InTurn
from app.window.parts.action_plates import COUNTS, DONE

LEAVE_IT = "Answer the question first, or leave it with F8."
_TAKEN = (Kind.LOT, Kind.SKEIN, Kind.SHELF, Kind.KIT)
_CONCERNS = {"whereabouts", "tag_on", "tag", "order_line", "customer_order", "hold", "clear",
             "price", "second", "personal", "yarn", "dye_lot", "sighting", "cause", "offer",
             "line_agreed"}


class CounterBench(Bench):
    """A lot, a buyer or a list in hand; the basket beside it; one question at a time above."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setAccessibleName("counter")
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.hand, self.till, self._in_turn = Hand(), Till(self), InTurn(self)
        self.bags, self.returns = Bags(self.till), Returns(self.till)
        self.more = More(self, self.till)
        self.in_front = FaultsAtHand(
            self, self._in_turn, lambda: seen_at_counter(self.lot, self._mark),
            self.hand.lot_card.fault_key, self.hand.lot_card.good_key)
        self.reading = ReadingBack(self, self.hand, self._in_turn, self._found)
        self.lot: AtCounter | None = None
        self._mark, self._note = "", ""
        self._purchases: Purchases | None = None
        self.body.addWidget(self.hand)
        self._join()

    def entered(self) -> None:
        self.setFocus()  # its keys are pressed as they are shown
        self.look_again(frozenset(_CONCERNS))

    def look_again(self, kinds: frozenset[str]) -> None:
        if not kinds & _CONCERNS:
            return
        lots = {*self.till.basket.lots, *([self.lot.line.lot] if self.lot else [])}
        if lots:
            self.ask(self._show_again, as_they_are, lots)
        if self._purchases is not None and not self.hand.listed.isHidden():
            self.ask(self._show_purchases, buyer_of, self._purchases)
        if not self.hand.empty.isHidden():
            self.ask(self.hand.empty.show_over, put_bys_over, self._now())

    def take(self, code: str) -> bool:
        """A lot, a tag, a shelf, DONE or COUNT; an old lot's code stands as it stood."""
        known = code_of(bare_characters(code))
        if code == DONE:
            self._in_turn.then(self._done_plate)
        elif code in COUNTS:
            self._in_turn.then(lambda: self._count_plate(COUNTS[code]))
        elif known is None or known.kind in _TAKEN:
            self._in_turn.ask(self._found, find, code, False, self._now())
        else:
            return False
        return True

    def take_other(self, text: str) -> bool:
        """An order's number as it stands on its slip, or a code from before the book."""
        self._in_turn.ask(self._found, find, text, False, self._now())
        return True

    def take_list(self, codes: Sequence[str]) -> bool:
        """A pasted list is scanned one after the other."""
        for code in codes:
            self.take(code)
        return True

    def take_picture(self, picture: bytes) -> bool:
        return self.reading.photos.take(picture)

    def seek(self, words: str) -> bool:
        """A part of a code, a name, an order's number, a buyer."""
        self._in_turn.ask(self._found, find, words, True, self._now())
        return True

    def put_away(self) -> None:
        """The next customer."""
        self.till.clear()
        self.lot, self._purchases, self._mark = None, None, ""
        self.hand.turn_to(self.hand.empty)
        self.setFocus()
        self.entered()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down and self.hand.next_look.isVisible():
            self.hand.next_look.rows.begin()
        else:
            super().keyPressEvent(event)

    def _found(self, answer: Answer) -> None:
        if answer.lot is not None:
            self._take_up(answer, answer.lot)
        elif answer.purchases is not None:
            self._show_buyer(answer.purchases)
        elif answer.shelf is not None:
            self._shelf(answer.shelf)
        elif answer.kit is not None:
            self.bags.scanned(answer.kit)
        elif answer.read is not None:
            self._show(None)
            self.hand.show_read(answer.read)
        elif answer.choices:
            self._show(None)
            self.hand.show_choices(answer, self._now())
        else:
            self.around.trouble(NotFound(answer.sentence, answer.next_step))

    def _take_up(self, answer: Answer, lot: AtCounter) -> None:
        """A lot is in hand; a skein that is not sold lies on the counter."""
        skein, keeping = answer.skein, isinstance(self.hand.question, KeepCard)
        if not (skein and keeping):
            self.hand.ask(None)
        self.lot, self._purchases = lot, None
        self._mark, self._note = skein.mark if skein else "", answer.note
        self.more.basis = answer.basis
        self.setFocus()
        self.hand.show_lot(lot, skein, answer.note, self._now())
        self.ask(self._show_sisters, sisters_left, lot.line.lot)
        if skein is None or skein.state == "sent":
            return
        item = item_of(lot, skein, self._now())
        if skein.mark in self.till.basket:
            self.till.ask_out(item)
        else:
            self.till.put(item)
        if keeping and self.hand.question is not None:
            self.hand.question.choose_skeins([one.skein for one in self.till.basket.items])

    def _show_buyer(self, bought: Purchases) -> None:
        self.till.serve(bought.buyer)
        self._show(bought)
        self._show_purchases(bought)

    def _show_purchases(self, bought: Purchases) -> None:
        self._purchases = bought
        self.hand.show_purchases(bought, self._order())

    def _shelf(self, shelf: OnShelf) -> None:
        """A shelf's plate: an answer, a place for what lies on the counter, or a question."""
        asked = self.hand.question
        if asked is not None:
            if not asked.shelf(shelf.id, shelf.words):
                self.around.trouble(NotFound(f"The plate of {shelf.words} answers nothing here.",
                                             asked.wants or LEAVE_IT))
        elif self.till.basket:
            self.till.shelve(shelf.id)
        else:
            self._show(None)
            self.hand.show_shelf(shelf)

    def _show(self, bought: Purchases | None) -> None:
        """A list comes before the person: no lot is in hand."""
        self.hand.ask(None)
        self.lot, self._mark, self._purchases = None, "", bought

    def _show_again(self, lots: Mapping[int, AtCounter]) -> None:
        self.till.basket.refresh(lots, self._now())
        if self.lot is not None and (lot := lots.get(self.lot.line.lot)) is not None:
            self.lot = lot
            self.hand.lot_card.show_lot(lot, lot.tagged(self._mark), self._note, self._now())
        self._show_basket()

    def _show_sisters(self, sisters: tuple[NextLook, ...]) -> None:
        self.hand.show_sisters(sisters, self._now())

    def _show_basket(self) -> None:
        self.hand.show_basket(self.till.basket, self.till.buyer)

    def _done_plate(self) -> None:
        asked = self.hand.question
        if asked is not None and asked.wants:
            self.around.trouble(NotFound("DONE answers nothing here.", asked.wants))
        elif asked is not None:
            asked.save()
        elif self.till.basket:
            self.till.done_plate()
        else:
            self.around.trouble(NotFound("Nothing lies on the counter.", "Scan the tags first."))

    def _count_plate(self, number: int) -> None:
        asked = self.hand.question
        if asked is None and self.lot is not None:
            self.more.wanted(self.lot, number)
        elif asked is None:
            self.around.trouble(NotFound(f"There is nothing here to count {number} of.",
                                         "Scan a lot first, then how many more are wanted."))
        elif not asked.count(number):
            self.around.trouble(NotFound(f"COUNT {number} answers nothing here.", asked.wants))

    def _ask_for(self, card: Ask | None) -> None:
        if card is not None:
            card.left.connect(lambda: self._ask_for(None))
            for whom in card.findChildren(ForWhom):
                whom.asked.connect(lambda words: self.ask(self._show_called, called, words))
        self.hand.ask(card)
        if card is None:
            self.setFocus()

    def _order(self) -> str:
        return self._purchases.one_order if self._purchases else ""

    def _show_called(self, answer: tuple[str, tuple[Known, ...]]) -> None:
        for whom in self.hand.question.findChildren(ForWhom) if self.hand.question else ():
            whom.show_known(*answer)

    def _ask_found(self) -> None:
        self.ask(self._ask_base, base_names)

    def _ask_base(self, bases: tuple[tuple[int, str], ...]) -> None:
        bought = self._purchases.rows if self._purchases else ()
        names = {self.lot.line.base} if self.lot else {one.lot.base for one in bought if one.lot}
        base = names.pop() if len(names) == 1 else ""
        if self._order():
            self.returns.untagged(self._order(), bases, base, bought)
        else:
            self.till.found(bases, base)

    def _with_lot(self, does: Callable[[AtCounter], None]) -> None:
        if self.lot is not None:
            does(self.lot)

    def _now(self) -> datetime:
        return self.around.session.now()

    def _join(self) -> None:
        """Who hears whom."""
        hand, till, card, basket = (self.hand, self.till, self.hand.lot_card,
                                    self.hand.basket_card)
        till.changed.connect(self._show_basket)
        till.asks.connect(self._ask_for)
        hand.lot.connect(lambda lot: self._in_turn.ask(self._found, look_at_lot, lot))
        hand.buyer.connect(lambda one: self._in_turn.ask(self._found, look_at_buyer, one))
        hand.code.connect(self.take)
        hand.away_key.clicked.connect(self.put_away)
        hand.empty.find_key.clicked.connect(self._ask_found)
        hand.empty.back_key.clicked.connect(lambda: till.end_over(hand.empty.over))
        hand.listed.untagged_key.clicked.connect(self._ask_found)
        card.put_by_key.clicked.connect(lambda: till.put_by(self.lot, self._now()))
        card.promise_key.clicked.connect(lambda: self._with_lot(till.promise))
        card.more_key.clicked.connect(lambda: self._with_lot(self.more.wanted))
        card.back_key.clicked.connect(lambda: self._with_lot(
            lambda lot: self.returns.came(lot, lot.tagged(self._mark))))
        basket.taken_out.connect(till.take_out)
        basket.sell_key.clicked.connect(till.sell)
        basket.to_key.clicked.connect(till.sell_to)
        basket.elsewhere_key.clicked.connect(till.elsewhere)
