"""The readings nearest to a colour, out of very many at once.

The same CIEDE2000 as `shade_difference.ciede2000`, reckoned for a whole table by numpy. This
module brings numpy with it: import it where it is used, not at start-up.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import hypot, inf, sqrt

import numpy as np
from numpy.typing import NDArray

from app.calculations.given import more_than_nothing
from app.calculations.shade import MOST_CHROMA, Colour, Viewing, must_be_comparable
from app.calculations.shade_difference import Lab
from app.problems import BadInput

Column = NDArray[np.float64]
Places = NDArray[np.intp]

ANY_USE_WITHIN = 4.0  # beyond it is another colour
TRIED_FOR_EACH = 10  # of the readings wanted; more costs time, fewer leaves more to reckon
_25_TO_7 = 25.0**7


@dataclass(frozen=True, slots=True, eq=False)
class Shades:
    """Many colours looked at alike, as three columns: L*, a*, b*."""

    lightness: Column
    a: Column
    b: Column
    viewing: Viewing

    def __post_init__(self) -> None:
        right = (self.lightness >= 0) & (self.lightness <= 100)
        right &= (abs(self.a) <= MOST_CHROMA) & (abs(self.b) <= MOST_CHROMA)
        wrong = np.flatnonzero(~right)
        if len(wrong):
            raise BadInput(
                f"Reading {wrong[0] + 1} cannot be a colour of yarn; nothing was compared.",
                "Read that card again.",
            )

    def at(self, places: Places) -> tuple[Column, Column, Column]:
        """L*, a* and b* at some of the places."""
        return self.lightness[places], self.a[places], self.b[places]


@dataclass(frozen=True, slots=True)
class Near:
    """A reading near the colour asked for: its place in the table, and its CIEDE2000."""

    place: int
    ciede2000: float


def shades(labs: Iterable[Lab], viewing: Viewing) -> Shades:
    """A table of readings that were all looked at in this way."""
    lightness, a, b = np.array(list(labs), dtype=np.float64).reshape(-1, 3).T.copy()
    return Shades(lightness, a, b, viewing)


def nearest(
    colour: Colour, among: Shades, within: float = ANY_USE_WITHIN, most: int | None = None
) -> tuple[Near, ...]:
    """Those not further off than `within`, nearest first, like ones in the order of the table.

    An infinite `within` ranks the whole table; `most` of them are enough where it is given.
    """
    if most is not None:
        more_than_nothing("number of readings wanted", most)
    must_be_comparable((colour.viewing, among.viewing))
    places = _may_be_within(colour, among, _no_need_beyond(colour, among, within, most))
    far = differences(colour, *among.at(places))
    order = np.argsort(far, kind="stable")
    order = order[: np.searchsorted(far[order], within, side="right")][:most]
    found = zip(places[order].tolist(), far[order].tolist(), strict=True)
    return tuple(Near(place, difference) for place, difference in found)


def differences(colour: Colour, lightness: Column, a: Column, b: Column) -> Column:
    """CIEDE2000 of every row from one colour (ISO/CIE 11664-6, all factors 1)."""
    mean_chroma = (np.hypot(a, b) + colour.chroma) / 2
    stretch = 1.5 - 0.5 * _strong(mean_chroma)
    a_here, a_there = stretch * colour.a, stretch * a
    chroma_here, chroma_there = np.hypot(a_here, colour.b), np.hypot(a_there, b)
    turn, hue = _turn_and_hue(
        np.degrees(np.arctan2(colour.b, a_here)) % 360, np.degrees(np.arctan2(b, a_there)) % 360,
        chroma_here * chroma_there == 0,
    )
    across = 2 * np.sqrt(chroma_here * chroma_there) * np.sin(np.radians(turn / 2))
    from_middle = ((colour.lightness + lightness) / 2 - 50) ** 2
    chroma = (chroma_here + chroma_there) / 2
    lighter = (lightness - colour.lightness) / (1 + 0.015 * from_middle / np.sqrt(20 + from_middle))
    brighter = (chroma_there - chroma_here) / (1 + 0.045 * chroma)
    turned = across / (1 + 0.015 * chroma * _hue_weight(hue))
    in_blue = np.sin(np.radians(60 * np.exp(-(((hue - 275) / 25) ** 2)))) * 2 * _strong(chroma)
    squared = lighter**2 + brighter**2 + turned**2 - in_blue * brighter * turned
    return np.asarray(np.sqrt(np.maximum(squared, 0)))


def _strong(chroma: Column) -> Column:
    """From 0 for greys to 1 for strong colours; the power of 7 without a slow `pow`."""
    squared = chroma * chroma
    seventh = squared * squared * squared * chroma
    return np.asarray(np.sqrt(seventh / (seventh + _25_TO_7)))


def _turn_and_hue(here: Column, there: Column, grey: NDArray[np.bool_]) -> tuple[Column, Column]:
    """From one hue to the other the shorter way round, and the hue halfway; a grey has none."""
    turn, both = there - here, here + there
    long_way = np.abs(turn) > 180
    turn = np.where(long_way, turn - np.copysign(360, turn), turn)
    halfway = (both + np.where(long_way, np.where(both < 360, 360, -360), 0)) / 2
    return np.where(grey, 0, turn), np.where(grey, both, halfway)


def _hue_weight(hue: Column) -> Column:
    angle = np.radians(hue)
    return np.asarray(
        1
        - 0.17 * np.cos(angle - np.radians(30))
        + 0.24 * np.cos(2 * angle)
        + 0.32 * np.cos(3 * angle + np.radians(6))
        - 0.20 * np.cos(4 * angle - np.radians(63))
    )


def _no_need_beyond(colour: Colour, among: Shades, within: float, most: int | None) -> float:
    """How far to look: as far as the last of those wanted among some that are plainly near."""
    some_are = TRIED_FOR_EACH * (most or 0)
    if most is None or some_are >= len(among.lightness):
        return within
    plain = (
        (among.lightness - colour.lightness) ** 2
        + (among.a - colour.a) ** 2
        + (among.b - colour.b) ** 2
    )
    some = np.argpartition(plain, some_are)[:some_are]
    return min(within, float(np.sort(differences(colour, *among.at(some)))[most - 1]))


def box(colour: Colour, within: float) -> tuple[float, float]:
    """How far lightness, and a* or b*, may lie off in a colour that is near enough.

    The weight of lightness is at most 1.75. In the blues chroma and hue partly cancel, and what
    is left of them is at least 1 - sin 60° of the sum of their squares; their weights are
    at most 1 + 0.045 C', with C' at most 1.5 C* of the one colour and half the way to the other.
    """
    within += 1e-9  # what floating point may lose
    reach = within / sqrt(1 - sqrt(3) / 2)
    widening = 1 - 0.0225 * reach
    sideways = reach * (1 + 0.0675 * hypot(colour.a, colour.b)) / widening if widening > 0 else inf
    return 1.75 * within, sideways


def _may_be_within(colour: Colour, among: Shades, within: float) -> Places:
    """The places that a box around the colour leaves; none that is near enough falls outside."""
    lighter, sideways = box(colour, within)
    places = np.flatnonzero(abs(among.lightness - colour.lightness) <= lighter)
    for column, middle in ((among.a, colour.a), (among.b, colour.b)):
        places = places[abs(column[places] - middle) <= sideways]
    return places
