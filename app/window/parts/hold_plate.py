"""HOLD: the word in its eight corners, with the reason beside it."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from app.window.look.look import Gap, Size, look
from app.window.look.shapes import draw_hold, hold_size
from app.window.parts.words import Words


class HoldPlate(QWidget):
    """The plate: filled where the hold was placed, in outline on what lies below."""

    def __init__(self, *, here: bool = True, size: Size = Size.PLAIN) -> None:
        super().__init__()
        self._here, self._size = here, size
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("on hold" if here else "below a hold")

    def sizeHint(self) -> QSize:
        width, height = hold_size(look().px(self._size))
        return QSize(round(width), round(height))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_hold(painter, QRectF(self.rect()), look().px(self._size), self._here)


class HoldLine(QWidget):
    """The plate, and in a sentence why and whom to ask."""

    def __init__(self, sentence: str, *, here: bool = True, size: Size = Size.PLAIN) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        row.addWidget(HoldPlate(here=here, size=size))
        row.addWidget(Words(sentence, bold=True), 1)
