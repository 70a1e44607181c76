"""The bar at the balance: how full the cup is, and the window that the weight must come into."""

from decimal import Decimal

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.look import Size, look

_TARGET_AT = 0.84  # of the bar's width: beyond it there is room for too much
_HIGH = 52  # pixels
_LEAST_WINDOW = 20.0  # pixels of the window, so that it is seen from two metres


class WeightBar(QWidget):
    """Black as far as it was taken; a frame stands where it is good."""

    def __init__(self) -> None:
        super().__init__()
        self._target = self._allowed = self._taken = Decimal(0)
        self._limits = ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_weight(self, target: Decimal, allowed: Decimal, taken: Decimal, limits: str) -> None:
        """The target, how far it may be off, what is taken, and the limits in words."""
        self._target, self._allowed, self._taken = target, allowed, taken
        self._limits = limits
        self.setAccessibleName(f"{taken} of {target}, good from {limits}")
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(look().grid(320), look().px(Size.LEAD) + 8 + _HIGH)

    def minimumSizeHint(self) -> QSize:
        return QSize(160, self.sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = QColor(look().colours.ink)
        head = look().px(Size.LEAD) + 8
        box = QRectF(1, head + 6, self.width() - 2, self.height() - head - 12)
        painter.setPen(QPen(ink, 2))
        painter.drawRect(box)
        if not self._target:
            return
        per_gram = box.width() * _TARGET_AT / float(self._target)
        filled = min(float(self._taken) * per_gram, box.width())
        painter.fillRect(QRectF(box.left(), box.top(), filled, box.height()), ink)
        middle = box.left() + float(self._target) * per_gram
        half = max(float(self._allowed) * per_gram, _LEAST_WINDOW / 2)
        window = QRectF(middle - half, box.top() - 5, 2 * half, box.height() + 10)
        painter.setPen(QPen(QColor(look().colours.in_hand), 7))
        painter.drawRect(window)
        painter.setPen(QPen(ink, 3))
        painter.drawRect(window)
        self._draw_limits(painter, middle)

    def _draw_limits(self, painter: QPainter, middle: float) -> None:
        painter.setFont(look().font(Size.LEAD, bold=True))
        metrics = painter.fontMetrics()
        wide = metrics.horizontalAdvance(self._limits)
        left = min(max(0.0, middle - wide / 2), self.width() - wide)
        painter.setPen(QColor(look().colours.ink))
        painter.drawText(QPointF(left, metrics.ascent()), self._limits)
