"""How little a balance can weigh, and whether what was taken is right.

Two rules stand beside each other and are named apart, for they answer different questions.
Common practice (no source) asks whether the reading step is small against the tolerance of the
line: least = step / tolerance, with 2 %. USP General Chapter 41 asks whether the balance repeats
itself: least = 2 s / tolerance, with 0.10 %, where s is never taken as less than 0.41 steps. At
equal tolerance the second is the lower of the two; by its own tolerance it is far stricter.
"""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum

from app.calculations.given import more_than_nothing, not_below_nothing

LINE_TOLERANCE = Decimal("0.02")
STEPS_ALLOWED = 2

_LEAST_REPEATABILITY = Decimal("0.41")  # of a reading step
_COVERAGE = 2


class Rule(StrEnum):
    """Who says how little may be weighed."""

    COMMON_PRACTICE = "common practice"
    USP_41 = "USP 41"


_OWN_TOLERANCE = {Rule.COMMON_PRACTICE: LINE_TOLERANCE, Rule.USP_41: Decimal("0.001")}


@dataclass(frozen=True, slots=True)
class Balance:
    """A balance and the rule it is used by; no tolerance means the rule's own."""

    step_g: Decimal
    rule: Rule = Rule.COMMON_PRACTICE
    tolerance: Decimal | None = None
    repeatability_g: Decimal | None = None  # standard deviation, where it was measured
    most_g: Decimal | None = None  # what it carries, the cup with it; none is not said

    def __post_init__(self) -> None:
        more_than_nothing("reading step of the balance", self.step_g, "g")
        if self.tolerance is not None:
            more_than_nothing("tolerance", self.tolerance)
        if self.repeatability_g is not None:
            not_below_nothing("repeatability of the balance", self.repeatability_g, "g")
        if self.most_g is not None:
            more_than_nothing("most the balance carries", self.most_g, "g")

    @property
    def minimum_g(self) -> Decimal:
        """The least that may be weighed on it."""
        tolerance = self.tolerance or _OWN_TOLERANCE[self.rule]
        if self.rule is Rule.COMMON_PRACTICE:
            return self.step_g / tolerance
        measured = self.repeatability_g or Decimal(0)
        return _COVERAGE * max(measured, _LEAST_REPEATABILITY * self.step_g) / tolerance

    def readable_g(self, g: Decimal) -> Decimal:
        """The weight as its display can show it."""
        return to_step(g, self.step_g)

    def can_weigh(self, g: Decimal) -> bool:
        """Whether this much may be weighed on it, also after rounding to its display."""
        return min(g, self.readable_g(g)) >= self.minimum_g

    def can_carry(self, g: Decimal) -> bool:
        """Whether this much, without its cup, can stand on it at once."""
        return self.most_g is None or g <= self.most_g

    def doubt_at(self, g: Decimal) -> Decimal:
        """One reading step as a fraction of the weight."""
        more_than_nothing("weight", g, "g")
        return self.step_g / g


class Taken(StrEnum):
    """The word the weigh bench shows."""

    GOOD = "GOOD"
    TOO_LITTLE = "TOO LITTLE"
    TOO_MUCH = "TOO MUCH"


def to_step(value: Decimal, step: Decimal) -> Decimal:
    """The nearest multiple of a step, a half counted up."""
    return (value / step).to_integral_value(ROUND_HALF_UP) * step


def allowed_g(target_g: Decimal, step_g: Decimal) -> Decimal:
    """How far a line may be off: 2 %, or two reading steps where that is more."""
    more_than_nothing("target", target_g, "g")
    return max(LINE_TOLERANCE * target_g, STEPS_ALLOWED * step_g)


def judge(target_g: Decimal, taken_g: Decimal, step_g: Decimal) -> Taken:
    """Whether the powder in the cup is right."""
    not_below_nothing("weight in the cup", taken_g, "g")
    off_g = taken_g - target_g
    if abs(off_g) <= allowed_g(target_g, step_g):
        return Taken.GOOD
    return Taken.TOO_MUCH if off_g > 0 else Taken.TOO_LITTLE
