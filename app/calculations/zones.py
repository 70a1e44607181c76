"""Painting in zones: what each bottle must hold, and whether the skein takes it all.

Volumes in mL, stock percents weight in volume. Saturation and pick-up are fractions of the dry
weight, a gram of liquor counted as a millilitre. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from app.calculations.given import more_than_nothing, not_below_nothing
from app.calculations.stock import dye_in_stock_g, stock_ml
from app.problems import BadInput

DEAD_VOLUME = Decimal("0.10")  # what stays in bottles and droppers
SATURATION = Decimal("2.20")  # what a laid-out skein holds before it puddles
KEPT_OF_A_CUT_ZONE = Decimal("0.5")


@dataclass(frozen=True, slots=True)
class Zone:
    """One zone of a skein: its bottle, the volume laid on one skein, and the mix in the bottle."""

    bottle: str
    ml: Decimal
    percent: Decimal

    def __post_init__(self) -> None:
        more_than_nothing(f"volume of zone {self.bottle}", self.ml, "mL")
        more_than_nothing(f"strength of zone {self.bottle}", self.percent, "%")

    @property
    def dye_g(self) -> Decimal:
        """The dye that goes on one skein."""
        return dye_in_stock_g(self.ml, self.percent)


@dataclass(frozen=True, slots=True)
class Filling:
    """What goes into one bottle: dye (as strong as the standard), made up with water."""

    zone: Zone
    volume_ml: Decimal
    dye_g: Decimal

    def powder_g(self, strength: Decimal = Decimal(1)) -> Decimal:
        """The powder of this strength for it."""
        more_than_nothing("strength of the powder", strength)
        return self.dye_g / strength

    def from_stock_ml(self, percent: Decimal) -> tuple[Decimal, Decimal]:
        """The stock and the water for it; refused when the stock is too weak."""
        taken_ml = stock_ml(self.dye_g, percent)
        if taken_ml > self.volume_ml:
            raise BadInput(
                f"A stock of {percent} % is too weak for bottle {self.zone.bottle}, "
                f"which needs {self.zone.percent} %.",
                "Take a stronger stock, or the powder.",
            )
        return taken_ml, self.volume_ml - taken_ml


@dataclass(frozen=True, slots=True)
class Fit:
    """Whether the zones fit into the skein, and what would make them fit.

    `over_ml` is what would puddle. `pick_up_at_most` says how hard to spin (None: no spinning is
    enough), `cut` one zone with less volume and the same dye (None: none can spare so much).
    """

    room_ml: Decimal
    over_ml: Decimal
    pick_up_at_most: Decimal | None
    cut: Zone | None


def total_ml(zones: Sequence[Zone]) -> Decimal:
    """What is laid on one skein."""
    return sum((zone.ml for zone in zones), Decimal(0))


def dye_a_skein_g(zones: Sequence[Zone]) -> Decimal:
    """The dye that goes on one skein, all zones together."""
    return sum((zone.dye_g for zone in zones), Decimal(0))


def fillings(
    zones: Sequence[Zone], skeins: int, dead: Decimal = DEAD_VOLUME
) -> tuple[Filling, ...]:
    """What to put into each bottle for so many skeins, with what stays in it."""
    more_than_nothing("number of skeins", skeins)
    not_below_nothing("dead volume", dead)
    many = skeins * (1 + dead)
    return tuple(Filling(zone, zone.ml * many, zone.dye_g * many) for zone in zones)


def room_ml(skein_g: Decimal, pick_up: Decimal, saturation: Decimal = SATURATION) -> Decimal:
    """The liquor a damp skein still takes."""
    more_than_nothing("dry weight of the skein", skein_g, "g")
    not_below_nothing("pick-up", pick_up)
    more_than_nothing("saturation", saturation)
    return max(saturation - pick_up, Decimal(0)) * skein_g


def fit(
    zones: Sequence[Zone], skein_g: Decimal, pick_up: Decimal, saturation: Decimal = SATURATION
) -> Fit:
    """Whether all zones go into one skein, and if not what to spin or cut."""
    room = room_ml(skein_g, pick_up, saturation)
    over = max(total_ml(zones) - room, Decimal(0))
    if not over:
        return Fit(room, over, pick_up, None)
    driest = saturation - total_ml(zones) / skein_g
    return Fit(room, over, driest if driest >= 0 else None, _cut(zones, over))


def stronger(zone: Zone, less_ml: Decimal) -> Zone:
    """The same dye in so much less volume."""
    not_below_nothing("volume to cut", less_ml, "mL")
    left = zone.ml - less_ml
    more_than_nothing(f"volume left of zone {zone.bottle}", left, "mL")
    return replace(zone, ml=left, percent=zone.percent * zone.ml / left)


def _cut(zones: Sequence[Zone], less_ml: Decimal) -> Zone | None:
    """The palest zone that keeps half its volume: a pale mix is easiest made stronger."""
    able = [zone for zone in zones if zone.ml - less_ml >= KEPT_OF_A_CUT_ZONE * zone.ml]
    palest = min(able, key=lambda zone: zone.percent, default=None)
    return palest and stronger(palest, less_ml)
