"""What a tag may promise of a put-up: never more grams or metres than are surely inside."""

from dataclasses import dataclass
from decimal import ROUND_FLOOR, Decimal

from app.calculations.winding import grams_in, metres_in, relaxed_length_m

_STEPS = ((20, 5), (0, 1))  # from so many grams on, promised in steps of so many


@dataclass(frozen=True, slots=True)
class Promised:
    """Whole grams and metres to be printed."""

    g: int
    m: int


def promised(wound_m: Decimal, tex: Decimal, oil: Decimal, relaxation: Decimal) -> Promised:
    """What a put-up of this length on the reel surely holds after the wash.

    Tex is of the yarn as it comes; oil and relaxation are fractions. The grams without the oil
    are rounded down; the metres are those of so many grams, and no more than were wound.
    """
    surely_g = grams_in(wound_m, tex) * (1 - oil)
    step = next(step for least, step in _STEPS if surely_g >= least)
    g = int(surely_g // step) * step
    long_m = min(metres_in(Decimal(g), tex), wound_m)
    m = relaxed_length_m(long_m, relaxation).to_integral_value(ROUND_FLOOR)
    return Promised(g, int(m))
