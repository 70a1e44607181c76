"""The few shapes of the window: swing tag, eight-cornered plate, key cap, ring of the focus."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen, QPolygonF

from app.window.look.look import look


def octagon(box: QRectF, cut: float) -> QPolygonF:
    """A plate with all eight corners: the shape of HOLD and of nothing else."""
    x, y, right, bottom = box.left(), box.top(), box.right(), box.bottom()
    return _polygon(
        (x + cut, y),
        (right - cut, y),
        (right, y + cut),
        (right, bottom - cut),
        (right - cut, bottom),
        (x + cut, bottom),
        (x, bottom - cut),
        (x, y + cut),
    )


def swing_tag(box: QRectF, cut: float) -> QPolygonF:
    """A tag with its two upper corners clipped."""
    x, y, right, bottom = box.left(), box.top(), box.right(), box.bottom()
    return _polygon(
        (x + cut, y),
        (right - cut, y),
        (right, y + cut),
        (right, bottom),
        (x, bottom),
        (x, y + cut),
    )


def hold_size(px: int) -> tuple[float, float]:
    """Width and height of a HOLD plate whose word is so many pixels high."""
    word = QFontMetricsF(_hold_font(px)).horizontalAdvance("HOLD")
    return round(word + px * 1.5), round(px * 1.75)


def draw_hold(painter: QPainter, box: QRectF, px: int, here: bool) -> None:
    """HOLD: filled where it was placed, in outline on what lies below."""
    colours = look().colours
    red = QColor(colours.hold)
    inner = box.adjusted(1, 1, -1, -1)
    painter.setPen(QPen(QColor(colours.on_hold if here else colours.hold_below), 2))
    painter.setBrush(red if here else QColor(colours.in_hand))
    painter.drawPolygon(octagon(inner, px * 0.45))
    painter.setPen(QColor(colours.on_hold if here else colours.hold_below))
    painter.setFont(_hold_font(px))
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "HOLD")


def key_cap_width(key: str, font: QFont) -> float:
    """How wide the cap of a key is."""
    metrics = QFontMetricsF(font)
    return round(max(metrics.horizontalAdvance(key) + metrics.height() * 0.7, metrics.height() + 8))


def draw_key_cap(painter: QPainter, box: QRectF, key: str, font: QFont, ink: QColor) -> None:
    """The key that does it, as a cap."""
    painter.setPen(QPen(ink, 1.5))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(box.adjusted(0.75, 0.75, -0.75, -0.75), 4, 4)
    painter.setFont(font)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, key)


def draw_focus(painter: QPainter, box: QRectF, radius: float = 6) -> None:
    """The ring of the focus: two pixels of ink just inside the box, clear of what it rings."""
    painter.setPen(QPen(QColor(look().colours.ink), 2.5))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(box.adjusted(1.25, 1.25, -1.25, -1.25), radius, radius)


def _polygon(*points: tuple[float, float]) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in points])


def _hold_font(px: int) -> QFont:
    font = look().font(px, bold=True)
    font.setPixelSize(px)
    return font
