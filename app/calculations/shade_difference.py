"""How far two colours are apart, and how sure that is.

CIEDE2000 is that of ISO/CIE 11664-6 with all factors 1; CMC(2:1) that of ISO 105-J03. Both are
reckoned by the library coloraide, loaded at the first use. The error of a reading is common
practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from math import sqrt
from statistics import fmean

from app.calculations.shade import Colour, Viewing, must_be_comparable
from app.problems import BadInput

ERROR_OF_A_READING = 0.35  # standard deviation of one reading on a wound card, CIEDE2000
FEWEST_READINGS = 4
MOST_SPREAD = 0.8
MOST_BETWEEN_LAMPS = 0.7
MOST_DRIFT = 1.5
SMALL_STEP = 0.8

Lab = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Difference:
    """What another colour is to a standard: CIEDE2000, CMC(2:1), and twice the error of the first.

    CMC is not symmetric: `standard` is the one that is kept, `other` the one that is judged.
    """

    standard: Colour
    other: Colour
    ciede2000: float
    cmc: float
    uncertainty: float

    @property
    def at_worst(self) -> float:
        """The difference to decide on: a shown 0.5 may be 1.0."""
        return self.ciede2000 + self.uncertainty

    def __str__(self) -> str:
        return f"{self.ciede2000:.1f} ± {self.uncertainty:.1f}"


@dataclass(frozen=True, slots=True)
class Drift:
    """How far a new lot has gone from the standard, and from the lot before it."""

    from_standard: Difference
    from_last: Difference

    def is_hidden(self, most: float = MOST_DRIFT, small_step: float = SMALL_STEP) -> bool:
        """Whether the step from the last lot looks harmless though the standard is left behind."""
        return self.from_standard.ciede2000 > most and self.from_last.ciede2000 < small_step


def difference(
    standard: Colour, other: Colour, error_of_a_reading: float = ERROR_OF_A_READING
) -> Difference:
    """The difference of two colours that were looked at alike; anything else is refused."""
    must_be_comparable((standard.viewing, other.viewing))
    return Difference(
        standard,
        other,
        ciede2000(standard.lab, other.lab),
        cmc(standard.lab, other.lab),
        2 * error_of_a_reading * sqrt(1 / standard.readings + 1 / other.readings),
    )


def ciede2000(one: Lab, other: Lab, k_l: float = 1) -> float:
    """The CIEDE2000 difference of two L*a*b*; a `k_l` of 2 is met in textile work, not here."""
    from coloraide import Color  # a quarter of a second, so not before it is needed

    return Color("lab-d65", one).delta_e(Color("lab-d65", other), method="2000", kl=k_l)


def cmc(standard: Lab, other: Lab, lightness: float = 2, chroma: float = 1) -> float:
    """The CMC(l:c) difference of a colour from a standard; the other way round it may differ."""
    from coloraide import Color

    return Color("lab-d65", standard).delta_e(
        Color("lab-d65", other), method="cmc", l=lightness, c=chroma
    )


def apart(colours: Sequence[Colour]) -> list[list[float]]:
    """CIEDE2000 of every pair, by their places in the row given."""
    must_be_comparable(colour.viewing for colour in colours)
    table = [[0.0] * len(colours) for _ in colours]
    for one, other in combinations(range(len(colours)), 2):
        far = ciede2000(colours[one].lab, colours[other].lab)
        table[one][other] = table[other][one] = far
    return table


def mean_of(readings: Sequence[Lab], viewing: Viewing) -> Colour:
    """The colour of a card that was read at several places."""
    if not readings:
        raise BadInput("There are no readings of the card.", "Read it at 4 places or more.")
    spread = max((ciede2000(*pair) for pair in combinations(readings, 2)), default=None)
    lightness, a, b = (fmean(values) for values in zip(*readings, strict=True))
    return Colour(lightness, a, b, viewing, len(readings), spread)


def doubts(colour: Colour) -> tuple[str, ...]:
    """What makes a colour less sure than it looks, in sentences; it is kept all the same."""
    said = []
    if colour.readings < FEWEST_READINGS:
        few = "1 reading" if colour.readings == 1 else f"{colour.readings} readings"
        said.append(f"Only {few}: read the card at {FEWEST_READINGS} places.")
    if colour.spread is not None and colour.spread > MOST_SPREAD:
        said.append(f"The readings are {colour.spread:.1f} apart: is the card wound evenly?")
    return tuple(said)


def drift(standard: Colour, last: Colour, new: Colour) -> Drift:
    """A new lot against the standard, as it must be judged, and against the last lot."""
    return Drift(difference(standard, new), difference(last, new))


def differs_by_lamp(
    one: Difference, other: Difference, most: float = MOST_BETWEEN_LAMPS
) -> bool:
    """Whether two lots match under one lamp and not under another: daylight and the shop's."""
    if one.standard.viewing.lamp == other.standard.viewing.lamp:
        raise BadInput(
            f"Both differences are for {one.standard.viewing.lamp}; no lamps were compared.",
            "Read both lots under daylight and under the lamp of the shop.",
        )
    return abs(one.ciede2000 - other.ciede2000) > most
