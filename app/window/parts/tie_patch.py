"""The tie colour as a patch with its word, to be read across the room."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.look import Gap, Size, look
from app.window.look.palette import contrast, ink_on


class TiePatch(QWidget):
    """A thread colour (`red`, `#C2272D`); the word is part of the patch, never left out."""

    def __init__(self, word: str = "", colour: str = "#FFFFFF", size: float = Size.HUGE) -> None:
        super().__init__()
        self._size = size
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.show_tie(word, colour)

    def show_tie(self, word: str, colour: str) -> None:
        """Show the next tie."""
        self._word, self._colour = word, colour
        self.setAccessibleName(f"{word} tie")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return self._needs(self._font(self._size))

    def minimumSizeHint(self) -> QSize:
        least = self._needs(self._font(min(self._size, Size.LEAD)))
        return QSize(least.width(), self.sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        box = QRectF(self.rect())
        painter.fillRect(box, QColor(self._colour))
        if contrast(self._colour, look().colours.paper) < 1.5:
            painter.setPen(QPen(QColor(look().colours.edge), 1))
            painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5))
        font = self._font(self._size)
        scale = min(1.0, self.width() / self._needs(font).width())
        font.setPixelSize(max(1, int(font.pixelSize() * scale)))
        painter.setFont(font)
        painter.setPen(QColor(ink_on(self._colour)))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, self._word)

    def _font(self, size: float) -> QFont:
        return look().font(size, bold=True)

    def _needs(self, font: QFont) -> QSize:
        metrics = QFontMetricsF(font)
        pad = Gap.PART if font.pixelSize() < Size.LARGE else Gap.BLOCK
        width = int(metrics.horizontalAdvance(self._word)) + 2 * pad
        return QSize(max(56, width), max(44, round(metrics.height()) + Gap.SMALL))
