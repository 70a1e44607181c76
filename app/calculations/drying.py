"""Drying: how fast the room takes the water, how long a skein hangs, and whether it is dry.

Water goes as the vapour pressure deficit of the air. The saturation pressure is the Tetens formula
(from memory); the rates are common practice, no source, to be fitted to one's own room.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum

from app.calculations.given import a_share, more_than_nothing, not_below_nothing
from app.calculations.moisture import at_regain
from app.calculations.put_up_weight import RoomRegain
from app.problems import BadInput

DAMP = Decimal("1.02")  # of the expected dry weight

_COLDEST_C, _HOTTEST_C = Decimal(0), Decimal(60)


class Air(Enum):
    """How much a 100 g skein loses, g an hour for each kPa of deficit."""

    FAN = Decimal("5.5")
    STILL = Decimal("3.0")


@dataclass(frozen=True, slots=True)
class DryTest:
    """A skein off the rail against what it should weigh in this room when dry."""

    expected_g: Decimal
    damp: bool
    estimated: bool  # by humidity, without a reference skein


def saturation_kpa(celsius: Decimal) -> Decimal:
    """The vapour pressure of air that takes no more water."""
    if not (celsius.is_finite() and _COLDEST_C <= celsius <= _HOTTEST_C):
        raise BadInput(
            f"The room is said to have {celsius} °C.", "Give it as from 0 to 60 °C; all was kept."
        )
    return Decimal("0.6108") * (Decimal("17.27") * celsius / (celsius + Decimal("237.3"))).exp()


def deficit_kpa(celsius: Decimal, humidity: Decimal) -> Decimal:
    """The vapour pressure deficit; `humidity` is a fraction."""
    a_share("humidity of the room", humidity)
    return saturation_kpa(celsius) * (1 - humidity)


def rate_g_h(deficit: Decimal, rate: Decimal = Air.FAN.value) -> Decimal:
    """The water a 100 g skein loses in an hour."""
    not_below_nothing("deficit", deficit, "kPa")
    more_than_nothing("rate of the room", rate)
    return rate * deficit


def hours_to_dry(
    pick_up: Decimal, deficit: Decimal, rate: Decimal = Air.FAN.value
) -> Decimal | None:
    """The hours until the held water (a fraction of the dry weight) is gone.

    None: in this room it does not dry.
    """
    not_below_nothing("pick-up", pick_up)
    loses = rate_g_h(deficit, rate)
    return 100 * pick_up / loses if loses else None


def fitted_rate(pick_up: Decimal, hours: Decimal, deficit: Decimal) -> Decimal:
    """The rate of one's own room, from a skein that was seen to dry."""
    not_below_nothing("pick-up", pick_up)
    more_than_nothing("hours", hours, "h")
    more_than_nothing("deficit", deficit, "kPa")
    return 100 * pick_up / (hours * deficit)


def dry_test(
    reading_g: Decimal, conditioned_g: Decimal, standard_regain: Decimal, room: RoomRegain
) -> DryTest:
    """Whether a skein that weighs `conditioned_g` at the standard regain is dry."""
    more_than_nothing("reading", reading_g, "g")
    more_than_nothing("conditioned weight", conditioned_g, "g")
    expected = at_regain(conditioned_g, standard_regain, room.regain)
    return DryTest(expected, reading_g > DAMP * expected, room.estimated)
