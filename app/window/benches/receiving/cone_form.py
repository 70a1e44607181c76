"""One cone on the scales: its gross weight, and what is kept from the cone before."""

from collections.abc import Callable, Collection, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.codes import Kind, numbered
from app.exchange.delivery_note import NOT_STATED
from app.exchange.written import GROSS, MOISTURE, TARE, WRAP, Measure, amount, cone_number
from app.problems import BadInput
from app.window.benches.receiving.hand import go_to
from app.window.benches.receiving.offered import Offered
from app.window.look.look import Gap
from app.window.parts.fields import Field
from app.work.receiving import ConeIn


class ConeForm(QWidget):
    """Gross, centre and batch; and out of sight the number of its card and what was measured."""

    def __init__(self) -> None:
        super().__init__()
        self.taken: Callable[[int], str] = lambda _number: ""
        self.gross = Field("Gross, g", _weight(GROSS, "Weigh it with its centre."))
        self.centre = Field("Empty centre, g", _weight(TARE, "Weigh three empty centres."), "64")
        self.batch = Offered("Spinner's batch", reader=_batch)
        self.number = Field("Number on its card", self._number, "the next free")
        self.wrap = Field("100 m weigh", _if_any(WRAP), "not weighed")
        self.moisture = Field("Moisture, %", _if_any(MOISTURE), "not measured")
        self.more = QWidget()
        self.more.hide()
        self._fields: Sequence[Field[int] | Field[str]] = (
            self.gross, self.centre, self.batch, self.number, self.wrap, self.moisture)
        for field in self._fields:
            field.line.setAcceptDrops(False)  # a list that is dropped here is for the bench
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.SMALL)
        column.addLayout(_row(self.gross, self.centre, self.batch))
        self.more.setLayout(_row(self.number, self.wrap, self.moisture))
        column.addWidget(self.more)

    def cone(self) -> ConeIn | None:
        """The cone as it was written, or none and what is wrong beside its field."""
        gross_mg, tare_mg, batch = self.gross.value(), self.centre.value(), self.batch.value()
        number, wrap_mg, moisture = self.number.value(), self.wrap.value(), self.moisture.value()
        wrong = next((field for field in self._fields if field.wrong.isVisibleTo(field)), None)
        if gross_mg is not None and tare_mg is not None and tare_mg >= gross_mg:
            self.centre.complain("The empty centre cannot weigh as much as the whole cone.")
            wrong = wrong or self.centre
        if wrong is not None or gross_mg is None or tare_mg is None:
            if wrong in (self.number, self.wrap, self.moisture):
                self.more.show()
            go_to((wrong or self.gross).line)
            return None
        return ConeIn(gross_mg, tare_mg, batch or None, number or None, wrap_mg or None,
                      moisture or None)

    def draft(self) -> tuple[int, int] | None:
        """Gross and centre in milligrams as far as they can be read, with nothing complained of."""
        try:
            return (_weight(GROSS, "")(self.gross.line.text()),
                    _weight(TARE, "")(self.centre.line.text()))
        except BadInput:
            return None

    def next_cone(self) -> None:
        """Make room for the next; centre and batch are kept."""
        for field in (self.gross, self.number, self.wrap, self.moisture):
            field.clear()
        go_to(self.gross.line)

    def clear(self) -> None:
        """Another delivery: its centres are weighed anew."""
        for field in self._fields:
            field.clear()
        self.more.hide()

    def show_cone(self, cone: ConeIn) -> None:
        """A cone comes back on the scales, to be put right."""
        self.clear()
        self.gross.line.setText(_said(cone.gross_mg, 1000))
        self.centre.line.setText(_said(cone.tare_mg, 1000))
        self.batch.line.setText(cone.batch or NOT_STATED)
        self.number.line.setText(str(cone.number or ""))
        self.wrap.line.setText(_said(cone.wrap_mg, 1000) if cone.wrap_mg else "")
        self.moisture.line.setText(_said(cone.moisture_permille, 10)
                                   if cone.moisture_permille else "")
        self.more.setVisible(bool(cone.number or cone.wrap_mg or cone.moisture_permille))
        go_to(self.gross.line)
        self.gross.line.selectAll()

    def _number(self, text: str) -> int:
        """0 where none is written."""
        try:
            number = cone_number(text.strip())
        except BadInput:
            raise BadInput(f"“{text.strip()}” is no cone's number.",
                           "Write it as on its card, like 114.") from None
        taken = self.taken(number) if number else ""
        if taken:
            raise BadInput(taken, "Read its card again, or leave this empty for the next free "
                                  "number.")
        return number or 0


def number_taken(number: int, in_book: Collection[int], in_hand: Collection[int]) -> str:
    """Why a cone cannot have this number; '' where it can."""
    code = numbered(Kind.CONE, number).grouped
    if number in in_book:
        return f"{code} is another cone in the book."
    return f"{code} stands in this delivery already." if number in in_hand else ""


def _weight(measure: Measure, needed: str) -> Callable[[str], int]:
    """Reads what is measured; a number without a unit is in grams, or in per cent."""
    unit = "%" if measure is MOISTURE else "g"

    def read(text: str) -> int:
        if not text.strip():
            raise BadInput(needed)
        try:
            return amount(text.strip(), measure, unit, frozenset())
        except BadInput as why:
            raise BadInput(f"“{text.strip()}”: {why.what}") from None

    return read


def _if_any(measure: Measure) -> Callable[[str], int]:
    """0 where nothing is written."""
    read = _weight(measure, "")
    return lambda text: read(text) if text.strip() else 0


def _batch(text: str) -> str:
    """'' for a batch that was not stated, on purpose."""
    words = text.strip()
    if not words:
        raise BadInput("Write the spinner's batch, or say that it is not stated: F4.")
    return "" if words == NOT_STATED else words


def _said(size: int, of_one: int) -> str:
    return f"{size / of_one:.10g}"


def _row(*fields: QWidget) -> QHBoxLayout:
    row = QHBoxLayout()
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(Gap.PART)
    for field in fields:
        row.addWidget(field, 1, Qt.AlignmentFlag.AlignTop)
    return row
