"""The scanners of this computer: the sign each begins with, and what it is called."""

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.window.look.look import Gap
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, CodeWords, Words
from app.window.scanners import read_sign


class ScannersCard(Card):
    """`named` gives sign and name, `forgotten` the sign."""

    named = Signal(str, str)
    forgotten = Signal(str)

    def __init__(self) -> None:
        super().__init__("Scanners of this computer")
        self.sign = Field("Begins with", read_sign, "~")
        self.name = TextField("Is called", "pots", "Say where it lies.")
        self.name_key = KeyButton("Name it")
        self.forget_keys: dict[str, KeyButton] = {}
        self._lines = QVBoxLayout()
        self._lines.setSpacing(Gap.HAIR)
        row = QHBoxLayout()
        row.setSpacing(Gap.PART)
        for field in (self.sign, self.name):
            row.addWidget(field, 1, Qt.AlignmentFlag.AlignTop)
        self.add(Words("One scanner needs nothing here. Of several that type on one computer, set "
                       "each to begin with a sign of its own: then two that are scanned at once "
                       "are told apart.", ink=SECOND), self._lines, row, Actions(self.name_key))
        self.name_key.clicked.connect(self._name)
        self.name.line.returnPressed.connect(self._name)

    def show_scanners(self, names: Mapping[str, str]) -> None:
        """Those that are named."""
        take_down(self._lines)
        self.forget_keys = {}
        for sign, name in names.items():
            self._lines.addWidget(self._line(sign, name))

    def clear(self) -> None:
        """Room for the next."""
        self.sign.clear()
        self.name.clear()

    def _line(self, sign: str, name: str) -> QWidget:
        key = KeyButton("Forget")
        key.setAccessibleName(f"forget the scanner {name}")
        key.clicked.connect(lambda: self.forgotten.emit(sign))
        self.forget_keys[sign] = key
        line = QWidget()
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        row.addWidget(CodeWords(sign))
        row.addWidget(Words(name), 1)
        row.addWidget(key)
        return line

    def _name(self) -> None:
        sign, name = self.sign.value(), self.name.value()
        if sign and name:
            self.named.emit(sign, name)
