"""What looks odd about a recipe: said at the desk, never refused.

The limits on dye are common practice, no source; the widest liquor ratio is that of the textbook
procedure for acid dyes on wool (1:50 for pale shades), the narrowest that of exhaust dyeing (10:1).
"""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from app.calculations.scaling import Component, Per

MOST_DYE = Decimal(5)  # percent of all dyes together
LEAST_DYE = Decimal("0.005")  # percent of one
RATIOS = (Decimal(10), Decimal(50))  # millilitres of bath a gram


_FORMS = {
    "sodium sulphate": "anhydrous or crystals: 1 g of the one is 2.27 g of the other",
    "sodium carbonate": "anhydrous or crystals: 1 g of the one is 2.70 g of the other",
    "acetic acid": "which strength: 5 % vinegar, or a stronger acid",
    "formic acid": "which strength, as the maker's label says",
}
"""What is sold in forms that are weighed differently; the factors are those of `assistants`."""


def forms_not_said(assistants: Iterable[tuple[str, str]]) -> tuple[str, ...]:
    """One sentence for each (substance, form) whose form decides the weight and is not said."""
    return tuple(
        f"Say of {name} {_FORMS[key]}."
        for name, form in assistants
        if not form and (key := name.casefold().replace("sulfate", "sulphate")) in _FORMS
    )


def doubts_about(dyes: Sequence[Component], liquor_ratio: Decimal | None = None) -> tuple[str, ...]:
    """One sentence for each thing that is unusual; none when all is as it mostly is."""
    on_fibre = [dye for dye in dyes if dye.per is Per.FIBRE]
    total = sum((dye.amount for dye in on_fibre), Decimal(0))
    doubts = [
        f"{dye.name} is {dye.amount} %: is the point in the right place?"
        for dye in on_fibre
        if dye.amount < LEAST_DYE
    ]
    if total > MOST_DYE:
        doubts.append(f"All dyes together are {total} %: even blacks take no more than {MOST_DYE}.")
    if liquor_ratio is not None and not RATIOS[0] <= liquor_ratio <= RATIOS[1]:
        doubts.append(
            f"The liquor ratio is {liquor_ratio}:1; most baths are {RATIOS[0]}:1 to {RATIOS[1]}:1."
        )
    return tuple(doubts)
