"""Nothing in hand at the packing bench: the open orders, and what was sent today."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import clock_words, short_day
from app.lookups.offers import Offer
from app.lookups.orders import OrderNow, Parcel
from app.window.benches.packing.packing_words import NOBODY, can_be_taken, orders, skeins
from app.window.look.icons import Icon
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.picture import Picture
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words

Offered = Mapping[int, Sequence[Offer]]


class Waiting(QWidget):
    """The oldest order first; `chosen` gives the number of one in the book."""

    chosen = Signal(int)
    file_wanted = Signal()
    by_hand = Signal()
    kits_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.orders: Sequence[OrderNow] = ()
        self.at = 0
        self.title, self.told = Words("", Size.TITLE, bold=True), Words(ink=SECOND)
        self.table = ThingTable(
            (Head("order", codes=True), "can be taken", Head("taken", right=True), "for", "of"),
            "open orders", opens=True, most_rows=9,
        )
        self.open = KeyButton("", "Enter", strong=True)
        self.file = KeyButton("The web shop's file", "F3")
        self.hand = KeyButton("Write an order", "F4")
        self.kits = KeyButton("Kits", "F5")
        self.kits.setToolTip("Or scan any COUNT plate while no order is in hand.")
        self.sent = ThingTable(
            (Head("order", codes=True), "for", Head("skeins", right=True), "left at"),
            "sent today", none="Nothing was sent yet.", most_rows=5,
        )
        self.table.opened.connect(self._choose)
        self.open.clicked.connect(lambda: self._choose(self.at))
        self.file.clicked.connect(self.file_wanted)
        self.hand.clicked.connect(self.by_hand)
        self.kits.clicked.connect(self.kits_wanted)
        self._lay_out()

    def show_orders(self, found: tuple[Sequence[OrderNow], Offered]) -> None:
        """Show the orders that are open, and from what each can be filled."""
        kept = self.orders[self.at].id if self.at < len(self.orders) else 0
        self.orders, offered = found
        self.title.setText(f"{orders(len(self.orders))} to pack" if self.orders
                           else "No order waits.")
        self.told.setText(
            "Scan the number of one, type it, or choose with ↑ ↓ and Enter." if self.orders
            else "Bring the web shop's file: drop it here, or F3. An order by telephone is "
                 "written: F4.")
        self.table.show_rows([
            (one.number, can_be_taken(one, offered), f"{one.filled} of {one.wanted}",
             one.name or NOBODY, short_day(one.placed))
            for one in self.orders])
        self.at = next((n for n, one in enumerate(self.orders) if one.id == kept), 0)
        self._mark()

    def show_sent(self, parcels: Sequence[Parcel]) -> None:
        """Show what left today."""
        self.sent.show_rows([(one.number, one.name or NOBODY, str(one.count),
                              clock_words(one.sent)) for one in parcels])
        count = sum(one.count for one in parcels)
        self.sent_card.setAccessibleName(f"sent today: {skeins(count)}")

    def walk(self, step: int) -> None:
        """The order above or below is meant."""
        if self.orders:
            self.at = (self.at + step) % len(self.orders)
            self._mark()

    def named(self, words: str) -> Sequence[OrderNow]:
        """The orders that wait for someone of this name, the oldest first."""
        return [one for one in self.orders if words.casefold() in (one.name or "").casefold()]

    def turn_to(self, order: OrderNow) -> None:
        """This order is meant, until another is."""
        self.at = self.orders.index(order)
        self._mark()

    def _choose(self, row: int) -> None:
        if row < len(self.orders):
            self.chosen.emit(self.orders[row].id)

    def _mark(self) -> None:
        if self.orders:
            self.table.view.selectRow(self.at)
            self.open.say(f"Pack order {self.orders[self.at].number}")
        self.open.setVisible(bool(self.orders))

    def _lay_out(self) -> None:
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        words.addWidget(self.title)
        words.addWidget(self.told)
        words.addStretch(1)
        card = Card(in_hand=True)
        card.add_row(Picture(Icon.PARCEL)).addLayout(words, 1)
        card.add(self.table)
        card.add_last(Actions(self.open, self.file, self.hand, self.kits))
        self.sent_card = Card("Sent today")
        self.sent_card.add(self.sent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(card)
        column.addWidget(self.sent_card)
