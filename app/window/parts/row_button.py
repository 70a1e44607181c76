"""A row that is a key as wide as its place: arrow keys walk from row to row, Enter chooses."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QSizePolicy

from app.window.look.look import TARGET, Gap, look


class RowButton(QAbstractButton):
    """Put what it shows into `row`; it is at least as high as a finger needs."""

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.row = QHBoxLayout(self)
        self.row.setSpacing(Gap.LINE)

    def sizeHint(self) -> QSize:
        return self.row.sizeHint().expandedTo(QSize(0, TARGET))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.focusNextPrevChild(event.key() == Qt.Key.Key_Down)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours, box = look().colours, QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75)
        if self.isEnabled() and (self.underMouse() or self.isDown()):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(colours.foot))
            painter.drawRoundedRect(box, 4, 4)
        if self.hasFocus():
            painter.setPen(QPen(QColor(colours.ink), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box, 4, 4)
