"""A page as large on the screen as on paper, and a line of 50 mm to trust it by."""

from PIL import Image
from PySide6.QtCore import QPointF, QSize
from PySide6.QtGui import QColor, QImage, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.look import look

RULER_MM = 50
_MM_PER_INCH = 25.4
_TICKS = ((10, 10.0), (5, 6.0), (1, 3.0))  # every so many mm a tick so many points long


def screen_image(picture: Image.Image, dots_a_point: float = 1.0) -> QImage:
    """A picture as Qt shows it on a screen of so many dots a point."""
    colours = picture.convert("RGB")
    wide, high = colours.size
    image = QImage(colours.tobytes(), wide, high, 3 * wide, QImage.Format.Format_RGB888).copy()
    image.setDevicePixelRatio(dots_a_point)
    return image


class TrueSize(QWidget):
    """The page itself, dot for dot of the screen; nothing is scaled."""

    def __init__(self) -> None:
        super().__init__()
        self.image = QImage()
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("the page true to size")

    def show_image(self, image: QImage) -> None:
        """Show another page."""
        self.image = image
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        size = self.image.deviceIndependentSize()
        return QSize(-int(-size.width() // 1), -int(-size.height() // 1))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        if not self.image.isNull():
            QPainter(self).drawImage(QPointF(0, 0), self.image)


class Ruler(QWidget):
    """A line that is 50 mm long, if this screen tells the truth about its dots."""

    def __init__(self) -> None:
        super().__init__()
        self._dots_an_inch = 96.0
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("this line is 50 mm long")

    def show_scale(self, dots_an_inch: float) -> None:
        """On a screen of so many points an inch."""
        self._dots_an_inch = dots_an_inch
        self.updateGeometry()
        self.update()

    @property
    def length(self) -> float:
        """Of the line, in points of the screen."""
        return RULER_MM / _MM_PER_INCH * self._dots_an_inch

    def sizeHint(self) -> QSize:
        return QSize(round(self.length) + 2, look().grid(24))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setPen(QPen(QColor(look().colours.ink), 1))
        point = self.length / RULER_MM
        foot = self.height() - 1.0
        painter.drawLine(QPointF(0.5, foot), QPointF(self.length + 0.5, foot))
        for mm in range(RULER_MM + 1):
            tick = next(length for every, length in _TICKS if mm % every == 0)
            at = mm * point + 0.5
            painter.drawLine(QPointF(at, foot), QPointF(at, foot - tick))
