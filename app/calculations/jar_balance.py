"""The jars against their book: the pair of gaps that names a wrong jar.

Powder taken from one jar and booked on another leaves the first too light and the second too heavy
by the same amount. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

WITHIN_G = Decimal("0.3")
"""No larger a gap is more than weighing, and no two that differ by more are a pair."""


@dataclass(frozen=True, slots=True)
class JarGap:
    """A jar on the balance: negative, it is lighter than its book says."""

    jar: str
    gap_g: Decimal


@dataclass(frozen=True, slots=True)
class Use:
    """One weigh line: from which jar it is booked, and for which lot."""

    jar: str
    lot: str
    g: Decimal


@dataclass(frozen=True, slots=True)
class WrongJar:
    """Powder came from one jar and stands in the book of another.

    `uses` are the booked uses of about that size, the nearest first; none: the pair of gaps stands
    alone.
    """

    taken_from: str
    booked_on: str
    about_g: Decimal
    uses: tuple[Use, ...]


def wrong_jars(gaps: Sequence[JarGap], uses: Sequence[Use]) -> tuple[WrongJar, ...]:
    """Every pair of opposite gaps, the closest first.

    More than one pair for a jar means that it is not decided.
    """
    pairs = [
        (light, heavy)
        for light in gaps
        for heavy in gaps
        if light.gap_g < -WITHIN_G
        and heavy.gap_g > WITHIN_G
        and abs(light.gap_g + heavy.gap_g) <= WITHIN_G
    ]
    pairs.sort(key=lambda pair: abs(pair[0].gap_g + pair[1].gap_g))
    return tuple(_wrong_jar(light, heavy, uses) for light, heavy in pairs)


def _wrong_jar(light: JarGap, heavy: JarGap, uses: Sequence[Use]) -> WrongJar:
    about = (heavy.gap_g - light.gap_g) / 2
    near = [use for use in uses if use.jar == heavy.jar and abs(use.g - about) <= WITHIN_G]
    near.sort(key=lambda use: abs(use.g - about))
    return WrongJar(light.jar, heavy.jar, about, tuple(near))
