"""What a studio believes of faults before it looks: priors by kind, and how often faults show.

All numbers are working estimates (common practice, no source) and may be set. A prior is shared
among the suspects of its kind. What kind of fault it is shifts the priors: the kinds it mostly
comes from are held `favour` times as likely as they are otherwise.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from app.problems import BadInput

Weighted = tuple[tuple[Fraction, Fraction], ...]


def _weighted(text: str) -> Weighted:
    pairs = (pair.split(":") for pair in text.split())
    return tuple((Fraction(rate), Fraction(weight)) for rate, weight in pairs)


@dataclass(frozen=True, slots=True)
class Rates:
    """How often a skein is faulty that went through the cause, and how often one that did not.

    Nobody knows either, so each is several rates with their weights. `tells` is the share of
    buyers of a faulty skein who say so.
    """

    touched: Weighted = _weighted("0.3:0.10 0.45:0.15 0.6:0.20 0.75:0.25 0.9:0.30")
    others: Weighted = _weighted("0.005:0.30 0.01:0.30 0.02:0.25 0.04:0.15")
    tells: Fraction = Fraction(1, 4)

    def __post_init__(self) -> None:
        for rate, weight in (*self.touched, *self.others):
            if not (0 < rate < 1 and weight > 0):
                raise _unusable(f"a rate of {rate} has the weight {weight}")
        if not (self.touched and self.others and 0 <= self.tells <= 1):
            raise _unusable("a list of rates is empty, or the buyers who tell are no share")


PRIORS: Mapping[str, Fraction] = {
    "cone": Fraction(30, 100),
    "lot": Fraction(20, 100),
    "wash load": Fraction(20, 100),
    "jar fill": Fraction(10, 100),
    "winder-day": Fraction(10, 100),
    "rail": Fraction(5, 100),
    "none": Fraction(5, 100),
}
FAVOURED: Mapping[str, tuple[str, ...]] = {
    "stain": ("wash load",),
    "off shade": ("jar fill", "lot"),
    "streak": ("cone",),
    "thin place": ("cone",),
    "knot": ("cone",),
    "tie mark": ("winder-day",),
    "short": ("winder-day",),
    "felt": ("wash load",),
    "bleed": ("lot",),
    "smell": ("rail",),
}


HARDLY_SEEN: Mapping[str, Fraction] = {"off shade": Fraction(1, 50)}
"""Faults that a buyer sees only beside another lot: how many of them tell all the same."""


@dataclass(frozen=True, slots=True)
class Settings:
    """Priors, rates, and from which chance on a suspect is called likely or possible.

    `other` is the prior of each kind that has none of its own (a bath, a soak, a spin load).
    Nothing is likely on fewer than `least_faulty` faulty skeins: two may be chance. With `likely`
    at 0.70 and two skeins, as is often said, one call in eight was wrong in invented studios after
    all looks, with these settings one in fifteen (tests/whole/suspect_trials.py). Suspects from
    `in_question` on decide which skeins are alike for the next look, and `looks` is how many
    skeins are looked at in one go.
    """

    priors: Mapping[str, Fraction] = field(default_factory=lambda: PRIORS)
    other: Fraction = Fraction(5, 100)
    favoured: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: FAVOURED)
    favour: Fraction = Fraction(3)
    rates: Rates = Rates()
    hardly_seen: Mapping[str, Fraction] = field(default_factory=lambda: HARDLY_SEEN)
    likely: float = 0.80
    least_faulty: int = 3
    possible: float = 0.05
    in_question: float = 0.02
    looks: int = 3

    def prior(self, kind: str, fault: str | None = None) -> Fraction:
        """How likely a fault comes from this kind, beside the others; what fault shifts it."""
        weight = self.priors.get(kind, self.other)
        if not weight > 0:
            raise _unusable(f"the prior of {kind} is {weight}")
        return weight * (self.favour if kind in self.favoured.get(fault or "", ()) else 1)

    def of(self, fault: str | None) -> "Settings":
        """The same, with as many buyers telling as tell of this kind of fault."""
        tells = self.hardly_seen.get(fault or "", self.rates.tells)
        return replace(self, rates=replace(self.rates, tells=min(tells, self.rates.tells)))


def _unusable(what: str) -> BadInput:
    return BadInput(
        f"The settings for suspects cannot be used: {what}.",
        "Set priors and weights above 0 and rates between 0 and 1; nothing was reckoned.",
    )
