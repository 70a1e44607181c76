"""Where labels go so that none lies on another or on a mark."""

from collections.abc import Sequence
from math import cos, pi, sin

from PySide6.QtCore import QPointF, QRectF, QSizeF

_WAYS, _STEP = 16, 6.0


def places(
    points: Sequence[QPointF], sizes: Sequence[QSizeF], within: QRectF, mark: float, far: float
) -> list[QRectF] | None:
    """A box for every label, as near to its point as it can lie, at most so far from it.

    None where there is no room for all of them. `mark` is how far a mark reaches to each side.
    """
    marks = [QRectF(point.x() - mark, point.y() - mark, 2 * mark, 2 * mark) for point in points]
    placed: list[QRectF] = []
    for point, size in zip(points, sizes, strict=True):
        box = _free(point, size, within, [*marks, *placed], mark, far)
        if box is None:
            return None
        placed.append(box)
    return placed


def spread(wanted: Sequence[float], least: float, low: float, high: float) -> list[float]:
    """Heights of labels at an axis, at least so far from each other, in their order.

    Halfway between pushing them all down from the first and all up from the last, and then away
    from both ends. Where there is no room for them all they go beyond the low end.
    """
    order = sorted(range(len(wanted)), key=lambda n: wanted[n])
    in_order = [wanted[n] for n in order]
    halfway = [(one + other) / 2 for one, other in zip(
        _down(in_order, least), _up(in_order, least), strict=True)]
    at = _up([min(one, high) for one in _down([max(one, low) for one in halfway], least)], least)
    found = dict(zip(order, at, strict=True))
    return [found[n] for n in range(len(wanted))]


def _down(heights: Sequence[float], least: float) -> list[float]:
    """Each at least so far below the one before."""
    at: list[float] = []
    for height in heights:
        at.append(max(height, at[-1] + least) if at else height)
    return at


def _up(heights: Sequence[float], least: float) -> list[float]:
    """Each at least so far above the one after."""
    return [-one for one in reversed(_down([-one for one in reversed(heights)], least))]


def _free(
    point: QPointF, size: QSizeF, within: QRectF, taken: Sequence[QRectF], mark: float, far: float
) -> QRectF | None:
    reach = mark
    while reach <= far:
        for way in range(_WAYS):
            box = _beside(point, size, reach, 2 * pi * way / _WAYS)
            if within.contains(box) and not any(box.intersects(other) for other in taken):
                return box
        reach += _STEP
    return None


def _beside(point: QPointF, size: QSizeF, reach: float, turned: float) -> QRectF:
    """The label on that side of the point, its near edge so far away."""
    across, down = cos(turned), -sin(turned)
    centre = point + QPointF(across * (reach + size.width() / 2 + 2),
                             down * (reach + size.height() / 2 + 2))
    return QRectF(centre.x() - size.width() / 2, centre.y() - size.height() / 2,
                  size.width(), size.height())
