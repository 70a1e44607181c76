"""The threads on their pegs: one key each, to be chosen by eye or by word."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy

from app.window.look.look import TARGET, Gap, Size, look
from app.window.look.palette import contrast, ink_on
from app.window.parts.card import Actions
from app.window.parts.ties import thread_colour

_RING = 4  # of the thread that is chosen


class TieKey(QAbstractButton):
    """One thread: its colour with its word; the chosen one is ringed and ticked."""

    def __init__(self, word: str) -> None:
        super().__init__()
        self.word = word
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setAccessibleName(f"{word} thread")
        self.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(look().font(Size.PLAIN, bold=True))
        width = round(metrics.horizontalAdvance(f"✓ {self.word}")) + 2 * Gap.LINE + 2 * _RING
        return QSize(width, max(TARGET + _RING, look().grid(TARGET + _RING)))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours, box = look().colours, QRectF(self.rect())
        colour = thread_colour(self.word)
        painter.fillRect(box.adjusted(_RING, _RING, -_RING, -_RING), QColor(colour))
        if self.isChecked() or self.hasFocus():
            style = Qt.PenStyle.SolidLine if self.isChecked() else Qt.PenStyle.DashLine
            painter.setPen(QPen(QColor(colours.ink), 2.5, style))
            painter.drawRect(box.adjusted(1.5, 1.5, -1.5, -1.5))
        elif contrast(colour, colours.paper) < 1.5:
            painter.setPen(QPen(QColor(colours.edge), 1))
            painter.drawRect(box.adjusted(_RING, _RING, -_RING, -_RING))
        painter.setFont(look().font(Size.PLAIN, bold=True))
        painter.setPen(QColor(ink_on(colour)))
        words = f"✓ {self.word}" if self.isChecked() else self.word
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)


class TieKeys(Actions):
    """All threads of the studio in their rotation."""

    chosen = Signal(str)

    def __init__(self, words: Sequence[str]) -> None:
        self.keys = [TieKey(word) for word in words]
        super().__init__(*self.keys)
        for key in self.keys:
            key.clicked.connect(partial(self.chosen.emit, key.word))

    def mark(self, word: str) -> None:
        """Show which one it is."""
        for key in self.keys:
            key.setAutoExclusive(False)
            key.setChecked(key.word == word)
            key.setAutoExclusive(True)
