"""Winding: how many skeins a cone gives, and how many turns a skein needs.

Rates (oil, regain, relaxation) are fractions. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from app.calculations.moisture import at_regain

PI = Decimal("3.14159265358979323846")


@dataclass(frozen=True, slots=True)
class Yield:
    """What a cone gives: whole skeins, minis from the rest, and a tail too short for one."""

    skeins: int
    minis: int
    rest_m: Decimal  # after the whole skeins
    tail_m: Decimal  # after the minis too


def fibre_g(net_g: Decimal, oil: Decimal, regain_now: Decimal, regain_then: Decimal) -> Decimal:
    """The yarn on a cone without its spinning oil, brought to another (the standard) regain."""
    return at_regain(net_g * (1 - oil), regain_now, regain_then)


def checked_tex(wrap_g: Decimal, wrap_m: Decimal) -> Decimal:
    """The count in tex, from a measured length reeled off and weighed."""
    return wrap_g / wrap_m * 1000


def metres_in(mass_g: Decimal, tex: Decimal) -> Decimal:
    """The metres in so many grams of yarn of this count."""
    return mass_g / tex * 1000


def grams_in(length_m: Decimal, tex: Decimal) -> Decimal:
    """The grams in so many metres of yarn of this count."""
    return length_m * tex / 1000


def winding_yield(
    length_m: Decimal, skein_m: Decimal, mini_m: Decimal, end_waste_m: Decimal
) -> Yield:
    """What a cone of this length gives after the waste at its ends; lengths as wound."""
    usable_m = max(length_m - end_waste_m, Decimal(0))
    skeins, rest_m = divmod(usable_m, skein_m)
    minis, tail_m = divmod(rest_m, mini_m)
    return Yield(int(skeins), int(minis), rest_m, tail_m)


def relaxation_of(reel_m: Decimal, hung_m: Decimal) -> Decimal:
    """How much shorter the yarn became: the reel's girth against the hung skein's."""
    return 1 - hung_m / reel_m


def relaxed_length_m(wound_m: Decimal, relaxation: Decimal) -> Decimal:
    """What a wound length measures after it was wet and has dried: the length to print."""
    return wound_m * (1 - relaxation)


def turns_for(relaxed_m: Decimal, relaxation: Decimal, reel_m: Decimal) -> int:
    """The turns that give at least this length when relaxed."""
    return int((relaxed_m / ((1 - relaxation) * reel_m)).to_integral_value(ROUND_CEILING))


def build_up_m(turns: int, layer_m: Decimal) -> Decimal:
    """The length wound over what the reel's girth says, when the yarn piles up to this thickness.

    The girth grows by twice pi times the thickness, on average by half of that.
    """
    return turns * PI * layer_m


def shares(lengths_m: Sequence[Decimal]) -> tuple[Decimal, ...]:
    """The share of each cone in a skein that spans a join."""
    total_m = sum(lengths_m)
    return tuple(length_m / total_m for length_m in lengths_m)
