"""The yarn of the trail: two plies laid round each other, and what their state tells.

Whole is known, opened into its plies is partly, broken is one of a pool, a gap is not known.
"""

from collections.abc import Iterator, Sequence
from enum import StrEnum
from math import cos, pi, radians, sin

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF

from app.window.look.look import Size, look

HALF_WAVE = 15.0  # from one crossing of the plies to the next
SWING = 4.2  # from the middle of the yarn to the middle of a ply
PLY, EDGE = 6.6, 1.3  # thickness of a ply and of the line round it
YARN = 2 * SWING + PLY  # thickness of the yarn
_STEPS = 8  # points a crossing
_STUB = 1.5  # crossings left at each end where the yarn is open or missing


class Certainty(StrEnum):
    """How surely two stations of the trail belong together."""

    KNOWN = "known"
    PARTLY = "partly"
    POOL = "one of a pool"
    NOT_KNOWN = "not known"


def straight(start: QPointF, end: QPointF) -> QPainterPath:
    """The way of a yarn that hangs level."""
    path = QPainterPath(start)
    path.lineTo(end)
    return path


def draw_yarn(painter: QPainter, way: QPainterPath, certainty: Certainty = Certainty.KNOWN) -> None:
    """Lay the yarn along its way."""
    crossings = max(4, round(way.length() / HALF_WAVE))
    for start, end in _runs(certainty, crossings):
        _draw_run(painter, way, crossings, start, end)
    if certainty is Certainty.PARTLY:
        _draw_opened(painter, way, crossings)
    elif certainty is Certainty.NOT_KNOWN:
        _draw_question(painter, way.pointAtPercent(0.5))


def _runs(certainty: Certainty, crossings: int) -> Iterator[tuple[float, float]]:
    """Where the yarn is whole, from and to, counted in crossings."""
    if certainty is Certainty.KNOWN:
        yield 0, crossings
    elif certainty is Certainty.POOL:
        yield 0, _STUB
        for start in range(2, crossings - 3, 3):
            yield start + 0.5, start + 2.5
        yield crossings - _STUB, crossings
    else:
        yield 0, _STUB
        yield crossings - _STUB, crossings


def _draw_run(
    painter: QPainter, way: QPainterPath, crossings: int, start: float, end: float
) -> None:
    """One whole length of yarn, crossing by crossing, the plies going over in turn."""
    for broken in (start, end):
        if 0 < broken < crossings:
            for side in (-1, 1):
                _draw_end(painter, _place(way, crossings, broken, side))
    under: list[list[QPointF]] = []
    over: list[list[QPointF]] = []
    for number in range(round(start + 0.01), round(end - 0.01) + 1):
        first, last = max(start, number - 0.5), min(end, number + 0.5)
        turns = _turns(first, last, start, end)
        for side in (-1, 1):
            goes_over = (side == 1) == bool(number % 2)
            plies = over if goes_over else under
            plies.append([_place(way, crossings, turn, side) for turn in turns])
    _draw_plies(painter, under)
    _draw_plies(painter, over)


def _turns(first: float, last: float, start: float, end: float) -> list[float]:
    """Evenly spaced, with two steps to spare at both sides, but not past the yarn's own ends."""
    steps = round((last - first) * _STEPS)
    turns = [first + n / _STEPS for n in range(-2, steps + 3)]
    return [min(max(turn, start), end) for turn in turns]


def _place(
    way: QPainterPath, crossings: int, turn: float, side: float, swing: float | None = None
) -> QPointF:
    """Where a ply is after so many crossings."""
    at = min(max(turn / crossings, 0.0), 1.0)
    angle = radians(way.angleAtPercent(at))
    away = side * (SWING * sin(pi * turn) if swing is None else swing)
    return way.pointAtPercent(at) + QPointF(sin(angle) * away, cos(angle) * away)


def _draw_opened(painter: QPainter, way: QPainterPath, crossings: int) -> None:
    """The plies lying apart between two twisted ends."""
    first, last = _STUB, crossings - _STUB
    turns = _turns(first, last, 0, crossings)
    swings = [
        SWING + 2 * sin(pi * (turn - first) / (last - first))
        if first < turn < last
        else SWING * abs(sin(pi * turn))
        for turn in turns
    ]
    _draw_plies(
        painter,
        [
            [
                _place(way, crossings, turn, side, swing)
                for turn, swing in zip(turns, swings, strict=True)
            ]
            for side in (-1, 1)
        ],
    )


def _draw_plies(painter: QPainter, plies: Sequence[Sequence[QPointF]]) -> None:
    """Plies in one go; their white reaches a point further than their lines: no seam shows."""
    colours = look().colours
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width, short in ((colours.ink, PLY, 1), (colours.in_hand, PLY - 2 * EDGE, 0)):
        path = QPainterPath()
        for ply in plies:
            path.addPolygon(QPolygonF(ply[short : len(ply) - short]))
        pen = QPen(QColor(colour), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        painter.setPen(pen)
        painter.drawPath(path)


def _draw_end(painter: QPainter, place: QPointF) -> None:
    """The rounded end of a ply where the yarn is broken."""
    colours = look().colours
    painter.setPen(QPen(QColor(colours.ink), EDGE))
    painter.setBrush(QColor(colours.in_hand))
    painter.drawEllipse(place, (PLY - EDGE) / 2, (PLY - EDGE) / 2)


def _draw_question(painter: QPainter, middle: QPointF) -> None:
    painter.setPen(QColor(look().colours.ink))
    painter.setFont(look().font(Size.LEAD, bold=True))
    metrics = painter.fontMetrics()
    half = metrics.horizontalAdvance("?") / 2
    painter.drawText(middle + QPointF(-half, metrics.capHeight() / 2), "?")
