"""Words and figures at bench size: read at two metres, whatever the size of the other text."""

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QFont

from app.window.look.look import Size, look
from app.window.parts.words import Digits

_BELOW = 0.24  # of the height


class BenchWords(Digits):
    """As large as asked in pixels at every text factor; gives way where the place is narrow.

    `below` leaves room for letters that hang below the line.
    """

    def __init__(self, size: float = Size.HUGE, *, below: bool = False) -> None:
        self._below = _BELOW if below else 0.0
        super().__init__("", size / look().text)
        self._pixels = size

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self._size = self._pixels / look().text
            self.updateGeometry()

    def _needs(self, font: QFont) -> QSize:
        return super()._needs(font) + QSize(0, round(font.pixelSize() * self._below))
