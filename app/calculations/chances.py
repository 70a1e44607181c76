"""Chances in a mixed pool: how many of a handful drawn blindly come from the marked origin.

The counts of a pool are exact even where its skeins cannot be told apart, so the number among
those drawn follows the hypergeometric distribution, kept here as exact fractions.
"""

from fractions import Fraction
from math import comb


def exactly(hit: int, pool: int, marked: int, drawn: int) -> Fraction:
    """The chance that of `drawn` skeins exactly `hit` are among the `marked` ones of the pool."""
    if not 0 <= hit <= drawn:
        return Fraction(0)
    return Fraction(comb(marked, hit) * comb(pool - marked, drawn - hit), comb(pool, drawn))


def at_least_one(pool: int, marked: int, drawn: int) -> Fraction:
    """The chance that at least one of those drawn is a marked one."""
    return 1 - exactly(0, pool, marked, drawn)


def expected(pool: int, marked: int, drawn: int) -> Fraction:
    """How many marked ones are expected among those drawn."""
    return Fraction(marked * drawn, pool)


def least_and_most(pool: int, marked: int, drawn: int) -> tuple[int, int]:
    """The fewest and the most marked ones that those drawn can hold at all."""
    return max(0, drawn - (pool - marked)), min(marked, drawn)
