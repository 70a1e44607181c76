"""Stock solutions, always weight in volume: 1 % is 1 g of dye made up to 100 mL, so 10 g a litre.

The other reading, 1 g of dye and 99 g of water, is met in print and never meant here. A stock is
made up for the strength of its powder, so its percent counts dye as strong as the standard.
Vinegar is a stock of acetic acid: that of 5 % has 5 g in 100 mL. Common practice, no source.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal

from app.calculations.given import more_than_nothing, not_below_nothing


@dataclass(frozen=True, slots=True)
class Bottle:
    """A stock that stands ready: its percent, and how much is left."""

    percent: Decimal
    left_ml: Decimal

    def __post_init__(self) -> None:
        more_than_nothing("strength of the stock", self.percent, "%")
        not_below_nothing("rest in the bottle", self.left_ml, "mL")


def stock_ml(dye_g: Decimal, percent: Decimal) -> Decimal:
    """The volume of a stock that holds so much dye (as strong as the standard)."""
    not_below_nothing("dye", dye_g, "g")
    more_than_nothing("strength of the stock", percent, "%")
    return dye_g * 100 / percent


def dye_in_stock_g(volume_ml: Decimal, percent: Decimal) -> Decimal:
    """The dye in so much of a stock."""
    not_below_nothing("volume of stock", volume_ml, "mL")
    more_than_nothing("strength of the stock", percent, "%")
    return volume_ml * percent / 100


def powder_for_stock_g(
    made_up_to_ml: Decimal, percent: Decimal, strength: Decimal = Decimal(1)
) -> Decimal:
    """The powder of this strength to weigh, and then to make up to the volume with water."""
    more_than_nothing("strength of the powder", strength)
    return dye_in_stock_g(made_up_to_ml, percent) / strength


def percent_made_up(
    powder_g: Decimal, made_up_to_ml: Decimal, strength: Decimal = Decimal(1)
) -> Decimal:
    """What a stock turned out to be, from the powder that was really weighed into it."""
    more_than_nothing("powder", powder_g, "g")
    more_than_nothing("volume of stock", made_up_to_ml, "mL")
    more_than_nothing("strength of the powder", strength)
    return powder_g * strength * 100 / made_up_to_ml


def diluted_percent(taken_ml: Decimal, percent: Decimal, made_up_to_ml: Decimal) -> Decimal:
    """The percent of a stock after a part of it was made up to a larger volume."""
    more_than_nothing("volume it is made up to", made_up_to_ml, "mL")
    return dye_in_stock_g(taken_ml, percent) * 100 / made_up_to_ml


def good_until(made: datetime, life_days: int | None) -> datetime | None:
    """The end of a stock's life, as it was said when it was made; none where it keeps."""
    return None if life_days is None else made + timedelta(days=life_days)


def is_past_its_life(made: datetime, life_days: int | None, at: datetime) -> bool:
    """Whether a stock is older than it keeps; to its last moment it is good."""
    end = good_until(made, life_days)
    return end is not None and at > end
