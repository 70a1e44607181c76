"""Pictures of the things on the bench, drawn here as lines of one weight on a field of 24 by 24."""

from collections.abc import Callable
from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPainterPath, QPen, QPixmap

FIELD, WEIGHT = 24.0, 1.75


class Icon(StrEnum):
    """What can be shown as a picture."""

    CONE = "cone"
    REEL = "reel"
    BALANCE = "balance"
    JAR = "jar"
    POT = "pot"
    RAIL = "rail"
    SCISSORS = "scissors"
    TAG = "tag"
    PARCEL = "parcel"
    KIT = "kit"
    COUNTER = "counter"
    DESK = "desk"
    DISC = "disc"
    SKEIN = "skein"
    CARD = "card"


Point = tuple[float, float]


def draw_icon(painter: QPainter, box: QRectF, icon: Icon, ink: QColor | str) -> None:
    """Draw the picture to fill a square box; the line grows with it."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(box.topLeft())
    painter.scale(box.width() / FIELD, box.height() / FIELD)
    pen = QPen(QColor(ink), WEIGHT)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(outline(icon))
    painter.restore()


def picture(icon: Icon, px: int, ink: QColor | str, ratio: float = 1.0) -> QIcon:
    """The picture as an icon for a window or a menu."""
    pixmap = QPixmap(round(px * ratio), round(px * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    draw_icon(painter, QRectF(0, 0, px, px), icon, ink)
    painter.end()
    return QIcon(pixmap)


def outline(icon: Icon) -> QPainterPath:
    """The lines of a picture on its field."""
    path = QPainterPath()
    _DRAWN[icon](path)
    return path


def _lines(path: QPainterPath, *points: Point, closed: bool = False) -> None:
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    if closed:
        path.closeSubpath()


def _ring(path: QPainterPath, x: float, y: float, radius: float) -> None:
    path.addEllipse(QPointF(x, y), radius, radius)


def _curve(path: QPainterPath, start: Point, one: Point, two: Point, end: Point) -> None:
    path.moveTo(*start)
    path.cubicTo(*one, *two, *end)


def _cone(path: QPainterPath) -> None:
    _lines(path, (9.5, 4), (14.5, 4), (19, 20), (5, 20), closed=True)
    _curve(path, (8.2, 8.6), (11, 10.6), (13, 10.6), (15.8, 8.6))
    _curve(path, (7, 13), (10.5, 15.6), (13.5, 15.6), (17, 13))


def _reel(path: QPainterPath) -> None:
    _lines(path, (12, 2.5), (21.5, 12), (12, 21.5), (2.5, 12), closed=True)
    _lines(path, (12, 5.5), (12, 18.5))
    _lines(path, (5.5, 12), (18.5, 12))


def _balance(path: QPainterPath) -> None:
    _lines(path, (4, 20), (20, 20), (18, 13), (6, 13), closed=True)
    _lines(path, (12, 13), (12, 9))
    _lines(path, (5, 9), (19, 9))
    _curve(path, (8, 9), (8.5, 3), (15.5, 3), (16, 9))
    _lines(path, (10, 16.5), (14, 16.5))


def _jar(path: QPainterPath) -> None:
    path.addRoundedRect(QRectF(5.5, 8, 13, 12.5), 2.5, 2.5)
    path.addRoundedRect(QRectF(7, 3.5, 10, 4.5), 1, 1)
    _lines(path, (5.5, 13), (18.5, 13))


def _pot(path: QPainterPath) -> None:
    _lines(path, (5, 9), (5, 18))
    _curve(path, (5, 18), (5, 19.5), (6, 20.5), (7.5, 20.5))
    _lines(path, (7.5, 20.5), (16.5, 20.5))
    _curve(path, (16.5, 20.5), (18, 20.5), (19, 19.5), (19, 18))
    _lines(path, (19, 18), (19, 9))
    _lines(path, (3, 9), (21, 9))
    for x in (8.5, 12, 15.5):
        _curve(path, (x, 6), (x - 1.3, 5), (x + 1.3, 3.8), (x, 2.8))


def _rail(path: QPainterPath) -> None:
    _lines(path, (2.5, 5), (21.5, 5))
    for x in (7.5, 16.5):
        _curve(path, (x, 5), (x - 6, 11), (x - 3.5, 20), (x, 20))
        _curve(path, (x, 20), (x + 3.5, 20), (x + 6, 11), (x, 5))


def _scissors(path: QPainterPath) -> None:
    _ring(path, 6.5, 18, 2.8)
    _ring(path, 17.5, 18, 2.8)
    _lines(path, (7.9, 15.6), (16, 3.5))
    _lines(path, (16.1, 15.6), (8, 3.5))


def _tag(path: QPainterPath) -> None:
    _lines(path, (8.5, 6.5), (15.5, 6.5), (19, 10), (19, 21), (5, 21), (5, 10), closed=True)
    _ring(path, 12, 10.2, 1.4)
    _curve(path, (12, 8.8), (8.5, 4), (10, 1.8), (12, 1.8))
    _curve(path, (12, 1.8), (14, 1.8), (15.5, 4), (12, 8.8))


def _parcel(path: QPainterPath) -> None:
    _lines(path, (12, 3), (20, 7), (20, 17), (12, 21), (4, 17), (4, 7), closed=True)
    _lines(path, (4, 7), (12, 11), (20, 7))
    _lines(path, (12, 11), (12, 21))


def _kit(path: QPainterPath) -> None:
    _lines(path, (5, 8), (19, 8), (20, 21), (4, 21), closed=True)
    _curve(path, (8.5, 11), (8.5, 1), (15.5, 1), (15.5, 11))


def _counter(path: QPainterPath) -> None:
    _lines(path, (5, 4), (19, 4), (21.5, 9), (2.5, 9), closed=True)
    for x in (2.5, 8.83, 15.17):
        _curve(path, (x, 9), (x, 13.4), (x + 6.33, 13.4), (x + 6.33, 9))
    _lines(path, (4.5, 13), (4.5, 20.5), (19.5, 20.5), (19.5, 13))


def _desk(path: QPainterPath) -> None:
    _lines(path, (3, 20.5), (3, 9), (21, 9), (21, 20.5))
    _lines(path, (13, 9), (13, 20.5), (21, 20.5))
    _lines(path, (13, 14.5), (21, 14.5))
    _lines(path, (6, 9), (6, 4), (12, 4), (12, 9))


def _disc(path: QPainterPath) -> None:
    _ring(path, 12, 12.5, 8.5)
    _ring(path, 12, 7.5, 1.4)
    path.addRect(QRectF(9, 12, 6, 5))


def _skein(path: QPainterPath) -> None:
    _ring(path, 12, 5.5, 2.5)
    _curve(path, (9.8, 6.8), (5, 11), (5, 20.5), (10, 20.5))
    _curve(path, (14.2, 6.8), (19, 11), (19, 20.5), (14, 20.5))
    _lines(path, (10, 20.5), (14, 20.5))
    _curve(path, (8, 12), (11, 12.5), (13, 15.5), (16.5, 16))
    _curve(path, (16, 12), (14.5, 12.2), (13.6, 12.8), (12.9, 13.4))


def _card(path: QPainterPath) -> None:
    path.addRoundedRect(QRectF(4.5, 3, 15, 18), 1.5, 1.5)
    for y in (8.5, 12, 15.5):
        _lines(path, (4.5, y + 1.5), (19.5, y - 1.5))


_DRAWN: dict[Icon, Callable[[QPainterPath], None]] = {
    Icon.CONE: _cone,
    Icon.REEL: _reel,
    Icon.BALANCE: _balance,
    Icon.JAR: _jar,
    Icon.POT: _pot,
    Icon.RAIL: _rail,
    Icon.SCISSORS: _scissors,
    Icon.TAG: _tag,
    Icon.PARCEL: _parcel,
    Icon.KIT: _kit,
    Icon.COUNTER: _counter,
    Icon.DESK: _desk,
    Icon.DISC: _disc,
    Icon.SKEIN: _skein,
    Icon.CARD: _card,
}
