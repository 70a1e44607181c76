"""The jar against its book: what is missing, and the pair of gaps that names a wrong jar.

Powder taken from one jar and booked on another leaves the first too light and the second too heavy
by the same amount. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.calculations.given import not_below_nothing

OPPOSITE_WITHIN_G = Decimal("0.3")


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


def expected_g(last_weighed_g: Decimal, used_g: Sequence[Decimal]) -> Decimal:
    """What a jar should weigh; powder tipped back is a negative use."""
    not_below_nothing("last weight of the jar", last_weighed_g, "g")
    return last_weighed_g - sum(used_g, Decimal(0))


def gap_of(
    jar: str, weighed_g: Decimal, last_weighed_g: Decimal, used_g: Sequence[Decimal]
) -> JarGap:
    """The gap between the balance and the book."""
    not_below_nothing("weight of the jar", weighed_g, "g")
    return JarGap(jar, weighed_g - expected_g(last_weighed_g, used_g))


def wrong_jars(
    gaps: Sequence[JarGap], uses: Sequence[Use], within_g: Decimal = OPPOSITE_WITHIN_G
) -> tuple[WrongJar, ...]:
    """Every pair of opposite gaps, the closest first. Gaps no larger than `within_g` are weighing.

    More than one pair for a jar means that it is not decided.
    """
    not_below_nothing("tolerance", within_g, "g")
    pairs = [
        (light, heavy)
        for light in gaps
        for heavy in gaps
        if light.gap_g < -within_g
        and heavy.gap_g > within_g
        and abs(light.gap_g + heavy.gap_g) <= within_g
    ]
    pairs.sort(key=lambda pair: abs(pair[0].gap_g + pair[1].gap_g))
    return tuple(_wrong_jar(light, heavy, uses, within_g) for light, heavy in pairs)


def _wrong_jar(light: JarGap, heavy: JarGap, uses: Sequence[Use], within_g: Decimal) -> WrongJar:
    about = (heavy.gap_g - light.gap_g) / 2
    near = [use for use in uses if use.jar == heavy.jar and abs(use.g - about) <= within_g]
    near.sort(key=lambda use: abs(use.g - about))
    return WrongJar(light.jar, heavy.jar, about, tuple(near))
