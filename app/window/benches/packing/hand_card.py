"""An order written by hand: who wants it, then line after line, three fields at a time."""

from uuid import uuid4

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from app.lookups.order_words import StudioNames, read_words
from app.problems import BadInput
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import CountField, Field, TextField
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


class HandCard(Card):
    """`placed` gives the HandOrder once its lines are written."""

    placed = Signal(object)
    left = Signal()

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("an order by hand")
        self.token = ""
        self.names = StudioNames({}, {}, ())
        self.lines: list[Said] = []
        self.title, self.told = Words(_WHO, Size.TITLE, bold=True), Words(ink=SECOND)
        self.number, self.name = TextField("Order number", "the studio's next"), TextField("Name")
        self.mail = Field("E-mail", _mail, "if it is known")
        self.what = TextField("What is wanted", "Ferry Ledger, Tarnfield 4-ply",
                              needed="Say what is wanted.")
        self.count, self.lot = CountField("How many"), TextField("Lot", "any")
        self.table = ThingTable((Head("", right=True), "what", "read as", "lot"), "its lines",
                                most_rows=8)
        self.go = KeyButton("", "Enter", strong=True)
        self.place = KeyButton("Place the order", "F5")
        self.back = KeyButton("Change the last line", "F6")
        self.to_who = KeyButton("Back to whose it is", "F7")
        leave = KeyButton("Leave it", "F8")
        self.go.clicked.connect(self.done)
        self.place.clicked.connect(self._place)
        self.back.clicked.connect(self._take_back)
        self.to_who.clicked.connect(self._ask_who)
        leave.clicked.connect(self.left)
        self.who = _side_by_side(self.number, self.name, self.mail)
        self.wants = _side_by_side(self.what, self.count, self.lot)
        self.add(self.title, self.told, self.who, self.wants, self.table,
                 Actions(self.go, self.place, self.back, self.to_who, leave))

    @property
    def on_lines(self) -> bool:
        """Whether the lines are being written."""
        return not self.wants.isHidden()

    def begin(self) -> None:
        """A new order; or the one that was being written goes on."""
        if not self.token:
            self.token, self.lines = uuid4().hex, []
            for field in (self.number, self.name, self.mail, self.what, self.count, self.lot):
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
        elif self.lines and not self.what.line.text().strip():
            self._place()
        else:
            self._add()

    def _add(self) -> bool:
        what, count = self.what.value(), self.count.value()
        if not what or not count:
            if what and count == 0:
                self.count.complain("None cannot be wanted. Say how many.")
            (self.what if not what else self.count).line.setFocus()
            return False
        self.lines.append(Said(what, count, self.lot.value() or ""))
        for field in (self.what, self.count, self.lot):
            field.clear()
        self._show()
        self.what.line.setFocus()
        return True

    def _take_back(self) -> None:
        """The last line stands in the fields once more; what is being written there is kept."""
        if self.what.line.text().strip():
            self.what.complain("Add this line first, or clear it.")
            self.what.line.setFocus()
            return
        last = self.lines.pop()
        for field, text in ((self.what, last.what), (self.count, str(last.count)),
                            (self.lot, last.lot)):
            field.line.setText(text)
        self._show()
        self.what.line.setFocus()

    def _ask_who(self) -> None:
        self._turn(False)
        self.number.line.setFocus()

    def _place(self) -> None:
        if (self.what.line.text().strip() or not self.lines) and not self._add():
            return
        self.placed.emit(HandOrder(self.number.value() or "", self.name.value() or "",
                                   self.mail.value() or "", tuple(self.lines)))

    def _turn(self, to_lines: bool) -> None:
        self.who.setVisible(not to_lines)
        self.wants.setVisible(to_lines)
        self._show()

    def _show(self) -> None:
        who = self.name.line.text().strip() or "somebody"
        self.title.setText(f"What does {who} want?" if self.on_lines else _WHO)
        self.told.setText(_HOW[self.on_lines])
        self.table.show_rows([(f"{line.count} ×", line.what, self._read(line), line.lot or "any")
                              for line in self.lines])
        self.table.setVisible(bool(self.lines))
        self.go.say("Add the line" if self.on_lines else "On to what is wanted")
        self.place.setVisible(self.on_lines)
        self.back.setVisible(self.on_lines and bool(self.lines))
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

