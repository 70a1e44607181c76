"""How much of the dye went onto the yarn, told by what is left in the bath.

On a ladder of jars (dilutions kept on the sill) a bath looks like one of them, so what is known is
a range. A photometer reads absorbance, which grows as the concentration does. Common practice, no
source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum

from app.calculations.given import more_than_nothing, not_below_nothing
from app.problems import NotFound


class Usual(Enum):
    """The least share that usually goes on; below it: more acid, more time, and a note."""

    MOST_DYES = Decimal("0.93")
    TURQUOISE = Decimal("0.85")


@dataclass(frozen=True, slots=True)
class Exhaustion:
    """The share of the dye that went on; the ends of the range are equal where it was measured."""

    share: Decimal
    at_least: Decimal
    at_most: Decimal

    def is_low(self, usual: Usual = Usual.MOST_DYES) -> bool:
        """Whether less went on than usually does."""
        return self.share < usual.value


def bath_g_l(dye_g: Decimal, bath_l: Decimal) -> Decimal:
    """The dye in a litre of bath."""
    not_below_nothing("dye", dye_g, "g")
    more_than_nothing("bath", bath_l, "L")
    return dye_g / bath_l


def measured(start: Decimal, end: Decimal) -> Exhaustion:
    """From two concentrations, two absorbances or two weights of dye, both of the same kind."""
    more_than_nothing("start of the bath", start)
    not_below_nothing("end of the bath", end)
    share = 1 - end / start
    return Exhaustion(share, share, share)


def by_mass(start_g_l: Decimal, start_l: Decimal, end_g_l: Decimal, end_l: Decimal) -> Exhaustion:
    """From concentrations where the bath also lost or gained water."""
    more_than_nothing("bath at the start", start_l, "L")
    not_below_nothing("bath at the end", end_l, "L")
    return measured(start_g_l * start_l, end_g_l * end_l)


def absorbance(reading: Decimal, diluted: int = 1) -> Decimal:
    """The absorbance of the bath from that of a sample made up to so many times its volume."""
    not_below_nothing("reading", reading)
    more_than_nothing("dilution", diluted)
    return reading * diluted


def by_ladder(start_g_l: Decimal, ladder_g_l: Sequence[Decimal], looks_like: Decimal) -> Exhaustion:
    """From the jar the bath looks like; it surely lies between the paler and the darker jar.

    Paler than the palest jar may be clear water, darker than the darkest the bath of the start.
    """
    more_than_nothing("start of the bath", start_g_l, "g/L")
    if looks_like not in ladder_g_l:
        raise NotFound(
            f"No jar of {looks_like} g/L stands on this ladder.", "Choose the jar it looks like."
        )
    paler = max((jar for jar in ladder_g_l if jar < looks_like), default=Decimal(0))
    darker = min((jar for jar in ladder_g_l if jar > looks_like), default=start_g_l)
    return Exhaustion(
        measured(start_g_l, looks_like).share,
        measured(start_g_l, max(min(darker, start_g_l), looks_like)).share,
        measured(start_g_l, paler).share,
    )
