"""On request: what is known of a customer is removed, and the yarn's history stays."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from app.calculations.moments import day_words
from app.lookups.customers import Known
from app.window.benches.desk.desk_words import how_many
from app.window.benches.desk.why_card import Why, WhyCard
from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


class RemovalCard(Card):
    """`sought` gives a name; `removed` a Known and why."""

    sought = Signal(str)
    removed = Signal(object, str)

    def __init__(self) -> None:
        super().__init__("A customer asks to be removed")
        self.rows: Sequence[Known] = ()
        self.why: WhyCard | None = None
        self.name = TextField("Name, or the beginning of it", "then Enter", "Write the name.")
        self.seek_key = KeyButton("Look")
        self.table = ThingTable(("name", Head("orders", right=True), "last"), "customers",
                                opens=True, most_rows=6)
        self.told = Words(ink=SECOND)
        self.add(Words("Name and whatever else is known of them go for good; what was sold stays, "
                       "without a name.", ink=SECOND), self.name, Actions(self.seek_key),
                 self.told, self.table)
        self.told.hide()
        self.seek_key.clicked.connect(self._seek)
        self.name.line.returnPressed.connect(self._seek)
        self.table.opened.connect(lambda row: self.ask_why(self.rows[row]))

    def show_found(self, rows: Sequence[Known]) -> None:
        """Who is called so; a row asks why."""
        self.rows = rows
        self.table.show_rows([
            (one.name, str(one.orders), day_words(one.last) if one.last else "never")
            for one in rows])
        self.told.setText(f"{how_many(len(rows), 'customer')}: tap who is meant." if rows
                          else "Nobody in the book is called so.")
        self.told.show()

    def ask_why(self, customer: Known | None) -> None:
        """The one question before it is done, or it is left."""
        if self.why is not None:
            self.why.hide()
            self.why.deleteLater()
            self.why = None
        if customer is None:
            return
        self.why = WhyCard(Why(
            f"Remove what is known of {customer.name}?",
            "It cannot be brought back, not even by Undo: the entry keeps only that it was "
            "removed, by whom and why.",
            "Remove it", "Say why, such as asked by letter.", ("asked by letter", "asked by mail")))
        self.why.said.connect(lambda why: self.removed.emit(customer, why))
        self.why.left.connect(lambda: self.ask_why(None))
        self.add(self.why)
        self.why.show()
        self.why.field.line.setFocus()

    def done(self) -> None:
        """It is removed: nothing of it stays on the screen."""
        self.ask_why(None)
        self.name.clear()
        self.show_found(())
        self.told.hide()

    def _seek(self) -> None:
        name = self.name.value()
        if name:
            self.sought.emit(name)
