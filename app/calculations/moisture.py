"""Moisture in fibre: what a yarn would weigh at the agreed moisture, and what it is made of.

Regain is the water as a fraction of the bone-dry mass, content as a fraction of the whole.
"""

from collections.abc import Mapping, Sequence
from decimal import ROUND_FLOOR, Decimal


def regain_of_reading(reading_g: Decimal, dry_g: Decimal) -> Decimal:
    """The regain of yarn that weighs so much and would weigh `dry_g` bone-dry."""
    return reading_g / dry_g - 1


def regain_of_content(content: Decimal) -> Decimal:
    """The regain of yarn with this moisture content."""
    return content / (1 - content)


def content_of_regain(regain: Decimal) -> Decimal:
    """The moisture content of yarn at this regain."""
    return regain / (1 + regain)


def at_regain(mass_g: Decimal, now: Decimal, then: Decimal) -> Decimal:
    """What yarn that weighs `mass_g` at the regain `now` weighs at another regain.

    With the agreed regain this is the commercial mass (ISO 6741-1, formula from memory).
    """
    return mass_g * (1 + then) / (1 + now)


def regain_at_humidity(humidity: Decimal, table: Sequence[tuple[Decimal, Decimal]]) -> Decimal:
    """The regain a fibre takes in a room, from a rising table of (humidity, regain).

    Straight between two entries; outside the table its nearest end.
    """
    lower = [entry for entry in table if entry[0] < humidity]
    upper = [entry for entry in table if entry[0] >= humidity]
    if not lower or not upper:
        return (lower[-1] if lower else upper[0])[1]
    (damp_below, below), (damp_above, above) = lower[-1], upper[0]
    return below + (above - below) * (humidity - damp_below) / (damp_above - damp_below)


def composition(
    dry_g: Mapping[str, Decimal], allowances: Mapping[str, Decimal]
) -> dict[str, Decimal]:
    """The percent of each fibre as a label states it: dry masses, each with its agreed allowance.

    Regulation (EU) No 1007/2011, Article 19(3). `allowances` are fractions of the dry mass.
    """
    agreed = {fibre: mass * (1 + allowances[fibre]) for fibre, mass in dry_g.items()}
    total = sum(agreed.values())
    return {fibre: 100 * mass / total for fibre, mass in agreed.items()}


def whole_percents(percents: Mapping[str, Decimal]) -> dict[str, int]:
    """The percents in whole numbers that still make 100: the largest remainders are counted up."""
    down = {fibre: percent.to_integral_value(ROUND_FLOOR) for fibre, percent in percents.items()}
    short = 100 - int(sum(down.values()))
    by_remainder = sorted(percents, key=lambda fibre: down[fibre] - percents[fibre])
    return {fibre: int(down[fibre]) + (fibre in by_remainder[:short]) for fibre in percents}
