"""From a recipe to grams: per cent on the weight of the dry fibre, or grams a litre of bath.

Formulas are common practice, no source. Percents are percents, strengths and pick-ups fractions.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from app.calculations.given import more_than_nothing, not_below_nothing
from app.problems import BadInput

PICK_UP_DOUBT = Decimal("0.05")  # how far a pick-up told by hand may be off


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


def standard_g(
    component: Component, dry_g: Decimal | None, liquor_l: Decimal | None = None
) -> Decimal:
    """The grams of one component, at the strength of the standard.

    Per cent of the fibre asks the dry weight, grams a litre ask the volume of bath or bottle.
    """
    if component.per is Per.FIBRE:
        if dry_g is None:
            raise BadInput(
                f"{component.name} is given in per cent of the fibre, whose weight is not known.",
                "Say how many grams of dry yarn there are.",
            )
        more_than_nothing("dry weight", dry_g, "g")
        return dry_g * component.amount / 100
    if liquor_l is None:
        raise BadInput(
            f"{component.name} is given in grams a litre, and the bath's volume is not known.",
            "Say how many litres the bath has, or its liquor ratio.",
        )
    more_than_nothing("bath", liquor_l, "L")
    return liquor_l * component.amount


def powder_g(standard_g: Decimal, strength: Decimal | None) -> Decimal:
    """What to weigh of a jar of this strength; not known is taken as that of the standard."""
    if strength is None:
        return standard_g
    more_than_nothing("strength of the powder", strength)
    return standard_g / strength
