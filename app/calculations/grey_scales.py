"""The grey scales: change in colour and staining, by eye and by instrument.

Nominal steps of ISO 105-A02:1993 (change; read) and A03:1993 (staining; from memory), in CIELAB
units. Ratings reckoned as in ISO 105-A05 (change; the formula read, the table of steps from
memory) and A04 (staining; the rating formula from memory).
"""

from dataclasses import dataclass
from enum import StrEnum
from math import atan2, cos, degrees, dist, exp, hypot, log, log2, radians, sin, sqrt

from app.calculations.shade import Colour, must_be_comparable


class Step(StrEnum):
    """A step of a grey scale: 5 is no change at all, 1 the greatest."""

    FIVE = "5"
    FOUR_FIVE = "4-5"
    FOUR = "4"
    THREE_FOUR = "3-4"
    THREE = "3"
    TWO_THREE = "2-3"
    TWO = "2"
    ONE_TWO = "1-2"
    ONE = "1"


def _steps(*values: float) -> dict[Step, float]:
    return dict(zip(Step, values, strict=True))


CHANGE = _steps(0.0, 0.8, 1.7, 2.5, 3.4, 4.8, 6.8, 9.6, 13.6)
CHANGE_TOLERANCE = _steps(0.2, 0.2, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7, 1.0)
STAINING = _steps(0.0, 2.2, 4.3, 6.0, 8.5, 12.0, 16.9, 24.0, 34.1)
STAINING_TOLERANCE = _steps(0.2, 0.3, 0.3, 0.4, 0.5, 0.7, 1.0, 1.5, 2.0)

_CHANGE_FROM = _steps(0.0, 0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60)
_STAINING_RATED_FROM = _steps(4.75, 4.25, 3.75, 3.25, 2.75, 2.25, 1.75, 1.25, 1.0)


@dataclass(frozen=True, slots=True)
class Rated:
    """An instrument's rating: the difference the standard reckons by, the rating, its step."""

    difference: float
    rating: float
    step: Step


def change(standard: Colour, specimen: Colour) -> Rated:
    """The change in colour of a specimen, as ISO 105-A05 rates it."""
    must_be_comparable((standard.viewing, specimen.viewing))
    delta = change_difference(standard, specimen)
    return Rated(delta, change_rating(delta), change_step(delta))


def staining(before: Colour, after: Colour) -> Rated:
    """The staining of an undyed cloth, as ISO 105-A04 rates it."""
    must_be_comparable((before.viewing, after.viewing))
    plain, lighter = dist(before.lab, after.lab), after.lightness - before.lightness
    delta = plain - 0.4 * sqrt(max(plain**2 - lighter**2, 0))
    rating = staining_rating(delta)
    return Rated(delta, rating, staining_step(rating))


def change_difference(standard: Colour, specimen: Colour) -> float:
    """The ΔE_F of ISO 105-A05: chroma and hue count less the further the colour is from grey."""
    chroma, hue = (standard.chroma + specimen.chroma) / 2, _mean_hue(standard, specimen)
    from_blue = abs(hue - 280)
    from_blue = min(from_blue, 360 - from_blue)
    brighter, turned = specimen.chroma - standard.chroma, _turned(standard, specimen)
    share = brighter * chroma * exp(-((from_blue / 30) ** 2)) / 100
    return hypot(
        specimen.lightness - standard.lightness,
        (brighter - share) / (1 + (20 * chroma / 1000) ** 2),
        (turned - share) / (1 + (10 * chroma / 1000) ** 2),
    )


def change_rating(delta: float) -> float:
    """The rating, not rounded to a step, for a ΔE_F."""
    return 5 - delta / 1.7 if delta <= 3.4 else max(5 - log2(delta / 0.85), 1)


def change_step(delta: float) -> Step:
    """The step for a ΔE_F; each begins at its limit."""
    return [step for step in Step if delta >= _CHANGE_FROM[step]][-1]


def staining_rating(delta: float) -> float:
    """The rating, not rounded to a step, for a ΔE_GS."""
    slight = 5 - 0.23 * delta
    return slight if slight > 4 else max(6.1 - 1.45 * log(delta), 1)


def staining_step(rating: float) -> Step:
    """The step that a staining rating falls to, read to two decimals."""
    read = round(rating, 2)
    return next(step for step in Step if read >= _STAINING_RATED_FROM[step])


def _hue(colour: Colour) -> float:
    return degrees(atan2(colour.b, colour.a)) % 360


def _turned(standard: Colour, specimen: Colour) -> float:
    """The hue difference in CIELAB units, above 0 when turned from red towards yellow."""
    half = radians(_hue(specimen) - _hue(standard)) / 2
    return 2 * sqrt(standard.chroma * specimen.chroma) * sin(half) * (1 if cos(half) >= 0 else -1)


def _mean_hue(standard: Colour, specimen: Colour) -> float:
    """Halfway by the shorter way round."""
    one, other = _hue(standard), _hue(specimen)
    return ((one + other) / 2 + (180 if abs(one - other) > 180 else 0)) % 360
