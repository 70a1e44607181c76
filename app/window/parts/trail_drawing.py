"""The picture of a trail drawn on the screen, in its own units."""

from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from app.documents.trail_picture import (
    CUT,
    STROKES,
    Line,
    Picture,
    SetTag,
    SetWay,
    curve,
    outline,
    plate,
)
from app.documents.typesetting import Face
from app.documents.yarn import Certainty
from app.window.look.codes_face import code_width, draw_code
from app.window.look.look import Look, look
from app.window.look.shapes import draw_hold

_RING = 6.0  # of the focus, from the edge of the tag


def draw_trail(painter: QPainter, picture: Picture, seen: QRectF, focus: str) -> None:
    """What of the picture lies in `seen`; the tag with the focus has a ring."""
    for way in picture.ways:
        path = path_of(way)
        if path.boundingRect().adjusted(-8, -8, 8, 8).intersects(seen):
            draw_stroke(painter, path, way.way.certainty)
    for tag in picture.tags:
        if _box(tag).adjusted(-8, -16, 16, 16).intersects(seen):
            _draw_tag(painter, tag, focused=tag.tag.key == focus)


@lru_cache(maxsize=4096)
def path_of(way: SetWay) -> QPainterPath:
    """The curve of one yarn."""
    path = QPainterPath(QPointF(*way.points[0]))
    for first, second, end in curve(way.points):
        path.cubicTo(QPointF(*first), QPointF(*second), QPointF(*end))
    return path


def draw_stroke(painter: QPainter, path: QPainterPath, certainty: Certainty) -> None:
    """A yarn: whole, opened, dashed or dotted as the record is sure."""
    colours, stroke = look().colours, STROKES[certainty]
    painter.setBrush(Qt.BrushStyle.NoBrush)
    pen = QPen(QColor(colours.ink), stroke.weight)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    if stroke.dash:
        pen.setDashPattern([length / stroke.weight for length in stroke.dash])
    painter.setPen(pen)
    painter.drawPath(path)
    if stroke.opened:
        painter.setPen(QPen(QColor(colours.surround), stroke.opened))
        painter.drawPath(path)


def _draw_tag(painter: QPainter, one: SetTag, *, focused: bool) -> None:
    colours, tag = look().colours, one.tag
    painter.setBrush(QColor(colours.in_hand if tag.here else colours.paper))
    painter.setPen(QPen(QColor(colours.edge), 1))
    for away in (8, 4) if tag.many else ():
        painter.drawPolygon(_polygon(one, away))
    pen = QPen(QColor(colours.ink if tag.here else colours.edge), 3 if tag.here else 1)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.setPen(pen)
    painter.drawPolygon(_polygon(one))
    if focused:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(colours.ink), 2.5))
        painter.drawRoundedRect(_box(one).adjusted(-_RING, -_RING, _RING, _RING), 4, 4)
    for line in one.lines:
        painter.setPen(QColor(colours.second_ink if line.second else colours.ink))
        _write(painter, line)
    if tag.held:
        draw_hold(painter, QRectF(*plate(one)), 13, tag.held == "here")


def _write(painter: QPainter, line: Line) -> None:
    font, width = _font(line.size, line.face, look()), _width(line, look())
    start = QPointF(line.x - width / 2, line.y)
    if line.face is Face.CODE_BOLD:
        draw_code(painter, start, line.words, font)
    else:
        painter.setFont(font)
        painter.drawText(start, line.words)


@lru_cache(maxsize=8192)
def _width(line: Line, worn: Look) -> float:
    font = _font(line.size, line.face, worn)
    if line.face is Face.CODE_BOLD:
        return code_width(line.words, font)
    return QFontMetricsF(font).horizontalAdvance(line.words)


@lru_cache(maxsize=32)
def _font(size: float, face: Face, worn: Look) -> QFont:
    """In units of the picture: the painter's scale makes it as large as the text is wanted."""
    font = worn.font(size, bold=face is not Face.WORDS, codes=face is Face.CODE_BOLD)
    font.setPixelSize(round(size))
    return font


def _box(one: SetTag) -> QRectF:
    return QRectF(one.x, one.y, one.width, one.height)


def _polygon(one: SetTag, away: float = 0) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in outline(one, CUT, away)])
