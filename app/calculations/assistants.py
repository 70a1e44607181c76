"""Salts and acids that are sold with and without water of crystals.

A recipe says which form it means; the factor between two forms follows from their molar masses
(standard atomic weights, from memory). Amounts are scaled as every line of a recipe is.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from app.calculations.given import not_below_nothing

_ATOMS = {
    "H": Decimal("1.008"),
    "C": Decimal("12.011"),
    "O": Decimal("15.999"),
    "Na": Decimal("22.990"),
    "S": Decimal("32.06"),
}
_WATER = 2 * _ATOMS["H"] + _ATOMS["O"]


class Form(StrEnum):
    """How a substance lies in its tub."""

    ANHYDROUS = "anhydrous"
    CRYSTALS = "crystals"


@dataclass(frozen=True, slots=True)
class Substance:
    """What it is made of, and the waters in one formula of its crystals."""

    name: str
    atoms: tuple[tuple[str, int], ...]
    waters: int

    @property
    def anhydrous_g(self) -> Decimal:
        """The molar mass without water, g/mol."""
        return sum((_ATOMS[atom] * count for atom, count in self.atoms), Decimal(0))

    @property
    def factor(self) -> Decimal:
        """The crystals that stand for one gram of the anhydrous form."""
        return 1 + self.waters * _WATER / self.anhydrous_g

    @property
    def underdose(self) -> Decimal:
        """The share that is missing where crystals are weighed as if they were anhydrous."""
        return 1 - 1 / self.factor


SODIUM_SULPHATE = Substance("sodium sulphate", (("Na", 2), ("S", 1), ("O", 4)), 10)
SODA_ASH = Substance("sodium carbonate", (("Na", 2), ("C", 1), ("O", 3)), 10)
CITRIC_ACID = Substance("citric acid", (("C", 6), ("H", 8), ("O", 7)), 1)


def in_form(wanted_g: Decimal, substance: Substance, meant: Form, at_hand: Form) -> Decimal:
    """What to weigh of the form at hand where a recipe means another."""
    not_below_nothing(f"weight of {substance.name}", wanted_g, "g")
    if meant is at_hand:
        return wanted_g
    factor = substance.factor
    return wanted_g * factor if at_hand is Form.CRYSTALS else wanted_g / factor
