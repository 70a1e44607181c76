"""The basket as a card: marks, lots and prices, the sum, and the keys that sell it."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.lookups.customers import Known
from app.lookups.prices import money_words
from app.window.benches.counter.basket import Basket, Item
from app.window.benches.counter.words import faults_words
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, CodeWords, OneLine, Words


class ItemRow(QWidget):
    """One skein: its mark and lot, its price, why it may not be sold, and the key to take it out.
    """

    out = Signal()

    def __init__(self, item: Item, trouble: str) -> None:
        super().__init__()
        self.item, self.trouble = item, trouble
        price = "" if item.skein.price is None else money_words(item.skein.price, item.currency)
        self.setAccessibleName(", ".join(filter(
            None, (item.shown, price, faults_words(item.skein), trouble))))
        first = QHBoxLayout()
        first.setSpacing(Gap.LINE)
        first.addWidget(CodeWords(item.shown))
        first.addStretch(1)
        first.addWidget(Words(price, wrap=False))
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addLayout(first)
        words.addWidget(OneLine(item.line.colourway, second=True))
        if item.skein.second:
            words.addWidget(Words(f"a second: {item.skein.second}", ink=SECOND))
        if item.skein.told:
            words.addWidget(Words(faults_words(item.skein), bold=True))
        if trouble:
            words.addWidget(Words(trouble.removeprefix("HOLD. "), bold=True))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        if item.skein.holds:
            row.addWidget(HoldPlate(here=False), 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        self.out_key = KeyButton("Take out")
        self.out_key.clicked.connect(self.out)
        row.addWidget(self.out_key, 0, Qt.AlignmentFlag.AlignTop)


class BasketCard(Card):
    """`taken_out` gives the mark of one that is not wanted."""

    taken_out = Signal(str)

    def __init__(self) -> None:
        super().__init__("On the counter", in_hand=True)
        self.rows: list[ItemRow] = []
        self.sum = Words("", Size.LEAD, bold=True)
        self.sell_key = KeyButton("Sell, no name", "F5", strong=True)
        self.to_key = KeyButton("Sell to …", "F6")
        self.elsewhere_key = KeyButton("Elsewhere", "F7")
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Gap.SMALL)
        self.add(self._rows, self.sum,
                 Words("The next tag comes to these; a shelf’s plate lays them there.", ink=SECOND))
        self.add_last(Actions(self.sell_key, self.to_key, self.elsewhere_key))
        self.hide()

    def show_basket(self, basket: Basket, buyer: Known | None) -> None:
        """Show what lies on the counter; nothing hides the card."""
        customer = buyer.id if buyer else None
        self._show_rows(basket.items, customer)
        self.sum.setText(basket.sum_words())
        self.to_key.say("Sell to …" if buyer is None else f"Sell to {buyer.name}")
        self._allow(self.sell_key, basket.trouble(None))
        self._allow(self.to_key, basket.trouble(customer) if buyer else basket.trouble_with_all())
        self.setVisible(bool(basket))

    def _show_rows(self, items: Sequence[Item], customer: int | None) -> None:
        for old in self.rows:
            old.hide()
            self._rows.removeWidget(old)
            old.deleteLater()
        self.rows = [ItemRow(item, item.trouble(customer)) for item in items]
        for row in self.rows:
            row.out.connect(partial(self.taken_out.emit, row.item.skein.mark))
            self._rows.addWidget(row)

    def _allow(self, key: KeyButton, trouble: str) -> None:
        if trouble:
            key.refuse(trouble)
        else:
            key.allow()
