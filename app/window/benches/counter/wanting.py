"""More of the lot in hand: how many are wanted, or metres, or how much of the piece is done."""

from dataclasses import replace
from decimal import Decimal, InvalidOperation

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.reorder import ALLOWANCE, Blending, Fabric, blending
from app.lookups.reorder import Asked
from app.problems import BadInput
from app.window.benches.counter.asking import Ask
from app.window.parts.card import Actions, SideBySide
from app.window.parts.fields import CountField, Field
from app.window.parts.key_button import KeyButton

PERCENT = Decimal(100)
ZONE_CM = "8"
"""In which two lots alternate where they meet; common practice, no source."""


class MoreCard(Ask):
    """How many more, or metres, or how much of the piece the skeins so far made.

    The allowance is for what is reckoned from metres. The gauge, which is asked for by a key, says
    how much of each lot must be left where rows of two lots alternate.
    """

    def __init__(self, lot: int, shown: str, put_up: str) -> None:
        super().__init__(f"More of {shown}", "Fill in what the customer knows: a number, metres, "
                         "or what was used and how much of the piece it made.", "Show the ways")
        self._lot, self._put_up = lot, put_up
        self.how_many = CountField("How many more", "3")
        self.metres = Field("or metres", _number, "620")
        self.used = Field(f"or {put_up}s used so far", _number, "3")
        self.done = Field("for so much of the piece, %", _number, "62")
        self.allowance = Field("Allowance, %", _number_or_none, "5")
        self.allowance.line.setText(f"{ALLOWANCE * PERCENT:.0f}")
        self.gauge_key = KeyButton("Rows of two lots in turn", "F6")
        self.gauge = Gauge()
        self.lay_out(SideBySide(self.how_many, self.metres),
                     SideBySide(self.used, self.done, self.allowance), Actions(self.gauge_key),
                     self.gauge)
        self.gauge.hide()
        self.gauge_key.clicked.connect(self._ask_gauge)

    def begin(self) -> None:
        self.how_many.line.setFocus()

    def count(self, number: int) -> bool:
        self.how_many.line.setText(str(number))
        self.save()
        return True

    def save(self) -> None:
        asked = self._asked()
        if asked is not None:
            self.answered.emit((asked,))

    def _ask_gauge(self) -> None:
        self.gauge.show()
        self.gauge.stitches.line.setFocus()

    def _asked(self) -> Asked | None:
        percent = self.allowance.value()
        if percent is None or not self.gauge.is_read():
            return None
        return self._told(Asked(lot=self._lot, put_up=self._put_up, allowance=percent / PERCENT,
                                blending=self.gauge.zone()))

    def _told(self, asked: Asked) -> Asked | None:
        """With what was filled in: the first of the three ways that was begun."""
        if self.how_many.line.text().strip():
            count = self.how_many.value()
            return None if count is None else replace(asked, skeins=count)
        if self.metres.line.text().strip():
            metres = self.metres.value()
            return None if metres is None else replace(asked, metres=metres)
        if not (self.used.line.text().strip() or self.done.line.text().strip()):
            self.how_many.complain("Say how many are wanted, or metres, or what was used.")
            return None
        used, share = self.used.value(), self.done.value()
        if used is None or share is None:
            return None
        if share > PERCENT:
            self.done.complain("A piece is done at 100 %.")
            return None
        return replace(asked, used=used, done=share / PERCENT)


class Gauge(QWidget):
    """How the piece is knitted; nothing filled in means that it is not asked."""

    def __init__(self) -> None:
        super().__init__()
        self.stitches = Field("Stitches in 10 cm", _number, "27")
        self.rows = Field("Rows in 10 cm", _number, "36")
        self.each = Field("Yarn in a stitch, cm", _number, "1.30")
        self.round = Field("The piece is round, cm", _number, "120")
        self.zone_cm = Field("Rows in turn over, cm", _number, ZONE_CM)
        self.zone_cm.line.setText(ZONE_CM)
        self._asked = (self.stitches, self.rows, self.each, self.round)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(SideBySide(self.stitches, self.rows, self.each))
        column.addWidget(SideBySide(self.round, self.zone_cm))

    @property
    def begun(self) -> bool:
        """Whether anything of the gauge was filled in."""
        return any(field.line.text().strip() for field in self._asked)

    def is_read(self) -> bool:
        """Whether all of it can be read, or nothing was filled in; else what is wrong is said."""
        fields = (*self._asked, self.zone_cm)
        wrong = [field for field in fields if self.begun and field.value() is None]
        return not wrong

    def zone(self) -> Blending | None:
        """The rows in which two lots alternate, and what must be left of each."""
        fields = (*self._asked, self.zone_cm) if self.begun else ()
        read = [value for field in fields if (value := field.value()) is not None]
        if len(read) <= len(self._asked):
            return None
        stitches, rows, each, around, zone_cm = read
        return blending(Fabric(stitches, rows, each), around, zone_cm)


def _number(text: str) -> Decimal:
    number = _read(text)
    if number is None or not number > 0:
        raise BadInput(f"“{text.strip()}” is no number above nothing.")
    return number


def _number_or_none(text: str) -> Decimal:
    """An allowance: nothing written is no allowance."""
    number = _read(text) if text.strip() else Decimal(0)
    if number is None or not 0 <= number <= PERCENT:
        raise BadInput(f"“{text.strip()}” is no number from 0 to 100.")
    return number


def _read(text: str) -> Decimal | None:
    try:
        number = Decimal(text.strip().replace(",", "."))
    except InvalidOperation:
        return None
    return number if number.is_finite() else None
