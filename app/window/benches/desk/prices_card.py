"""What each put-up costs, and in which currency."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout

from app.calculations.moments import day_words
from app.lookups.prices import Priced, money_words
from app.window.look.look import Gap
from app.window.parts.amounts import read_price
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


class PricesCard(Card):
    """A row is taken up and priced: `priced` gives base, put-up and price; `currency` its words."""

    priced = Signal(int, str, int)
    named = Signal(str)

    def __init__(self) -> None:
        super().__init__("Prices")
        self.rows: Sequence[Priced] = ()
        self.which: Priced | None = None
        self.table = ThingTable(
            ("base", "put-up", Head("price", right=True), "since"), "prices",
            "No base is described yet: that is done at Receiving.", opens=True)
        self.price = Field("Price of one", read_price, "18.50")
        self.set_key = KeyButton("Set it")
        self.currency = TextField("Currency", "EUR, kr, £")
        self.currency_key = KeyButton("Keep the currency")
        self._asks = Words(bold=True)
        row = QHBoxLayout()
        row.setSpacing(Gap.PART)
        row.addWidget(self.price, 1, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.currency, 1, Qt.AlignmentFlag.AlignTop)
        self.add(self._asks, row, Actions(self.set_key, self.currency_key), self.table)
        self.add(Words("What was sold keeps the price it was sold at.", ink=SECOND))
        self.table.opened.connect(lambda row: self.take_up(self.rows[row]))
        self.set_key.clicked.connect(self._set)
        self.price.line.returnPressed.connect(self._set)
        self.currency_key.clicked.connect(self._name)
        self.currency.line.returnPressed.connect(self._name)
        self._show_which()

    def show_prices(self, rows: Sequence[Priced]) -> None:
        """Every put-up with what it costs now."""
        self.rows = rows
        self.table.show_rows([
            (one.name, one.put_up,
             "none yet" if one.price is None else money_words(one.price),
             "" if one.since is None else day_words(one.since)) for one in rows])
        if self.which is not None:
            key = self.which.base, self.which.put_up
            self.which = next((one for one in rows if (one.base, one.put_up) == key), None)
        self._show_which()

    def show_currency(self, words: str) -> None:
        """Show what stands, but never over what is being written."""
        if not self.currency.line.isModified():
            self.currency.line.setText(words)

    def take_up(self, one: Priced) -> None:
        """This one gets a price."""
        self.which = one
        self.price.line.setText("" if one.price is None else f"{one.price / 100:.2f}")
        self._show_which()
        self.price.line.setFocus()
        self.price.line.selectAll()

    def is_set(self) -> None:
        """Its price is in the book: the next one."""
        self.which = None
        self.price.clear()
        self._show_which()

    def _set(self) -> None:
        price = self.price.value()
        if self.which is not None and price is not None:
            self.priced.emit(self.which.base, self.which.put_up, price)

    def _name(self) -> None:
        self.currency.line.setModified(False)
        self.named.emit(self.currency.value() or "")

    def _show_which(self) -> None:
        one = self.which
        self._asks.setText("Tap the row that gets a price." if one is None
                           else f"A {one.put_up} of {one.name} costs from now on:")
        self._asks.setVisible(bool(self.rows))
        if one is None:
            self.set_key.refuse("No row is chosen yet.")
        else:
            self.set_key.allow()
