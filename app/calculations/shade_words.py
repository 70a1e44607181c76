"""What to say to the customer about two lots side by side. Common practice, no source."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from app.calculations.shade_difference import Difference
from app.problems import BadInput


class Word(StrEnum):
    """What may be done with two lots in one garment, from the best to the worst."""

    SAME = "looks the same"
    TWO_ROWS = "alternate two rows for 6–8 cm"
    THROUGHOUT = "alternate throughout"
    SECOND = "only as a second colour"
    OTHER = "other colour"


@dataclass(frozen=True, slots=True)
class Bands:
    """Up to which CIEDE2000 each word holds; the studio may set them otherwise.

    The first is tighter for greys, beiges and pales (C* below `grey_below`), where the eye is
    sharp, and wider for each zone of a multi-coloured yarn.
    """

    same: float = 0.8
    two_rows: float = 1.5
    throughout: float = 2.5
    second: float = 4.0
    same_in_greys: float = 0.6
    grey_below: float = 10.0
    same_by_zone: float = 1.5

    def __post_init__(self) -> None:
        rising = [self.same, self.two_rows, self.throughout, self.second]
        first = (self.same_in_greys, self.same, self.same_by_zone)
        if not (all(low < high for low, high in pairwise(rising)) and min(first) > 0
                and max(first) <= self.throughout and self.grey_below >= 0):
            raise BadInput(
                "The limits of the shade words do not rise from one to the next.",
                "Set them so that each is above the one before; the old ones were kept.",
            )

    def word(self, ciede2000: float, same: float | None = None) -> Word:
        """The word for a difference; `same` where the first limit is another."""
        limits = (self.same if same is None else same, self.two_rows, self.throughout, self.second)
        words = (Word.SAME, Word.TWO_ROWS, Word.THROUGHOUT, Word.SECOND)
        fits = (word for word, most in zip(words, limits, strict=True) if ciede2000 <= most)
        return next(fits, Word.OTHER)

    def same_for(self, difference: Difference) -> float:
        """The first limit for these two colours: that of greys if either is nearly grey."""
        least = min(difference.standard.chroma, difference.other.chroma)
        return self.same_in_greys if least < self.grey_below else self.same


USUAL = Bands()


@dataclass(frozen=True, slots=True)
class Judged:
    """A difference in words: as it was read, and as it may be with the error of the readings.

    Decide on `at_worst`.
    """

    shown: Word
    at_worst: Word


@dataclass(frozen=True, slots=True)
class JudgedByZone:
    """A multi-coloured yarn, judged by its worst zone. Proportions and repeat are not in it."""

    zone: str
    judged: Judged


def judge(difference: Difference, bands: Bands = USUAL) -> Judged:
    """The word for two lots of one colour over large plain areas."""
    return _judged(difference, bands, bands.same_for(difference))


def judge_by_zone(differences: Mapping[str, Difference], bands: Bands = USUAL) -> JudgedByZone:
    """The word for two lots of a multi-coloured yarn, zone held against zone."""
    if not differences:
        raise BadInput("No zone was read.", "Read each zone of both lots.")
    zone = max(differences, key=lambda name: differences[name].at_worst)
    return JudgedByZone(zone, _judged(differences[zone], bands, bands.same_by_zone))


def _judged(difference: Difference, bands: Bands, same: float) -> Judged:
    return Judged(bands.word(difference.ciede2000, same), bands.word(difference.at_worst, same))
