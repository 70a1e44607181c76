"""Strips that come between the trail and the bench when something must be said or asked."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSizePolicy, QVBoxLayout

from app.problems import Problem
from app.window.look.look import Gap
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words

_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class ProblemStrip(QFrame):
    """What could not be done, and what to do; it stays until it is put away or work goes on."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("ground", "finding")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self._what, self._next = Words(bold=True), Words()
        self._way = KeyButton("", strong=True)
        self._close = KeyButton("Put away", "Esc")
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        words.addWidget(self._what)
        words.addWidget(self._next)
        row = QHBoxLayout(self)
        row.setContentsMargins(Gap.PART, Gap.LINE, Gap.LINE, Gap.LINE)
        row.setSpacing(Gap.SMALL)
        row.addLayout(words, 1)
        row.addWidget(self._way, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self._close, 0, Qt.AlignmentFlag.AlignVCenter)
        self._close.clicked.connect(self.hide)
        self._way.clicked.connect(self._go_on)
        self._on: Callable[[], None] | None = None
        self.hide()

    def show_problem(
        self, problem: Problem, offer: str = "", way: Callable[[], None] | None = None
    ) -> None:
        """Say it; with `offer`, the words of a way on, and the way itself."""
        self._on = way
        self._what.setText(problem.what)
        self._next.setText(problem.next_step)
        self._next.setVisible(bool(problem.next_step))
        self._way.say(offer)
        self._way.setVisible(bool(offer))
        self.setAccessibleName(str(problem))
        self.show()

    def _go_on(self) -> None:
        self.hide()
        if self._on is not None:
            self._on()


class SignOn(QFrame):
    """Who is at this station: initials, and the station's name when it has moved."""

    signed = Signal(str, str)  # initials, station

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("ground", "in hand")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self.initials = TextField("Initials", needed="Write the initials you sign with.")
        self.station = TextField("At", needed="Say which station this is, such as till or pots.")
        self._done = KeyButton("Sign on", strong=True)
        self._close = KeyButton("Leave it", "Esc")
        row = QHBoxLayout(self)
        row.setContentsMargins(Gap.PART, Gap.LINE, Gap.LINE, Gap.LINE)
        row.setSpacing(Gap.LINE)
        top = Qt.AlignmentFlag.AlignTop
        row.addWidget(self.initials, 1, top)
        row.addWidget(self.station, 2, top)
        row.addWidget(self._done, 0, Qt.AlignmentFlag.AlignBottom)
        row.addWidget(self._close, 0, Qt.AlignmentFlag.AlignBottom)
        self._done.clicked.connect(self._sign)
        self._close.clicked.connect(self.hide)
        self.hide()

    def open(self, station: str) -> None:
        """Ask who it is now."""
        self.initials.clear()
        self.station.line.setText(station)
        self.show()
        self.initials.line.setFocus()

    def event(self, event: QEvent) -> bool:
        """Enter in its fields signs on: it is no key of the bench below."""
        if event.type() is QEvent.Type.ShortcutOverride:
            assert isinstance(event, QKeyEvent)
            if event.key() in _ENTER:
                event.accept()
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in _ENTER:
            self._sign()
        else:
            super().keyPressEvent(event)

    def _sign(self) -> None:
        initials, station = self.initials.value(), self.station.value()
        if initials and station:
            self.signed.emit(initials, station)
