"""A picture of what is worked with, as large as a headline."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.icons import Icon, draw_icon
from app.window.look.look import look


class Picture(QWidget):
    """One of the house's pictures; it says nothing that words beside it do not say."""

    def __init__(self, icon: Icon, side: float = 84) -> None:
        super().__init__()
        self._icon, self._side = icon, side
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(look().grid(self._side), look().grid(self._side))

    def paintEvent(self, event: QPaintEvent) -> None:
        draw_icon(QPainter(self), QRectF(self.rect()), self._icon, look().colours.ink)
