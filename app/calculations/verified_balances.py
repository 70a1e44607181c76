"""What the law of weighing asks of a balance with a class on its plate (OIML R 76-1:2006).

Tables 3 and 6, read in a copy. The class and the verification interval e stand on the plate; local
law decides where a verified balance must be used. Here they serve to check a balance with a weight.
"""

from decimal import Decimal
from enum import StrEnum

from app.calculations.given import more_than_nothing


class Accuracy(StrEnum):
    """The accuracy class on the plate."""

    SPECIAL = "I"
    HIGH = "II"
    MEDIUM = "III"
    ORDINARY = "IIII"


# The least load in intervals, by the interval in grams from which it holds (Table 3).
_LEAST_LOADS = {
    Accuracy.SPECIAL: ((Decimal("0.001"), 100),),
    Accuracy.HIGH: ((Decimal("0.1"), 50), (Decimal("0.001"), 20)),
    Accuracy.MEDIUM: ((Decimal("0.1"), 20),),
    Accuracy.ORDINARY: ((Decimal(5), 10),),
}
# Up to how many intervals of load half an interval of error is allowed, and then one (Table 6).
_LOADS = {
    Accuracy.SPECIAL: (50_000, 200_000),
    Accuracy.HIGH: (5_000, 20_000),
    Accuracy.MEDIUM: (500, 2_000),
    Accuracy.ORDINARY: (50, 200),
}


def least_load_g(accuracy: Accuracy, interval_g: Decimal) -> Decimal | None:
    """The lower limit of what it may weigh; None where no balance of that class has such steps."""
    more_than_nothing("verification interval", interval_g, "g")
    for from_g, intervals in _LEAST_LOADS[accuracy]:
        if interval_g >= from_g:
            return intervals * interval_g
    return None


def permitted_error_g(accuracy: Accuracy, interval_g: Decimal, load_g: Decimal) -> Decimal:
    """How far it may be off at this load when it is first verified."""
    more_than_nothing("verification interval", interval_g, "g")
    more_than_nothing("test weight", load_g, "g")
    half_up_to, one_up_to = _LOADS[accuracy]
    intervals = load_g / interval_g
    if intervals <= half_up_to:
        return interval_g / 2
    return interval_g if intervals <= one_up_to else interval_g * 3 / 2
