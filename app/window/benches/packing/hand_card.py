"""An order written by hand: who wants it, then line after line, three fields at a time."""

from uuid import uuid4

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from app.lookups.order_words import StudioNames, read_words
from app.problems import BadInput
from app.window.benches.packing.one_by_one import OneByOne
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.work.ordering import HandOrder, Said

_WHO = "Whose order is it?"
_HOW = {
    False: "Without a number it gets the studio's next. The e-mail alone tells one customer from "
           "another of the same name.",
    True: "Colourway, base and form in any words. An empty line and Enter place the order.",
}


class HandCard(OneByOne[Said]):
    """`placed` gives the HandOrder once its lines are written."""

    placed = Signal(object)

    def __init__(self) -> None:
        self.what = TextField("What is wanted", "Ferry Ledger, Tarnfield 4-ply",
                              needed="Say what is wanted.")
        self.lot = TextField("Lot", "any")
        super().__init__("an order by hand", "line", self.what, self.lot)
        self.token = ""
        self.names = StudioNames({}, {}, ())
        self.title, self.told = Words(_WHO, Size.TITLE, bold=True), Words(ink=SECOND)
        self.number, self.name = TextField("Order number", "the studio's next"), TextField("Name")
        self.mail = Field("E-mail", _mail, "if it is known")
        self.table = ThingTable((Head("", right=True), "what", "read as", "lot"), "its lines",
                                most_rows=8)
        self.go = KeyButton("", "Enter", strong=True)
        self.place = KeyButton("Place the order", "F5")
        self.to_who = KeyButton("Back to whose it is", "F7")
        self.go.clicked.connect(self.done)
        self.place.clicked.connect(self.keep)
        self.to_who.clicked.connect(self._ask_who)
        self.who = _side_by_side(self.number, self.name, self.mail)
        self.wants = _side_by_side(*self.fields)
        self.add(self.title, self.told, self.who, self.wants, self.table,
                 Actions(self.go, self.place, self.back, self.to_who, self.leave))

    @property
    def on_lines(self) -> bool:
        """Whether the lines are being written."""
        return not self.wants.isHidden()

    def begin(self) -> None:
        """A new order; or the one that was being written goes on."""
        if not self.token:
            self.token, self.rows = uuid4().hex, []
            for field in (self.number, self.name, self.mail, *self.fields):
                field.clear()
            self._turn(False)
        (self.what if self.on_lines else self.number).line.setFocus()

    def know(self, names: StudioNames) -> None:
        """What the words of a line may name."""
        self.names = names

    def forget(self) -> None:
        """It is placed, or was left: the next one is new."""
        self.token = ""

    def done(self) -> None:
        """Enter: on to the lines, the next line, or the order is whole."""
        if not self.on_lines:
            if self.mail.value() is not None:
                self._turn(True)
                self.what.line.setFocus()
        else:
            self.go_on()

    def read_row(self) -> Said | None:
        count, what = self.how_many(), self.what.value()
        if not what:
            self.what.line.setFocus()
        return Said(what, count, self.lot.value() or "") if what and count else None

    def as_written(self, row: Said) -> tuple[str, ...]:
        return row.what, str(row.count), row.lot

    def _ask_who(self) -> None:
        self._turn(False)
        self.number.line.setFocus()

    def keep(self) -> None:
        if self.is_whole():
            self.placed.emit(HandOrder(self.number.value() or "", self.name.value() or "",
                                       self.mail.value() or "", tuple(self.rows)))

    def _turn(self, to_lines: bool) -> None:
        self.who.setVisible(not to_lines)
        self.wants.setVisible(to_lines)
        self.show_rows()

    def show_rows(self) -> None:
        who = self.name.line.text().strip() or "somebody"
        self.title.setText(f"What does {who} want?" if self.on_lines else _WHO)
        self.told.setText(_HOW[self.on_lines])
        self.table.show_rows([(f"{line.count} ×", line.what, self._read(line), line.lot or "any")
                              for line in self.rows])
        self.table.setVisible(bool(self.rows))
        self.go.say("Add the line" if self.on_lines else "On to what is wanted")
        self.place.setVisible(self.on_lines)
        self.back.setVisible(self.on_lines and bool(self.rows))
        self.to_who.setVisible(self.on_lines)

    def _read(self, line: Said) -> str:
        read = read_words(line.what, self.names)
        found = [name for names, one in ((self.names.colourways, read.colourway),
                                         (self.names.bases, read.base))
                 for name, number in names.items() if number == one]
        return ", ".join(found) if read.colourway else "kept as words"


def _side_by_side(*fields: Field[str] | Field[int]) -> QWidget:
    widget = QWidget()
    row = QHBoxLayout(widget)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(Gap.PART)
    for field in fields:
        row.addWidget(field, 1, Qt.AlignmentFlag.AlignTop)
    return widget


def _mail(text: str) -> str:
    before, at, after = text.strip().partition("@")
    if text.strip() and not (before and at and "." in after):
        raise BadInput("It is no e-mail address.", "Write it again, or leave it empty.")
    return text.strip()

