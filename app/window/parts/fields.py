"""Fields that keep what was typed and say in a sentence what is wrong with it."""

from collections.abc import Callable
from decimal import Decimal
from typing import Generic, TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from app.problems import BadInput
from app.window.look.look import Gap
from app.window.parts.amounts import read_count, read_grams
from app.window.parts.words import SECOND, Words

T = TypeVar("T")


class Field(QWidget, Generic[T]):
    """A line to write in under its name; `reader` turns the text into what it means.

    `settled` comes when the person is done with the field and what stands there can be read.
    """

    settled = Signal()

    def __init__(self, name: str, reader: Callable[[str], T], hint: str = "") -> None:
        super().__init__()
        self._reader = reader
        self.line = QLineEdit()
        self.line.setPlaceholderText(hint)
        self.line.setAccessibleName(name)
        self.wrong = Words()
        self.wrong.hide()
        self._name = Words(name, ink=SECOND)
        self._name.setBuddy(self.line)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.HAIR)
        for widget in (self._name, self.line, self.wrong):
            column.addWidget(widget)
        column.addStretch(1)  # beside a field that complains its line stays where it was
        self.line.editingFinished.connect(self._settle)
        self.line.textEdited.connect(self._unsay)
        self.setFocusProxy(self.line)

    def value(self) -> T | None:
        """What stands there, or None and the sentence that says what is wrong."""
        try:
            read_value = self._reader(self.line.text())
        except BadInput as problem:
            self.complain(str(problem))
            return None
        self._unsay()
        return read_value

    def name(self, name: str) -> None:
        """Call it otherwise."""
        self._name.setText(name)
        self.line.setAccessibleName(name)

    def complain(self, sentence: str) -> None:
        """Say what is wrong; the text stays as it was typed."""
        self.wrong.setText(sentence)
        self.wrong.show()
        self.line.setAccessibleDescription(sentence)

    def clear(self) -> None:
        """Make room for the next."""
        self.line.clear()
        self._unsay()

    def _settle(self) -> None:
        """Enter settles too, after what it answered: a complaint that came of that stays."""
        text = self.line.text()
        try:
            read_value = self._reader(text) if text.strip() else None
        except BadInput as problem:
            self.complain(str(problem))
        else:
            if read_value is not None:
                self.settled.emit()

    def _unsay(self) -> None:
        self.wrong.hide()
        self.line.setAccessibleDescription("")


class GramsField(Field[Decimal]):
    """A weight in grams."""

    def __init__(self, name: str, hint: str = "grams") -> None:
        super().__init__(name, read_grams, hint)


class CountField(Field[int]):
    """A whole number of things."""

    def __init__(self, name: str, hint: str = "") -> None:
        super().__init__(name, read_count, hint)


class TextField(Field[str]):
    """A few words; `needed` says what is missing when there are none."""

    def __init__(self, name: str, hint: str = "", needed: str = "") -> None:
        def some_words(text: str) -> str:
            if needed and not text.strip():
                raise BadInput(needed)
            return text.strip()

        super().__init__(name, some_words, hint)
