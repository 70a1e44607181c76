"""The scale of the map: a*, b* and L* in the same length a unit, so that distances are true."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from PySide6.QtCore import QPointF, QRectF

from app.calculations.shade import Colour

_LEAST_SPAN = 3.0  # units from edge to edge, so that lots alike are seen to lie close together
_ROOM = 1.35
_STEPS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)


@dataclass(frozen=True, slots=True)
class Scale:
    """Where a colour lies in the plane and on the axis beside it; `px` is the length of a unit."""

    plane: QRectF
    axis: float
    middle: tuple[float, float, float]
    px: float

    @classmethod
    def of(cls, colours: Sequence[Colour], plane: QRectF, axis: float) -> "Scale":
        """One scale for all of these; the plane is a square and the axis as high."""
        ranges = [(min(values), max(values)) for values in zip(
            *(colour.lab for colour in colours), strict=True)]
        span = max(_LEAST_SPAN, *(high - low for low, high in ranges)) * _ROOM
        lightness, a, b = ((low + high) / 2 for low, high in ranges)
        return cls(plane, axis, (lightness, a, b), plane.width() / span)

    def point(self, colour: Colour) -> QPointF:
        """In the plane: a* to the right, b* upwards."""
        return QPointF(self.across(colour.a), self.up(colour.b, 2))

    def height(self, colour: Colour) -> QPointF:
        """On the axis of L*, light above dark."""
        return QPointF(self.axis, self.up(colour.lightness, 0))

    def across(self, a: float) -> float:
        """Where an a* lies from the left."""
        return self.plane.center().x() + (a - self.middle[1]) * self.px

    def up(self, value: float, which: int) -> float:
        """Where a b* (2) or an L* (0) lies from above."""
        return self.plane.center().y() - (value - self.middle[which]) * self.px

    def ticks(self, which: int, least: float) -> list[float]:
        """Round values of L* (0), a* (1) or b* (2), at least so many pixels apart."""
        step = next((one for one in _STEPS if one * self.px >= least), _STEPS[-1])
        half = self.plane.width() / 2 / self.px
        first = ceil((self.middle[which] - half) / step)
        last = floor((self.middle[which] + half) / step)
        return [round(n * step, 1) for n in range(first, last + 1)]
