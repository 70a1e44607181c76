"""A tie that nothing on the cord wears: which thread is it?"""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.lookups.finishing import NO_TIE
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.ties import Ties
from app.window.parts.words import Words


class StrangeTies(QWidget):
    """The studio's threads, each with its figure; `chosen` gives the thread's word."""

    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.threads: Sequence[str] = ()
        self.shown: list[str] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.SMALL)
        self._column.addWidget(
            Words(
                "Which thread is it? They stand apart: their lot and cone are not known.", bold=True
            )
        )
        self._keys: QWidget | None = None

    def show_but(self, known: Sequence[str]) -> None:
        """Offer the threads that nothing on the cord wears."""
        self.shown = [word for word in (*self.threads, NO_TIE) if word not in known]
        if self._keys is not None:
            self._keys.hide()
            self._keys.deleteLater()
        self._keys = Actions(*(self._choice(n, word) for n, word in enumerate(self.shown, 1)))
        self._column.addWidget(self._keys)
        self.show()

    def choose(self, number: int) -> None:
        """The thread with this figure."""
        if 0 < number <= len(self.shown):
            self.chosen.emit(self.shown[number - 1])

    def _choice(self, number: int, word: str) -> QWidget:
        choice = QWidget()
        row = QHBoxLayout(choice)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        key = KeyButton(word if word == NO_TIE else "", str(number))
        key.setAccessibleName(f"{word} ties")
        key.clicked.connect(partial(self.choose, number))
        if word != NO_TIE:
            row.addWidget(Ties(word, Size.PLAIN))
        row.addWidget(key)
        return choice
