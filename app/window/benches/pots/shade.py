"""A swatch chosen by eye, painted on its patch."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from app.window.look.look import Size, look
from app.window.parts.swatch import Zone, draw_zones, mounted

NO_SWATCH = "no swatch chosen"


def draw_swatch(painter: QPainter, box: QRectF, colour: str | None) -> None:
    """A colour, or the words that none was chosen."""
    if colour:
        draw_zones(painter, mounted(painter, box), [Zone(colour)])
        return
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(QColor(look().colours.edge), 1, Qt.PenStyle.DashLine))
    painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5))
    painter.setPen(QColor(look().colours.second_ink))
    painter.setFont(look().font(Size.SMALL))
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    painter.drawText(box.adjusted(2, 2, -2, -2), flags, NO_SWATCH)
