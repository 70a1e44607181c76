"""A customer: what is kept of them is shown, written as a file, or removed on request."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from app.calculations.moments import day_words
from app.lookups.customer_data import CustomerData
from app.lookups.customers import Known
from app.window.benches.desk.customer_words import goes_words, gone_words, kept_words
from app.window.benches.desk.desk_words import how_many
from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import bring
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.why_card import Why, WhyCard
from app.window.parts.words import SECOND, Words


class CustomerCard(Card):
    """`sought` gives what was written, `opened` and `wanted` a Known, `removed` a Known and why."""

    sought = Signal(str)
    opened = Signal(object)
    wanted = Signal(object)
    removed = Signal(object, str)

    def __init__(self) -> None:
        super().__init__("What is kept of a customer")
        self.rows: Sequence[Known] = ()
        self.known: Known | None = None
        self.data: CustomerData | None = None
        self.why: WhyCard | None = None
        self.name = TextField("A name, an order’s number, or a month", "osk · T12 · april osk",
                              "Write a name, the number of an order, or a month.")
        self.seek_key = KeyButton("Look")
        self.table = ThingTable(("name", Head("orders", right=True), "last"), "customers",
                                opens=True, most_rows=6)
        self.told, self.kept = Words(ink=SECOND), Words()
        self.file_key = KeyButton("Write it as files", "F10")
        self.remove_key = KeyButton("They ask to be removed")
        self.keys = Actions(self.file_key, self.remove_key)
        self.add(self.name, Actions(self.seek_key), self.told, self.table, self.kept, self.keys)
        for part in (self.told, self.kept, self.keys):
            part.hide()
        self.seek_key.clicked.connect(self._seek)
        self.name.line.returnPressed.connect(self._seek)
        self.table.opened.connect(lambda row: self._open(self.rows[row]))
        self.file_key.clicked.connect(lambda: self.wanted.emit(self.known))
        self.remove_key.clicked.connect(self.ask_why)

    def show_found(self, rows: Sequence[Known]) -> None:
        """Who is meant; one alone is shown at once."""
        self.rows = rows
        self._put_away()
        several = len(rows) > 1
        self.table.show_rows([
            (one.name, str(one.orders), day_words(one.last) if one.last else "never")
            for one in rows if several])
        self.told.setText(f"{how_many(len(rows), 'customer')}: tap who is meant." if several
                          else "" if rows else "Nobody in the book is called so, or bought then.")
        self.told.setVisible(bool(self.told.text()))
        if len(rows) == 1:
            self._open(rows[0])

    def show_data(self, data: CustomerData | None) -> None:
        """All that the book keeps of who was chosen."""
        self.data = data
        if data is None or self.known is None:
            return
        self.kept.setText(kept_words(data))
        self.kept.show()
        self.keys.show()
        bring(self.keys)

    def show_files(self, names: Sequence[str], folder: str) -> None:
        """Where the files are."""
        self.told.setText(f"{' and '.join(names)} are in {folder}. Give them to who asked, then "
                          "throw them away.")
        self.told.show()

    def ask_why(self) -> None:
        """The one question before it is done, or it is left."""
        self._ask_no_more()
        known, data = self.known, self.data
        if known is None or data is None:
            return
        self.why = WhyCard(Why(
            f"Remove what is known of {known.name}?", goes_words(data), "Remove it",
            "Say why, such as asked by letter.", ("asked by letter", "asked by mail")))
        self.why.said.connect(lambda why: self.removed.emit(known, why))
        self.why.left.connect(self._ask_no_more)
        self.add(self.why)
        self.why.show()
        self.why.field.line.setFocus()
        bring(self.why)

    def done(self) -> None:
        """It is removed: nothing of it stays on the screen but what went and what stays."""
        said = gone_words(self.data) if self.data else ""
        self.rows = ()
        self._put_away()
        self.name.clear()
        self.table.show_rows([])
        self.told.setText(said)
        self.told.show()

    def _open(self, customer: Known) -> None:
        self._put_away()
        self.known = customer
        self.opened.emit(customer)

    def _put_away(self) -> None:
        self._ask_no_more()
        self.known, self.data = None, None
        self.kept.clear()
        self.kept.hide()
        self.keys.hide()

    def _ask_no_more(self) -> None:
        if self.why is not None:
            self.why.hide()
            self.why.deleteLater()
            self.why = None

    def _seek(self) -> None:
        name = self.name.value()
        if name:
            self.sought.emit(name)
