"""A map of a colourway's lots: a* and b* as a plane, L* as an axis beside it, groups ringed."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QPaintEvent,
    QPen,
    QPolygonF,
)

from app.lookups.shade_map import ShadeMap
from app.window.look.look import Gap, Look, Size, look
from app.window.shades.label_places import places, spread
from app.window.shades.map_scale import Scale
from app.window.shades.marks import draw_mark, draw_standard
from app.window.shades.shade_words import group_words, map_words, named, number, step_words
from app.window.shades.spots import SpotPicture

MARK = 7.0
_SIDE, _CODES_WITHIN, _MOST_CODES = 440, 110.0, 8
_LEFT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
_MIDDLE = Qt.AlignmentFlag.AlignCenter
_RIGHT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight


@dataclass(frozen=True, slots=True)
class Plan:
    """Where all of it is drawn, for one size of the picture."""

    scale: Scale
    points: tuple[QPointF, ...]
    heights: tuple[QPointF, ...]
    labels: tuple[str, ...]
    boxes: tuple[QRectF, ...]
    axis_boxes: tuple[QRectF, ...]


class MapPicture(SpotPicture):
    """Every lot with its number, and its code where there is room; a list beside it has both."""

    def __init__(self) -> None:
        super().__init__()
        self.shades: ShadeMap | None = None
        self._planned: tuple[object, Plan | None] = None, None

    def show_map(self, shades: ShadeMap) -> None:
        """Show other lots, or the same in other groups."""
        self.shades, self._planned = shades, (None, None)
        groups = " ".join(group_words(shades, group) for group in shades.groups)
        lots = ". ".join(f"{named(shades, place)}: {step_words(shades, place)}"
                         for place in range(len(shades.lots)))
        self.setAccessibleName(
            f"map of {shades.colourway}, {shades.base}. {map_words(shades)} {groups} {lots}.")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        lots = len(self.shades.lots) if self.shades else 0
        room = 2 * (_line() + Gap.LINE) + Gap.PART
        high = round(_SIDE * (1 + 0.4 * (look().text - 1)))
        return QSize(_SIDE, max(high, round(lots * (_line() + 2) + room)))

    def minimumSizeHint(self) -> QSize:
        return QSize(round(_wide("−88.8") + _wide("88 26·88·W88") + 220), self.sizeHint().height())

    def spots(self) -> Sequence[tuple[int, QPointF]]:
        plan = self.plan()
        if plan is None:
            return ()
        return [*enumerate(plan.points), *enumerate(plan.heights),
                *enumerate(box.center() for box in plan.boxes),
                *enumerate(box.center() for box in plan.axis_boxes)]

    def plan(self) -> Plan | None:
        """Where things are at this size; none while there is nothing to show."""
        asked: tuple[object, Look] = self.size(), look()
        if self._planned[0] != asked:
            self._planned = asked, self._plan()
        return self._planned[1]

    def _plan(self) -> Plan | None:
        shades = self.shades
        if shades is None or not shades.lots:
            return None
        colours = [step.colour for step in shades.lots]
        left, line = _wide("−88.8") + Gap.SMALL, _line() + Gap.SMALL
        beside = _wide("−88.8") + _wide("88 26·88·W88") + Gap.BENCH + 2 * MARK
        side = min(self.width() - left - beside, self.height() - 2 * line - Gap.SMALL)
        plane = QRectF(left, line, max(side, 40.0), max(side, 40.0))
        kept = [shades.standard] if shades.standard else []
        scale = Scale.of([*colours, *kept], plane,
                         plane.right() + Gap.PART + _wide("−88.8") + 2 * MARK)
        points, heights = map(scale.point, colours), map(scale.height, colours)
        return self._labelled(scale, tuple(points), tuple(heights))

    def _labelled(
        self, scale: Scale, points: tuple[QPointF, ...], heights: tuple[QPointF, ...]
    ) -> Plan:
        assert self.shades is not None
        full = tuple(named(self.shades, place) for place in range(len(points)))
        short = tuple(str(place + 1) for place in range(len(points)))
        inner, far = scale.plane.adjusted(2, 2, -2, -2), scale.plane.width()
        boxes, labels = None, full
        if len(full) <= _MOST_CODES:
            boxes = _placed(points, full, inner, _CODES_WITHIN)
        if boxes is None:
            boxes, labels = _placed(points, short, inner, far), short
        at = spread([point.y() for point in heights], _line() + 2,
                    scale.plane.top() + _line() / 2, self.height() - _line() / 2)
        edge = scale.axis + 2 * MARK + Gap.PART
        axis_boxes = [QRectF(edge, y - _line() / 2, self.width() - edge, _line()) for y in at]
        return Plan(scale, points, heights, labels, tuple(boxes or ()), tuple(axis_boxes))

    def paintEvent(self, event: QPaintEvent) -> None:
        plan, shades = self.plan(), self.shades
        if plan is None or shades is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        _draw_ground(painter, plan.scale)
        for group in shades.groups:
            if len(group.lots) > 1:
                _draw_ring(painter, [plan.points[place] for place in group.lots])
        if shades.standard:
            draw_standard(painter, plan.scale.point(shades.standard), MARK)
            draw_standard(painter, plan.scale.height(shades.standard), MARK)
        _draw_leaders(painter, plan)
        for place, spots in enumerate(zip(plan.points, plan.heights, strict=True)):
            for spot in spots:
                draw_mark(painter, spot, MARK, shades.group_of(place),
                          filled=shades.left[place] > 0,
                          in_hand=place == self.at or shades.lots[place].lot == shades.lot)
        self._draw_labels(painter, plan)
        self.draw_focus(painter)

    def _draw_labels(self, painter: QPainter, plan: Plan) -> None:
        assert self.shades is not None
        painter.setPen(QColor(look().colours.ink))
        for place, box in enumerate(plan.axis_boxes):
            painter.setFont(look().font(Size.SMALL, bold=place == self.at, codes=True))
            painter.drawText(box, _LEFT, named(self.shades, place))
            for one in plan.boxes[place:place + 1]:
                painter.drawText(one, _MIDDLE, plan.labels[place])


def _draw_leaders(painter: QPainter, plan: Plan) -> None:
    """From each mark to its label; where a line runs under another label, that is kept clear."""
    painter.setPen(QPen(QColor(look().colours.edge), 1))
    for spots, boxes in ((plan.points, plan.boxes), (plan.heights, plan.axis_boxes)):
        for spot, box in zip(spots, boxes, strict=False):
            painter.drawLine(spot, _nearest(box, spot))
    for box in plan.boxes:
        painter.fillRect(box.adjusted(1, 1, -1, -1), QColor(look().colours.in_hand))


def _placed(
    points: Sequence[QPointF], labels: Sequence[str], within: QRectF, far: float
) -> list[QRectF] | None:
    sizes = [QSizeF(_wide(label) + 4, _line()) for label in labels]
    return places(points, sizes, within, MARK * 1.8, far)


def _draw_ground(painter: QPainter, scale: Scale) -> None:
    """The plane with its ticks, and the axis of L*."""
    colours, plane, line = look().colours, scale.plane, _line()
    painter.fillRect(plane, QColor(colours.in_hand))
    painter.setFont(look().font(Size.SMALL))
    ticks = [(1, value, scale.across(value)) for value in scale.ticks(1, _wide("−88.8") * 1.5)]
    ticks += [(which, value, scale.up(value, which)) for which in (2, 0)
              for value in scale.ticks(which, line * 1.5)]
    for which, value, at in ticks:
        painter.setPen(QPen(QColor(colours.line), 1))
        if which == 1:
            painter.drawLine(QPointF(at, plane.top()), QPointF(at, plane.bottom()))
            box, side = QRectF(at - 60, plane.bottom(), 120, line + Gap.HAIR), _MIDDLE
        elif which == 2:
            painter.drawLine(QPointF(plane.left(), at), QPointF(plane.right(), at))
            box, side = QRectF(0, at - line / 2, plane.left() - Gap.HAIR, line), _RIGHT
        else:
            box, side = QRectF(scale.axis - 92 - 2 * MARK, at - line / 2, 90, line), _RIGHT
        painter.setPen(QColor(colours.second_ink))
        painter.drawText(box, side, number(value))
    painter.setPen(QPen(QColor(colours.edge), 1))
    painter.drawRect(plane)
    painter.drawLine(QPointF(scale.axis, plane.top()), QPointF(scale.axis, plane.bottom()))
    _draw_names(painter, scale)


def _draw_names(painter: QPainter, scale: Scale) -> None:
    """What lies in which direction."""
    plane, high = scale.plane, scale.plane.top() - Gap.HAIR
    painter.setPen(QColor(look().colours.ink))
    painter.setFont(look().font(Size.SMALL, bold=True))
    painter.drawText(QRectF(0, 0, plane.right(), high), _LEFT, "b* up: yellow")
    painter.drawText(QRectF(0, 0, plane.right(), high), _RIGHT, "a* right: red")
    width = _wide("L* up") + 20
    painter.drawText(QRectF(scale.axis - width / 2, 0, width, high), _MIDDLE, "L* up")


def _draw_ring(painter: QPainter, points: Sequence[QPointF]) -> None:
    """One line around all lots of a group."""
    body = QPainterPath()
    body.addPolygon(_hull(points))
    body.closeSubpath()
    stroker = QPainterPathStroker()
    stroker.setWidth(MARK * 4.6)
    stroker.setCapStyle(Qt.PenCapStyle.RoundCap)
    stroker.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    around = stroker.createStroke(body).united(body).simplified()
    painter.setPen(QPen(QColor(look().colours.edge), 1.5, Qt.PenStyle.DashLine))
    painter.setBrush(QColor(look().colours.foot))
    painter.drawPath(around)


def _hull(points: Sequence[QPointF]) -> QPolygonF:
    """The corners that hold all the others, in turn."""
    ordered = sorted({(point.x(), point.y()) for point in points})
    if len(ordered) < 3:
        return QPolygonF([QPointF(*one) for one in ordered])
    halves = []
    for way in (ordered, ordered[::-1]):
        half: list[tuple[float, float]] = []
        for one in way:
            while len(half) > 1 and _turn(half[-2], half[-1], one) <= 0:
                half.pop()
            half.append(one)
        halves += half[:-1]
    return QPolygonF([QPointF(*one) for one in halves])


def _turn(
    one: tuple[float, float], two: tuple[float, float], three: tuple[float, float]
) -> float:
    return ((two[0] - one[0]) * (three[1] - one[1]) - (two[1] - one[1]) * (three[0] - one[0]))


def _nearest(box: QRectF, spot: QPointF) -> QPointF:
    return QPointF(min(max(spot.x(), box.left()), box.right()),
                   min(max(spot.y(), box.top()), box.bottom()))


def _line() -> float:
    return round(QFontMetricsF(look().font(Size.SMALL, codes=True)).height())


def _wide(text: str) -> float:
    return QFontMetricsF(look().font(Size.SMALL, bold=True, codes=True)).horizontalAdvance(text)
