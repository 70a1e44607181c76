"""A field that offers what was written in it before, by a tap or by the arrow keys."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout

from app.window.parts.card import Actions
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton

_SHOWN, _LONGEST = 3, 26
_STEPS = {int(Qt.Key.Key_Down): 1, int(Qt.Key.Key_Up): -1}


def as_written(text: str) -> str:
    """The words without the space round them."""
    return text.strip()


class Offered(Field[str]):
    """A line to write in; below it what is offered and fits what was written so far."""

    def __init__(
        self, name: str, hint: str = "", reader: Callable[[str], str] = as_written
    ) -> None:
        super().__init__(name, reader, hint)
        self.keys: list[KeyButton] = []
        self._offered: Sequence[str] = ()
        self._row: Actions | None = None
        self.line.setAcceptDrops(False)  # a list that is dropped here is for the bench
        self.line.installEventFilter(self)
        self.line.textChanged.connect(self._show)

    def offer(self, words: Sequence[str]) -> None:
        """Offer these, the likeliest first."""
        if list(words) != list(self._offered):
            self._offered = words
            self._show()

    def take_up(self, words: str) -> None:
        """Write it as if it had been typed."""
        self.line.setText(words)
        self._unsay()
        self.settled.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if (
            event.type() is QEvent.Type.KeyPress
            and isinstance(event, QKeyEvent)
            and event.key() in _STEPS
            and self._offered
        ):
            self._walk(_STEPS[event.key()])
            return True
        return super().eventFilter(watched, event)

    def _walk(self, step: int) -> None:
        written = self.line.text()
        if written in self._offered:
            place = self._offered.index(written) + step
            self.take_up(self._offered[place % len(self._offered)])
        else:
            self.take_up((self._fitting() or self._offered)[0])

    def _fitting(self) -> list[str]:
        written = self.line.text().strip()
        if written in self._offered:
            return [one for one in self._offered if one != written]
        return [one for one in self._offered if written.casefold() in one.casefold()]

    def _show(self) -> None:
        if self._row is not None:
            self._row.hide()
            self._row.deleteLater()
            self._row = None
        self.keys = [KeyButton(_short(words)) for words in self._fitting()[:_SHOWN]]
        for key, words in zip(self.keys, self._fitting(), strict=False):
            key.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            key.setAccessibleName(words)
            key.setToolTip(words)
            key.clicked.connect(partial(self.take_up, words))
        layout = self.layout()
        if self.keys and isinstance(layout, QVBoxLayout):
            self._row = Actions(*self.keys)
            layout.addWidget(self._row)


def _short(words: str) -> str:
    return words if len(words) <= _LONGEST else f"{words[: _LONGEST - 1]}…"
