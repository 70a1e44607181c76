"""The marks of lots in a picture: a shape for every group, filled where some are left."""

from math import cos, pi, sin

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from app.window.look.look import look

_CORNERS = ((4, 45), (3, 90), (4, 0), (3, -90), (6, 0), (5, 90))
SHAPES = 2 + len(_CORNERS)


def outline(centre: QPointF, radius: float, shape: int) -> QPainterPath:
    """The outline of a shape; after the last comes the first again."""
    path, kind = QPainterPath(), shape % SHAPES
    if kind == 0:
        path.addEllipse(centre, radius * 0.88, radius * 0.88)
    elif kind == SHAPES - 1:
        for turned in (45, 135, 225, 315):
            path.moveTo(centre)
            path.lineTo(_corner(centre, radius * 1.1, turned))
    else:
        corners, turned = _CORNERS[kind - 1]
        points = [_corner(centre, radius * 1.1, turned + 360 / corners * n)
                  for n in range(corners)]
        path.moveTo(points[-1])
        for point in points:
            path.lineTo(point)
        path.closeSubpath()
    return path


def draw_mark(
    painter: QPainter, centre: QPointF, radius: float, shape: int, *, filled: bool,
    in_hand: bool = False,
) -> None:
    """A mark in ink; what is in hand has a ring around it."""
    colours = look().colours
    ink = QColor(colours.ink)
    painter.setPen(QPen(ink, 2))
    painter.setBrush(QColor(colours.ink if filled else colours.in_hand))
    painter.drawPath(outline(centre, radius, shape))
    if in_hand:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(centre, radius * 1.8, radius * 1.8)


def draw_standard(painter: QPainter, centre: QPointF, radius: float) -> None:
    """The standard: a ring with a cross hair, like no lot."""
    painter.setPen(QPen(QColor(look().colours.ink), 1.5))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawEllipse(centre, radius, radius)
    reach = radius * 2.6
    painter.drawLine(centre - QPointF(reach, 0), centre + QPointF(reach, 0))
    painter.drawLine(centre - QPointF(0, reach), centre + QPointF(0, reach))


def _corner(centre: QPointF, radius: float, degrees: float) -> QPointF:
    turned = degrees * pi / 180
    return centre + QPointF(radius * cos(turned), -radius * sin(turned))
