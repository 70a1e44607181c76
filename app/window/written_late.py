"""Yesterday's white board entered today: when it happened is chosen once for all of it."""

from datetime import UTC, datetime, timedelta

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QShortcut
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSizePolicy, QVBoxLayout

from app.calculations.moments import board_words, moment_words
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

_DAY, _HOUR, _STEP = timedelta(days=1), timedelta(hours=1), timedelta(minutes=10)
_STEPS = (
    ("Day before", "←", Qt.Key.Key_Left, -_DAY),
    ("Day after", "→", Qt.Key.Key_Right, _DAY),
    ("Hour earlier", "PgDown", Qt.Key.Key_PageDown, -_HOUR),
    ("Hour later", "PgUp", Qt.Key.Key_PageUp, _HOUR),
    ("10 min earlier", "↓", Qt.Key.Key_Down, -_STEP),
    ("10 min later", "↑", Qt.Key.Key_Up, _STEP),
)
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
_KEYS = {*_ENTER, *(key for _, _, key, _ in _STEPS)}


class WrittenLate(QFrame):
    """Asks when it happened, and says so as long as what is entered happened then."""

    chosen = Signal(object)  # datetime, the person wants to enter what happened then
    ended = Signal()  # the person wants to enter what happens now

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("ground", "finding")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("written late")
        self.moment = _wall(datetime.fromtimestamp(0, UTC))  # by the wall clock, without a zone
        self.on: datetime | None = None
        self.words = Words("", Size.LEAD, bold=True)
        self.wrong = Words(ink=SECOND)
        self.take = KeyButton("Take it", "Enter", strong=True)
        for shortcut in self.take.findChildren(QShortcut):
            shortcut.setEnabled(False)  # the bench below may have Enter too: see `event`
        self.back = KeyButton("Back to now", "Esc")
        self.leave = KeyButton("Leave it", "Esc")
        self.steps = [self._stepping(*step) for step in _STEPS]
        self._steps_in_rows = Actions(*self.steps)
        self._lay_out()
        self.take.clicked.connect(self._choose)
        self.back.clicked.connect(self.ended)
        self.leave.clicked.connect(self.put_away)
        self.hide()

    @property
    def asking(self) -> bool:
        """Whether the day is being chosen."""
        return self.isVisible() and self.take.isVisible()

    def ask(self, now: datetime) -> None:
        """When did it happen? Yesterday at the end of the day, unless another moment is on."""
        wall = _wall(self.on or now)
        yesterday = (wall - _DAY).replace(hour=17, minute=0, second=0, microsecond=0)
        self.moment = wall if self.on else yesterday
        self._show_asking(asking=True)
        self._say_moment()
        self.setFocus()

    def begin(self, moment: datetime) -> None:
        """From here on what is entered happened then."""
        self.on = moment
        self._show_asking(asking=False)
        self.words.setText(f"WRITTEN LATE: {board_words(moment).upper()} — all that is entered "
                           "now happened then.")

    def end(self) -> None:
        """What is entered happens now again."""
        self.on = None
        self.hide()

    def put_away(self) -> None:
        """The question is left unanswered: it stays as it was."""
        if self.on is not None:
            self.begin(self.on)
        else:
            self.hide()

    def complain(self, sentence: str) -> None:
        """Say why this moment cannot be; it can be put right at once."""
        self.wrong.setText(sentence)
        self.wrong.show()

    def event(self, event: QEvent) -> bool:
        """While it asks, its keys are its own and not those of the bench below."""
        if event.type() is QEvent.Type.ShortcutOverride and self.asking:
            assert isinstance(event, QKeyEvent)
            if event.key() in _KEYS:
                event.accept()
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = next((by for _, _, key, by in _STEPS if key == event.key()), None)
        if not self.asking or event.key() not in _KEYS:
            super().keyPressEvent(event)
        elif step is None:
            self._choose()
        else:
            self._step(step)

    def _stepping(self, words: str, cap: str, key: Qt.Key, by: timedelta) -> KeyButton:
        button = KeyButton(f"{words} {cap}")
        button.setAccessibleName(words)
        button.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the arrows are for the strip itself
        button.clicked.connect(lambda: self._step(by))
        return button

    def _step(self, by: timedelta) -> None:
        self.moment += by
        self._say_moment()

    def _say_moment(self) -> None:
        self.wrong.hide()
        self.words.setText(f"It happened {board_words(self.moment.astimezone())}")

    def _choose(self) -> None:
        self.chosen.emit(self.moment.astimezone())

    def _show_asking(self, *, asking: bool) -> None:
        self.wrong.hide()
        for widget in (self._steps_in_rows, self.take, self.leave):
            widget.setVisible(asking)
        self.back.setVisible(not asking)
        self.show()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(Gap.PART, Gap.SMALL, Gap.PART, Gap.SMALL)
        column.setSpacing(Gap.SMALL)
        row = QHBoxLayout()
        row.setSpacing(Gap.SMALL)
        row.addWidget(self.words, 1)
        for key in (self.take, self.leave, self.back):
            row.addWidget(key)
        column.addLayout(row)
        for widget in (self.wrong, self._steps_in_rows):
            column.addWidget(widget)


def _wall(moment: datetime) -> datetime:
    """As the clock on the wall shows it, so that an hour more is an hour more on it."""
    return moment.astimezone().replace(tzinfo=None)


def why_not(moment: datetime, now: datetime, began: datetime) -> str:
    """Why nothing can be entered for that moment, or nothing where it can."""
    if moment > now:
        return f"{board_words(moment)} has not come yet: choose a moment that is over."
    if moment < began:
        return (f"The book began on {moment_words(began)}: choose a later moment. What lay here "
                "before comes in at Receiving.")
    return ""
