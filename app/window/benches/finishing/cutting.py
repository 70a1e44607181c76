"""One skein becomes minis or balls: how many, of which put-up, and what was lost."""

from contextlib import suppress
from decimal import Decimal
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.lookups.finished import FinishedSkein
from app.problems import BadInput
from app.window.look.look import Gap, Size
from app.window.parts.amounts import read_count, read_grams
from app.window.parts.card import Actions
from app.window.parts.fields import CountField, Field
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.work.dividing import skeins

_USUAL = ("mini", "ball")


class Cutting(QWidget):
    """`ready` gives put-up, count and milligrams lost; `left` when nothing is cut."""

    ready = Signal(str, int, int)
    left = Signal()

    def __init__(self, skein: FinishedSkein, put_up: str) -> None:
        super().__init__()
        self.skein, self.put_up = skein, put_up
        self._loss_asked = False
        described = [form.name for form in skein.forms if form.name != skein.put_up]
        self.forms = {
            name: KeyButton(f"{name}s".capitalize())
            for name in dict.fromkeys([*described, *_USUAL])
        }
        self.how_many = CountField("How many")
        self.lost = Field("Grams lost", _grams_or_none, "0.6")
        self.sum = Words("", Size.LEAD, bold=True)
        self.doubt = Words(ink=SECOND)
        self.cut_it = KeyButton("Cut", "Enter", strong=True)
        leave = KeyButton("Leave it", "F8")
        for name, key in self.forms.items():
            key.setCheckable(True)
            key.clicked.connect(partial(self.choose_form, name))
        self.cut_it.clicked.connect(self.say_done)
        leave.clicked.connect(self.left)
        for field in (self.how_many, self.lost):
            field.line.textChanged.connect(self._show)
        self._lay_out(leave)
        self.choose_form(put_up)

    def begin(self) -> None:
        """Figures go into the count."""
        self.how_many.setFocus()

    def choose_form(self, put_up: str) -> None:
        """They become this put-up."""
        self.put_up = put_up
        for name, key in self.forms.items():
            key.setChecked(name == put_up)
        self._show()

    def choose(self, number: int) -> None:
        """So many, by a COUNT plate."""
        self.how_many.line.setText(str(number))
        self._show()

    def say_done(self) -> None:
        """It is cut, once the count is there and the loss was asked for."""
        count = self.how_many.value()
        if count is None:
            self.how_many.setFocus()
            return
        if not self.lost.line.text().strip() and not self._loss_asked:
            self._loss_asked = True
            self.lost.complain("Was nothing lost, or not weighed? Then DONE or Enter once more.")
            self.lost.setFocus()
            return
        grams = self.lost.value()
        if grams is not None:
            self.ready.emit(self.put_up, count, int(grams * 1000))

    def _show(self) -> None:
        count, grams = 0, Decimal(0)
        with suppress(BadInput):
            count = read_count(self.how_many.line.text())
        with suppress(BadInput):
            grams = _grams_or_none(self.lost.line.text())
        fits = count > 0 and 0 <= grams * 1000 < self.skein.mg
        words = weights(self.skein.mg, count, int(grams * 1000)) if fits else ""
        self.sum.setText(words or f"{_grams(self.skein.mg)} to be shared")
        self.cut_it.say(f"Cut into {skeins(count, self.put_up)}" if count else "Cut")
        known = self.put_up in [form.name for form in self.skein.forms]
        self.doubt.setText(
            f"What a {self.put_up} of {self.skein.base} holds is not described: its tags can be "
            "printed when it is, at Receiving."
        )
        self.doubt.setVisible(not known)

    def _lay_out(self, leave: KeyButton) -> None:
        fields = QHBoxLayout()
        fields.setSpacing(Gap.PART)
        fields.addWidget(self.how_many)
        fields.addWidget(self.lost)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.SMALL)
        column.addWidget(Actions(*self.forms.values()))
        column.addLayout(fields)
        column.addWidget(self.sum)
        column.addWidget(self.doubt)
        column.addWidget(Actions(self.cut_it, leave))


def weights(mg: int, count: int, waste_mg: int) -> str:
    """'103.1 g = 5 × 20.5 g + 0.6 g lost': wound dry mass, in tenths of a gram."""
    lost = f" + {_grams(waste_mg)} lost" if waste_mg else ""
    return f"{_grams(mg)} = {count} × {_grams((mg - waste_mg) / count)}{lost}"


def _grams(mg: float) -> str:
    return f"{mg / 1000:.1f} g"


def _grams_or_none(text: str) -> Decimal:
    return read_grams(text) if text.strip() else Decimal(0)
