"""Milligrams and millimetres as kept, grams and metres as reckoned, ounces and yards as printed."""

from decimal import ROUND_HALF_UP, Decimal

GRAMS_AN_OUNCE = Decimal("28.349523125")  # exact: a sixteenth of the pound of 1959
METRES_A_YARD = Decimal("0.9144")  # exact: the yard of 1959


def grams(mg: int) -> Decimal:
    """A weight kept in whole milligrams, in grams."""
    return Decimal(mg) / 1000


def milligrams(g: Decimal) -> int:
    """A weight in grams, as it is kept: whole milligrams, a half counted up."""
    return int((g * 1000).to_integral_value(ROUND_HALF_UP))


def metres(mm: int) -> Decimal:
    """A length kept in whole millimetres, in metres."""
    return Decimal(mm) / 1000


def millimetres(m: Decimal) -> int:
    """A length in metres, as it is kept: whole millimetres, a half counted up."""
    return int((m * 1000).to_integral_value(ROUND_HALF_UP))


def ounces(g: Decimal) -> Decimal:
    """A weight in ounces, to the hundredth that tags print: 100 g is 3.53 oz."""
    return (g / GRAMS_AN_OUNCE).quantize(Decimal("0.01"), ROUND_HALF_UP)


def yards(m: Decimal) -> int:
    """A length in the whole yards that tags print: 388 m is 424 yd."""
    return int((m / METRES_A_YARD).to_integral_value(ROUND_HALF_UP))
