"""Seconds: what is seen, in a few words or by one tap as it was said before."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.look.look import Gap
from app.window.parts.card import Actions
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton


class CallingSeconds(QWidget):
    """`ready` gives the reason; `left` when nothing is a second."""

    ready = Signal(str)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.reasons: Sequence[str] = ()
        self.why = TextField("What is seen", "tie mark on the inside", "Say what is seen.")
        call = KeyButton("They are seconds", "Enter", strong=True)
        leave = KeyButton("Leave it", "F8")
        call.clicked.connect(self.say_done)
        leave.clicked.connect(self.left)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.SMALL)
        self._column.addWidget(self.why)
        self._column.addWidget(Actions(call, leave))

    def begin(self) -> None:
        """What is typed is the reason."""
        self.why.setFocus()

    def show_reasons(self, reasons: Sequence[str]) -> None:
        """Offer what was said before."""
        self.reasons = reasons
        keys = [KeyButton(f"{number} {why}") for number, why in enumerate(reasons, 1)]
        for number, key in enumerate(keys, 1):
            key.clicked.connect(partial(self.choose, number))
        if keys:
            self._column.insertWidget(1, Actions(*keys))

    def choose(self, number: int) -> None:
        """The reason with this number, by a tap or a COUNT plate."""
        if 0 < number <= len(self.reasons):
            self.why.line.setText(self.reasons[number - 1])

    def say_done(self) -> None:
        """The reason is there."""
        why = self.why.value()
        if why is not None:
            self.ready.emit(why)
