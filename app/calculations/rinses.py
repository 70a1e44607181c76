"""Rinsing: how much dye a rinse leaves, how many make it clear, and when it is bleeding.

Held water is not better known than to a tenth. The formula holds for loose dye only: dye that comes
out of the fibre meanwhile is bleeding, and no rinsing ends it. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from app.calculations.given import more_than_nothing, not_below_nothing
from app.problems import BadInput

CLEAR_MG_L = Decimal("0.5")  # looks clear, 20 cm deep in a white bowl
RINSES_BEFORE_DOUBT = 4

_HELD_DOUBT = Decimal("0.1")
_MOST_RINSES = 99


class After(StrEnum):
    """What to do after a rinse."""

    CLEAR = "clear"
    RINSE_AGAIN = "rinse again"
    BLEEDS = "it bleeds: back to acid and heat"
    NOT_FIXED = "not fixed: back to acid and heat?"


@dataclass(frozen=True, slots=True)
class Rinses:
    """How many rinses clear it: `number` as reckoned, `at_most` if more water is held than said."""

    number: int
    at_most: int
    left_mg_l: Decimal


def left_by_a_rinse(held_l: Decimal, rinse_l: Decimal) -> Decimal:
    """The share of the loose dye that is still there after one rinse."""
    more_than_nothing("water held by the yarn", held_l, "L")
    more_than_nothing("rinse", rinse_l, "L")
    return held_l / (held_l + rinse_l)


def rinses_to_clear(
    start_mg_l: Decimal, held_l: Decimal, rinse_l: Decimal, clear_mg_l: Decimal = CLEAR_MG_L
) -> Rinses:
    """The rinses until the water looks clear."""
    not_below_nothing("dye in the held water", start_mg_l, "mg/L")
    more_than_nothing("limit of clear", clear_mg_l, "mg/L")
    number, left = _count(start_mg_l, left_by_a_rinse(held_l, rinse_l), clear_mg_l)
    more_held = left_by_a_rinse(held_l * (1 + _HELD_DOUBT), rinse_l)
    return Rinses(number, _count(start_mg_l, more_held, clear_mg_l)[0], left)


def after(rinses_mg_l: Sequence[Decimal], clear_mg_l: Decimal = CLEAR_MG_L) -> After:
    """What to do, from how strong each rinse so far looked, the first one first."""
    for rinse in rinses_mg_l:
        not_below_nothing("strength of a rinse", rinse, "mg/L")
    if not rinses_mg_l:
        return After.RINSE_AGAIN
    if rinses_mg_l[-1] < clear_mg_l:
        return After.CLEAR
    if len(rinses_mg_l) > 1 and rinses_mg_l[-1] >= rinses_mg_l[-2]:
        return After.BLEEDS
    return After.NOT_FIXED if len(rinses_mg_l) >= RINSES_BEFORE_DOUBT else After.RINSE_AGAIN


def _count(start: Decimal, factor: Decimal, clear: Decimal) -> tuple[int, Decimal]:
    left = start
    for number in range(_MOST_RINSES + 1):
        if left < clear:
            return number, left
        left *= factor
    raise BadInput(
        f"{_MOST_RINSES} rinses of this size would not clear it.",
        "Look at the water held and at the rinse again, or take a larger rinse.",
    )
