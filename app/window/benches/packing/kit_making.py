"""Kits at the packing bench: a pattern in hand, a bag filled by scan, its label, a bag opened."""

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from app.calculations.codes import shown
from app.lookups.instead import Instead, instead_of
from app.lookups.kit_patterns import KitsNow, all_kits_now, kits_of
from app.lookups.kits import KitNow
from app.lookups.order_words import StudioNames, studio_names
from app.lookups.packing import Shelf, TagScanned
from app.lookups.told_faults import told_words
from app.problems import NotFound, Refused
from app.window.bench import Around, Bench
from app.window.benches.packing.held import Held
from app.window.benches.packing.kit_bag_card import BagCard
from app.window.benches.packing.kit_filling import Bag
from app.window.benches.packing.kit_labels import Labels
from app.window.benches.packing.kit_listing import PatternList
from app.window.benches.packing.kit_pattern_card import PatternCard
from app.window.benches.packing.kit_writing import PatternWriting
from app.window.parts.card import Card
from app.window.parts.findings import Finding
from app.window.session import Done
from app.work.kit_patterns import PatternIn, make_by_pattern, write_pattern
from app.work.kits import open_kit

_STEPS = {int(Qt.Key.Key_Down): 1, int(Qt.Key.Key_Up): -1}


class KitMaking(Bench):
    """The patterns, or one of them with the bag that is filled, or a bag that was scanned."""

    left = Signal()

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setAccessibleName("kits")
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.list, self.card, self.writing = PatternList(), PatternCard(), PatternWriting()
        self.labels = Labels(self)
        self.kits: KitsNow | None = None
        self.bag: Bag | None = None
        self.scanned: BagCard | None = None
        self._wanted = 0
        self._made: int | None = None
        for card in (self.list, self.card, self.writing):
            self.body.addWidget(card)
            card.setVisible(card is self.list)
        self._connect()
        self.look()

    def look(self) -> None:
        """Look again at the patterns, and at the one in hand."""
        if self.kits is not None:
            self.ask(self._show_kits, kits_of, self.kits.pattern.id, self._wanted)
        else:
            self.ask(self.list.show_kits, all_kits_now)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.list.isVisible() and event.key() in _STEPS:
            self.list.walk(_STEPS[event.key()])
        else:
            super().keyPressEvent(event)

    def tag_came(self, mark: str, tag: TagScanned | None) -> None:
        """A tag was scanned: its skein goes into the bag, or is told why it does not."""
        self._ask_no_more()
        if self.scanned is not None or self.writing.isVisible():
            self.around.trouble(Refused("No bag is being filled; nothing was taken.",
                                        "Leave what is in hand with F8 first."))
        elif self.bag is None:
            self.around.trouble(Refused("No kit is in hand; nothing was taken.",
                                        "Choose the kit first: ↑ ↓ and Enter, or COUNT."))
        elif tag is None:
            self.around.trouble(NotFound(f"{shown(mark)} was never printed; nothing was taken.",
                                         "Scan it once more, or take another."))
        elif tag.holds and tag.yarn is not None:
            self._refuse_held(tag)
        else:
            self._put(self.bag, tag)

    def kit_came(self, kit: KitNow) -> None:
        """The bag of a kit was scanned: it is opened, or its label is printed."""
        self._put_bag_away()
        if kit.gone is not None:
            self.around.trouble(Refused(*kit.gone))
            return
        self.scanned = BagCard(kit)
        self.scanned.label.connect(lambda: self.labels.print(kit.id))
        self.scanned.other_stock.connect(self._other_stock)
        self.scanned.left.connect(self._put_bag_away)
        self._show(self.scanned)
        self._show_stock()

    def comes_first(self) -> bool:
        """Whether a bag is being filled, which is said: what was scanned for it is not lost."""
        begun = self.bag is not None and bool(self.bag.skeins)
        if begun:
            self.around.trouble(Refused("A kit's bag is being filled; no order was opened.",
                                        "Close the bag, or leave it with F8."))
        return begun

    def takes_shelf(self) -> bool:
        """Whether a bag waits to be opened."""
        return self.scanned is not None

    def shelf_came(self, shelf: Shelf | None) -> None:
        """The plate of a shelf: the bag before the person is opened there."""
        if self.scanned is not None and shelf is not None:
            self.do(open_kit, self.scanned.kit.id, shelf.id,
                    then=lambda _done: self._put_bag_away())

    def choose(self, number: int) -> None:
        """A COUNT plate: a row of the list, or how many kits are wanted."""
        if self.list.isVisible():
            self.list.choose(number)
        elif self.kits is not None and self.card.isVisible():
            self.card.wanted.line.setText(str(number))
            self._how_many(number)

    def done(self) -> None:
        """DONE: the bag is closed, or the pattern goes on."""
        if self.card.aside is not None:
            self._ask_no_more()
        elif self.writing.isVisible():
            self.writing.done()
        elif self.bag is not None and self.card.isVisible():
            self._close()
        else:
            self.around.trouble(Refused("No bag is being filled; nothing was saved.",
                                        "Choose the kit first, then scan its skeins."))

    def open_pattern(self, pattern: int) -> None:
        """This kit is in hand now, with an empty bag."""
        self._wanted = 0
        self.card.wanted.clear()
        self.bag, self.kits = None, None
        self.ask(self._show_kits, kits_of, pattern, 0)

    def _show_kits(self, found: KitsNow | None) -> None:
        if found is None:
            self._to_list()
            return
        self.kits = found
        if self.bag is None or self.bag.pattern != found.pattern:
            self.bag = Bag(found.pattern)
        self._show_bag()
        if self.scanned is None and not self.writing.isVisible():
            self._show(self.card)

    def _show_bag(self) -> None:
        if self.kits is not None and self.bag is not None:
            self.card.show_kits(self.kits, self.bag, self.around.session.now())
            self._show_stock()

    def _put(self, bag: Bag, tag: TagScanned) -> None:
        try:
            put = bag.put(tag, self.around.session.now())
        except Refused as refused:
            QApplication.beep()
            self.around.trouble(refused)
            return
        told = ", in its place" if put.stands_in else ""
        self.say(f"{shown(tag.mark)} is colour {put.letter}{told}")
        if tag.told:
            self.around.found([Finding(told_words(one, shown(tag.mark))) for one in tag.told],
                              lambda _finding, _answer: None)
        self._show_bag()

    def _refuse_held(self, tag: TagScanned) -> None:
        QApplication.beep()
        held = Held(tag)
        held.left.connect(self._ask_no_more)
        self.card.ask(held)

        def show(found: tuple[Instead, ...]) -> None:
            if self.card.aside is held:
                held.show_instead(found)

        self.ask(show, instead_of, tag.lot, 1, tag.put_up)

    def _close(self) -> None:
        if self.bag is None:
            return
        if self.bag.lacking:
            lacks = ", ".join(f"{self.bag.lacks(place)} of {place.letter}, {place.name}"
                              for place in self.bag.lacking)
            self.around.trouble(Refused(f"The bag lacks {lacks}; no kit was made.",
                                        "Scan what it lacks."))
            return
        self.do(make_by_pattern, self.bag.pattern.id, self.bag.yarn, token=self.bag.token,
                then=self._is_made)

    def _is_made(self, done: Done[int]) -> None:
        if self.bag is None or done.answer == self._made:
            return  # Enter was pressed twice
        self._made = done.answer
        self.bag = Bag(self.bag.pattern)
        self.labels.print(done.answer)
        self.look()

    def _how_many(self, count: int) -> None:
        self._wanted = count
        self.setFocus()
        self.look()

    def _last_out(self) -> None:
        if self.bag is not None and self.bag.skeins:
            self.bag.skeins.pop()
            self._show_bag()

    def _empty(self) -> None:
        if self.bag is not None:
            self.bag.skeins.clear()
            self._show_bag()

    def _write(self, names: StudioNames) -> None:
        self._show(self.writing)
        self.writing.begin(names, self.kits.pattern if self.kits else None)

    def _keep(self, pattern: PatternIn) -> None:
        self.do(write_pattern, pattern, then=self._is_written)

    def _is_written(self, done: Done[int]) -> None:
        self.writing.hide()
        self.open_pattern(done.answer)

    def _leave_writing(self) -> None:
        self.writing.hide()
        self._show(self.card if self.kits is not None else self.list)

    def _to_list(self) -> None:
        self.kits, self.bag = None, None
        self._show(self.list)
        self.look()

    def _put_bag_away(self) -> None:
        if self.scanned is not None:
            self.scanned.hide()
            self.scanned.deleteLater()
            self.scanned = None
        self._show(self.card if self.kits is not None else self.list)
        self.look()

    def _other_stock(self) -> None:
        self.labels.other_stock()
        self._show_stock()

    def _show_stock(self) -> None:
        if self.scanned is not None:
            self.scanned.show_stock(self.labels.words)
        self.card.show_stock(self.labels.words, made=self._made is not None)

    def _label_again(self) -> None:
        if self._made is not None:
            self.labels.print(self._made)

    def _ask_no_more(self) -> None:
        self.card.ask(None)

    def _show(self, card: Card | PatternCard) -> None:
        if isinstance(card, BagCard):
            self.body.insertWidget(0, card)
        for one in (self.list, self.card, self.writing):
            one.setVisible(one is card)
        card.show()
        if card is not self.writing:
            self.setFocus()

    def _connect(self) -> None:
        write: Callable[..., Any] = partial(self.ask, self._write, studio_names)
        self.list.chosen.connect(self.open_pattern)
        self.list.new.connect(write)
        self.list.left.connect(self.left)
        self.writing.written.connect(self._keep)
        self.writing.left.connect(self._leave_writing)
        self.labels.printed.connect(self._show_stock)
        card = self.card
        for signal, does in ((card.asked, self._how_many), (card.closed, self._close),
                             (card.emptied, self._empty), (card.last_out, self._last_out),
                             (card.anew, write), (card.label, self._label_again),
                             (card.other_stock, self._other_stock), (card.left, self._to_list)):
            signal.connect(does)
