"""The bath against the pot: litres, level, water to add, and how many skeins one pot takes.

A liquor ratio is litres of bath a kilogram of dry fibre. Wool of 1.31 g/mL takes its own room in
the pot. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_FLOOR, Decimal

from app.calculations.given import more_than_nothing, not_below_nothing
from app.problems import BadInput, Refused

USABLE = Decimal("0.75")  # of a pot, before it boils over
DENSITY = Decimal("1.31")  # of wool, kg a litre


@dataclass(frozen=True, slots=True)
class Pots:
    """The skeins of each pot; every pot is a bath and a dye lot of its own."""

    skeins: tuple[int, ...]

    @property
    def lots(self) -> int:
        """How many lot codes will be born."""
        return len(self.skeins)


def liquor_l(dry_g: Decimal, ratio: Decimal) -> Decimal:
    """The bath for this yarn."""
    more_than_nothing("dry weight", dry_g, "g")
    more_than_nothing("liquor ratio", ratio)
    return dry_g * ratio / 1000


def ratio_of(bath_l: Decimal, dry_g: Decimal) -> Decimal:
    """The liquor ratio of a bath as it is."""
    more_than_nothing("dry weight", dry_g, "g")
    more_than_nothing("bath", bath_l, "L")
    return bath_l * 1000 / dry_g


def level_l(bath_l: Decimal, dry_g: Decimal) -> Decimal:
    """What the pot shows with the yarn in it."""
    not_below_nothing("bath", bath_l, "L")
    more_than_nothing("dry weight", dry_g, "g")
    return bath_l + dry_g / DENSITY / 1000


def usable_l(pot_l: Decimal) -> Decimal:
    """What a pot of this size may be filled to."""
    more_than_nothing("size of the pot", pot_l, "L")
    return pot_l * USABLE


def fits(dry_g: Decimal, ratio: Decimal, pot_l: Decimal) -> bool:
    """Whether this yarn at this ratio stays within the usable pot."""
    return level_l(liquor_l(dry_g, ratio), dry_g) <= usable_l(pot_l)


def soaked_in_l(dry_g: Decimal, pick_up: Decimal) -> Decimal:
    """The water that wet yarn brings along."""
    more_than_nothing("dry weight", dry_g, "g")
    not_below_nothing("pick-up", pick_up)
    return dry_g * pick_up / 1000


def water_to_add(bath: Decimal, already_in: Sequence[Decimal]) -> Decimal:
    """The water still to add, all in one unit: yarn water, stocks and acid are part of the bath."""
    more_than_nothing("bath", bath)
    for part in already_in:
        not_below_nothing("volume already in", part)
    left = bath - sum(already_in, Decimal(0))
    if left < 0:
        raise BadInput(
            "What the yarn, the stocks and the acid bring is more than the whole bath.",
            "Take stronger stocks, spin the yarn, or choose a larger bath.",
        )
    return left


def most_g(pot_l: Decimal, ratio: Decimal) -> Decimal:
    """The most dry fibre one pot takes at this ratio."""
    more_than_nothing("liquor ratio", ratio)
    return usable_l(pot_l) * 1000 / (ratio + 1 / DENSITY)


def most_skeins(pot_l: Decimal, ratio: Decimal, skein_g: Decimal) -> int:
    """The most whole skeins one pot takes at this ratio."""
    more_than_nothing("dry weight of a skein", skein_g, "g")
    return int((most_g(pot_l, ratio) / skein_g).to_integral_value(ROUND_FLOOR))


def widest_ratio(dry_g: Decimal, pot_l: Decimal) -> int:
    """The largest whole liquor ratio at which this yarn fits; 0 when it does not fit at all."""
    more_than_nothing("dry weight", dry_g, "g")
    left = usable_l(pot_l) * 1000 / dry_g - 1 / DENSITY
    return max(int(left.to_integral_value(ROUND_FLOOR)), 0)


def split(skeins: int, skein_g: Decimal, ratio: Decimal, pot_l: Decimal) -> Pots:
    """The skeins over as few pots as take them, as evenly as can be: one more pot, one more lot."""
    more_than_nothing("number of skeins", skeins)
    most = most_skeins(pot_l, ratio, skein_g)
    if not most:
        raise Refused(
            f"Not one skein of {skein_g} g fits a pot of {pot_l} L at {ratio}:1; nothing begun.",
            "Take a larger pot or a smaller ratio.",
        )
    pots = -(-skeins // most)
    each, more = divmod(skeins, pots)
    return Pots(tuple(each + (pot < more) for pot in range(pots)))
