"""One tie on the table: how many are due, how many were counted, and the keys to say so."""

from PySide6.QtCore import QRectF, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSizePolicy, QVBoxLayout

from app.window.benches.finishing.tally import TieCount
from app.window.look.look import Gap, Size, look
from app.window.look.shapes import draw_focus
from app.window.parts.key_button import KeyButton
from app.window.parts.tie_patch import TiePatch
from app.window.parts.ties import thread_colour, threads_of
from app.window.parts.words import Digits, Words

WIDE, NARROW = 264, 196  # narrow where three or more lie side by side
_BENCH = 112  # height of the count; 84 and more is read at two metres


class TiePanel(QFrame):
    """A patch with its number; a tap says that it is right, − and + that it is not."""

    said = Signal(int)  # what was counted
    stepped = Signal(int)

    def __init__(self, count: TieCount, *, strange: bool = False, width: int = WIDE) -> None:
        super().__init__()
        self.count, self._width = count, width
        self.setProperty("ground", "paper")
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.counted = Digits(size=_BENCH)
        self.state = Words(bold=True)
        self.right = KeyButton(f"{count.least} it is", size=Size.LEAD)
        self.less, self.more = KeyButton("−", size=Size.LEAD), KeyButton("+", size=Size.LEAD)
        self.right.clicked.connect(lambda: self.said.emit(count.least))
        self.less.clicked.connect(lambda: self.stepped.emit(-1))
        self.more.clicked.connect(lambda: self.stepped.emit(1))
        self.less.setAccessibleName(f"one less, {count.tie} ties")
        self.more.setAccessibleName(f"one more, {count.tie} ties")
        self._current = False
        self._lay_out()
        self.right.setHidden(strange)
        self.show_count(current=False)

    def show_count(self, *, current: bool) -> None:
        """Show what was counted, and whether this tie is the one that is counted now."""
        count = self.count
        self._current = current
        self.counted.show_number("?" if count.counted is None else str(count.counted))
        self.state.setText(count.state)
        self.setAccessibleName(f"{count.tie} ties: {count.due} due, {count.state}")
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(look().grid(self._width), super().sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self._current:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            draw_focus(painter, QRectF(self.rect()))

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(Gap.LINE, Gap.LINE, Gap.LINE, Gap.LINE)
        column.setSpacing(Gap.SMALL)
        column.addLayout(_patches(self.count))
        number = QHBoxLayout()
        number.setSpacing(Gap.LINE)
        number.addWidget(self.counted, 1)
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addStretch(1)
        words.addWidget(self.state)
        words.addStretch(1)
        number.addLayout(words, 1)
        column.addLayout(number)
        keys = QHBoxLayout()
        keys.setSpacing(Gap.SMALL)
        keys.addWidget(self.less)
        keys.addWidget(self.right, 1)
        keys.addWidget(self.more)
        column.addLayout(keys)


def _patches(count: TieCount) -> QHBoxLayout:
    """'8 red' on red; a tie of two threads has two patches."""
    row = QHBoxLayout()
    row.setSpacing(0)
    for place, word in enumerate(threads_of(count.tie)):
        due = f"{count.due} {word}" if count.most and not place else word
        row.addWidget(TiePatch(due, thread_colour(word), Size.LARGE))
    return row
