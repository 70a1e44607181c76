"""The field of shades that a swatch is chosen from by eye; nothing is measured here."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.look import TARGET, Gap
from app.window.look.palette import ink_on
from app.window.look.shapes import draw_focus
from app.window.parts.swatch import mounted

_HUES = (0, 14, 28, 42, 54, 80, 125, 160, 185, 205, 230, 260, 290, 325)
_TONES = ((0.86, 0.45), (0.74, 0.55), (0.60, 0.62), (0.46, 0.66), (0.33, 0.62), (0.20, 0.55))
_GREYS = (0.93, 0.78, 0.62, 0.44, 0.27, 0.11)  # of the yarn, from bare to black


def shades() -> tuple[tuple[str, ...], ...]:
    """Rows of shades from pale to dark, each row with a grey of the yarn first."""
    return tuple(
        (_colour(30, 0.08, grey), *(_colour(hue, depth, light) for hue in _HUES))
        for (light, depth), grey in zip(_TONES, _GREYS, strict=True)
    )


def _colour(hue: float, depth: float, light: float) -> str:
    return QColor.fromHslF(hue / 360, depth, light).name().upper()


class ShadeField(QWidget):
    """Shades side by side; one is chosen by a tap, or with the arrow keys and Space."""

    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._shades = shades()
        self._at = (0, 0)
        self.colour: str | None = None
        self.setAccessibleName("shades, chosen by eye")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(32 * len(self._shades[0]), TARGET * len(self._shades))

    def minimumSizeHint(self) -> QSize:
        return QSize(24 * len(self._shades[0]), self.sizeHint().height())

    def choose(self, row: int, column: int) -> None:
        """Take this shade."""
        self._at = (row, column)
        self.colour = self._shades[row][column]
        self.setAccessibleDescription(f"{self.colour} is chosen")
        self.update()
        self.chosen.emit(self.colour)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        for row, shades_of_row in enumerate(self._shades):
            for column in range(len(shades_of_row)):
                if self._place(row, column).contains(event.position()):
                    self.choose(row, column)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {
            int(Qt.Key.Key_Left): (0, -1),
            int(Qt.Key.Key_Right): (0, 1),
            int(Qt.Key.Key_Up): (-1, 0),
            int(Qt.Key.Key_Down): (1, 0),
            int(Qt.Key.Key_Space): (0, 0),
        }
        if event.key() not in steps:
            super().keyPressEvent(event)
            return
        down, right = steps[event.key()]
        row = min(max(self._at[0] + down, 0), len(self._shades) - 1)
        self.choose(row, min(max(self._at[1] + right, 0), len(self._shades[0]) - 1))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        mounted(painter, QRectF(self.rect()))
        for row, shades_of_row in enumerate(self._shades):
            for column, colour in enumerate(shades_of_row):
                place = self._place(row, column)
                painter.fillRect(place, QColor(colour))
                if colour == self.colour:
                    _draw_mark(painter, place, colour)
        if self.hasFocus():
            draw_focus(painter, QRectF(self.rect()), 0)

    def _place(self, row: int, column: int) -> QRectF:
        wide = (self.width() - 2 * Gap.HAIR) / len(self._shades[0])
        high = (self.height() - 2 * Gap.HAIR) / len(self._shades)
        return QRectF(Gap.HAIR + column * wide, Gap.HAIR + row * high, wide, high)


def _draw_mark(painter: QPainter, place: QRectF, colour: str) -> None:
    """A ring in the ink that is read best on the shade."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(QColor(ink_on(colour)), 3))
    middle = QPointF(place.center())
    painter.drawEllipse(middle, place.width() / 4, place.width() / 4)
