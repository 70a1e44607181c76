"""How a colourway drifts: each lot's distance from the standard and from the last, with limits."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen

from app.calculations.shade_difference import MOST_DRIFT, SMALL_STEP, Difference
from app.lookups.shade_map import ShadeMap
from app.window.look.look import Gap, Size, look
from app.window.shades.label_places import spread
from app.window.shades.marks import draw_mark
from app.window.shades.shade_words import named
from app.window.shades.spots import SpotPicture

STANDARD, LAST = 0, 3
"""Shapes: round is from the standard, a hollow diamond from the last lot."""
_MARK, _HIGH = 6.0, 220
LIMITS = (MOST_DRIFT, SMALL_STEP)
_LEFT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
_RIGHT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
_MIDDLE = Qt.AlignmentFlag.AlignCenter


class DriftPicture(SpotPicture):
    """Lots from left to right as they were dyed, by their numbers in the list."""

    def __init__(self) -> None:
        super().__init__()
        self.shades: ShadeMap | None = None

    def show_map(self, shades: ShadeMap) -> None:
        """Show other lots."""
        self.shades = shades
        said = [f"{named(shades, place)}: {_said(step.from_standard, 'the standard')}, "
                f"{_said(step.from_last, 'the last')}" for place, step in enumerate(shades.lots)]
        self.setAccessibleName(
            f"drift of {shades.colourway}, {shades.base}. Limits: from the standard {MOST_DRIFT}, "
            f"a small step {SMALL_STEP}. {'. '.join(said)}.")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(480, _HIGH + round(3 * _line()))

    def minimumSizeHint(self) -> QSize:
        return QSize(300, self.sizeHint().height())

    def spots(self) -> Sequence[tuple[int, QPointF]]:
        shades = self.shades
        if shades is None:
            return ()
        return [(place, self._at(place, one.ciede2000)) for place, step in enumerate(shades.lots)
                for one in (step.from_standard, step.from_last) if one]

    def paintEvent(self, event: QPaintEvent) -> None:
        shades = self.shades
        if shades is None or not shades.lots:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_ground(painter)
        for from_last in (True, False):
            self._draw_line(painter, from_last=from_last)
        painter.setPen(QColor(look().colours.ink))
        for place in range(len(shades.lots)):
            painter.setFont(look().font(Size.SMALL, bold=place == self.at))
            x = self._at(place, 0).x()
            painter.drawText(QRectF(x - 30, self._bottom(), 60, _line() + Gap.HAIR), _MIDDLE,
                             str(place + 1))
        self.draw_focus(painter)

    def _draw_ground(self, painter: QPainter) -> None:
        colours = look().colours
        left, right, bottom = self._left(), self._right(), self._bottom()
        painter.fillRect(QRectF(left, 0, right - left, bottom), QColor(colours.in_hand))
        painter.setFont(look().font(Size.SMALL))
        for value in range(int(self._most()) + 1):
            y = self._at(0, value).y()
            painter.setPen(QPen(QColor(colours.line), 1))
            painter.drawLine(QPointF(left, y), QPointF(right, y))
            painter.setPen(QColor(colours.second_ink))
            painter.drawText(QRectF(0, y - _line() / 2, left - Gap.HAIR, _line()), _RIGHT,
                             str(value))
        painter.setPen(QPen(QColor(colours.edge), 1))
        painter.drawRect(QRectF(left, 0, right - left, bottom))
        self._draw_limits(painter)

    def _draw_limits(self, painter: QPainter) -> None:
        """Two lines with their numbers in the margin, clear of each other."""
        left, right = self._left(), self._right()
        heights = [self._at(0, limit).y() for limit in LIMITS]
        beside = spread(heights, _line(), _line() / 2, self._bottom())
        painter.setFont(look().font(Size.SMALL, bold=True))
        for limit, y, at, dash in zip(LIMITS, heights, beside, (
                Qt.PenStyle.SolidLine, Qt.PenStyle.DashLine), strict=True):
            painter.setPen(QPen(QColor(look().colours.ink), 1.5, dash))
            painter.drawLine(QPointF(left, y), QPointF(right, y))
            painter.drawText(QRectF(right + Gap.HAIR, at - _line() / 2, 200, _line()), _LEFT,
                             f"{limit:g}")

    def _draw_line(self, painter: QPainter, *, from_last: bool) -> None:
        assert self.shades is not None
        ink = QColor(look().colours.ink if not from_last else look().colours.second_ink)
        before: QPointF | None = None
        for place, step in enumerate(self.shades.lots):
            apart = step.from_last if from_last else step.from_standard
            if apart is None:
                before = None
                continue
            spot = self._at(place, apart.ciede2000)
            painter.setPen(QPen(ink, 1, Qt.PenStyle.DotLine if from_last else
                                Qt.PenStyle.SolidLine))
            if before is not None:
                painter.drawLine(before, spot)
            if not from_last:
                painter.drawLine(self._at(place, max(apart.ciede2000 - apart.uncertainty, 0)),
                                 self._at(place, apart.at_worst))
            draw_mark(painter, spot, _MARK, LAST if from_last else STANDARD,
                      filled=not from_last, in_hand=place == self.at)
            before = spot

    def _most(self) -> float:
        assert self.shades is not None
        found = [one.at_worst for step in self.shades.lots
                 for one in (step.from_standard, step.from_last) if one]
        return max(2.2, *found, 0.0) * 1.08

    def _at(self, place: int, value: float) -> QPointF:
        assert self.shades is not None
        lots = len(self.shades.lots)
        wide = (self._right() - self._left()) / lots
        return QPointF(self._left() + wide * (place + 0.5),
                       self._bottom() * (1 - value / self._most()))

    def _left(self) -> float:
        return _wide("88") + Gap.SMALL

    def _right(self) -> float:
        return self.width() - _wide("8.8") - Gap.SMALL

    def _bottom(self) -> float:
        return self.height() - _line() - Gap.HAIR


def _said(apart: Difference | None, what: str) -> str:
    return f"{apart} from {what}" if apart else f"not held against {what}"


def _line() -> float:
    return round(QFontMetricsF(look().font(Size.SMALL)).height())


def _wide(text: str) -> float:
    return QFontMetricsF(look().font(Size.SMALL)).horizontalAdvance(text)
