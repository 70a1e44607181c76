"""A code to be read across the room: as large as asked, or as wide as its place allows."""

from PySide6.QtCore import QPointF, QSize
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.codes_face import code_width, draw_code
from app.window.look.look import Size, look


class BigCode(QWidget):
    """A lot's code in groups, 26·15·R6F; it shrinks before it is cut."""

    def __init__(self, code: str = "", size: float = Size.HUGE) -> None:
        super().__init__()
        self.code, self._size = code, size
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.show_code(code)

    def show_code(self, code: str) -> None:
        """Show another code."""
        self.code = code
        self.setAccessibleName(code)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return self._needs(self._font(self._size))

    def minimumSizeHint(self) -> QSize:
        least = self._needs(self._font(min(self._size, Size.TITLE)))
        return QSize(least.width(), self.sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        font = self._font(self._size)
        scale = min(1.0, self.width() / self._needs(font).width())
        font.setPixelSize(max(1, int(font.pixelSize() * scale)))
        painter.setPen(QColor(look().colours.ink))
        base = (self.height() + QFontMetricsF(font).capHeight()) / 2
        draw_code(painter, QPointF(0, base), self.code, font)

    def _needs(self, font: QFont) -> QSize:
        height = QFontMetricsF(font).capHeight() + font.pixelSize() * 0.36
        return QSize(round(code_width(self.code, font)) + 2, round(height))

    def _font(self, size: float) -> QFont:
        return look().font(size, bold=True, codes=True)
