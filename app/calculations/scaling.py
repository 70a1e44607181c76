"""From a recipe to grams: per cent on the weight of the dry fibre, or grams a litre of bath.

Formulas are common practice, no source. Percents are percents, strengths and pick-ups fractions.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from types import MappingProxyType

from app.calculations.given import more_than_nothing, not_below_nothing
from app.calculations.units import milligrams
from app.problems import BadInput

PICK_UP_DOUBT = Decimal("0.05")  # how far a pick-up told by hand may be off

_ALL_AS_THE_STANDARD: Mapping[str, Decimal | None] = MappingProxyType({})


class Per(StrEnum):
    """What the amount of a component is counted on."""

    FIBRE = "% owf"
    LITRE = "g/L"


@dataclass(frozen=True, slots=True)
class Component:
    """One line of a recipe: a dye or an assistant, and how much of it."""

    name: str
    amount: Decimal
    per: Per = Per.FIBRE

    def __post_init__(self) -> None:
        more_than_nothing(f"amount of {self.name}", self.amount, self.per)


@dataclass(frozen=True, slots=True)
class DryWeight:
    """The dry weight a recipe is reckoned on, and the range it may lie in."""

    g: Decimal
    least_g: Decimal
    most_g: Decimal

    @property
    def estimated(self) -> bool:
        """Whether it was not weighed dry."""
        return self.least_g != self.most_g


@dataclass(frozen=True, slots=True)
class Scaled:
    """How much of one component this yarn needs.

    A strength of None is not known, and taken as that of the standard.
    """

    component: Component
    standard_g: Decimal  # of dye at the strength of the kept standard
    strength: Decimal | None

    @property
    def powder_g(self) -> Decimal:
        """What to weigh of the jar as it is."""
        return self.standard_g / (Decimal(1) if self.strength is None else self.strength)

    @property
    def powder_mg(self) -> int:
        """The powder as the record keeps it."""
        return milligrams(self.powder_g)


def from_winding(dry_g: Decimal) -> DryWeight:
    """The weight to use: what the skeins weighed when they were wound."""
    more_than_nothing("dry weight", dry_g, "g")
    return DryWeight(dry_g, dry_g, dry_g)


def from_damp(damp_g: Decimal, pick_up: Decimal) -> DryWeight:
    """The fallback: damp yarn without the water it holds, `pick_up` being the water a gram.

    The range is that of a pick-up five points lower or higher.
    """
    more_than_nothing("damp weight", damp_g, "g")
    not_below_nothing("pick-up", pick_up)
    driest = max(pick_up - PICK_UP_DOUBT, Decimal(0))
    return DryWeight(
        damp_g / (1 + pick_up), damp_g / (1 + pick_up + PICK_UP_DOUBT), damp_g / (1 + driest)
    )


def standard_g(component: Component, dry_g: Decimal, liquor_l: Decimal | None = None) -> Decimal:
    """The grams of one component, at the strength of the standard."""
    more_than_nothing("dry weight", dry_g, "g")
    if component.per is Per.FIBRE:
        return dry_g * component.amount / 100
    if liquor_l is None:
        raise BadInput(
            f"{component.name} is given in grams a litre, and the bath's volume is not known.",
            "Say how many litres the bath has, or its liquor ratio.",
        )
    more_than_nothing("bath", liquor_l, "L")
    return liquor_l * component.amount


def scale(
    recipe: Sequence[Component],
    dry: DryWeight,
    liquor_l: Decimal | None = None,
    strengths: Mapping[str, Decimal | None] = _ALL_AS_THE_STANDARD,
) -> tuple[Scaled, ...]:
    """The whole recipe for this yarn, line for line in its own order.

    `strengths` holds the strength of the jar each component is weighed from, by its name; a
    component it does not name is as strong as the standard.
    """
    return tuple(
        Scaled(
            component,
            standard_g(component, dry.g, liquor_l),
            _sound_strength(component.name, strengths.get(component.name, Decimal(1))),
        )
        for component in recipe
    )


def _sound_strength(name: str, strength: Decimal | None) -> Decimal | None:
    if strength is not None:
        more_than_nothing(f"strength of {name}", strength)
    return strength
