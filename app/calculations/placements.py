"""A pool whose skeins cannot be told apart: the chance of what was seen, over every way it can be.

Of a pool of N skeins exactly n went through a suspect. Each of the C(N, n) ways to place them is as
likely as any other. Skeins that were seen alike are alike, so the ways are summed as products of
binomials (whole numbers, exact), not one by one.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import lru_cache
from math import comb, lcm, log

from app.calculations.evidence import Pooled, Seen


def chance_of(seen: Seen, rate: Fraction, tells: Fraction) -> Fraction:
    """How likely a skein is seen so, where it is faulty at this rate and buyers tell so often."""
    match seen:
        case Seen.FAULTY:
            return rate
        case Seen.GOOD:
            return 1 - rate
        case Seen.SILENT:
            return 1 - tells * rate
        case Seen.UNSEEN:
            return Fraction(1)


def placed(pool: Pooled, touched: Fraction, others: Fraction, tells: Fraction) -> Fraction:
    """The chance of what was seen of a pool: those of it that went through at the one rate."""
    return Fraction(*_over_all_ways(pool, touched, others, tells))


def log_placed(pool: Pooled, touched: Fraction, others: Fraction, tells: Fraction) -> float:
    """The natural logarithm of `placed`; safe however small the chance is."""
    ways, all_ways = _over_all_ways(pool, touched, others, tells)
    return log(ways) - log(all_ways)


def _over_all_ways(
    pool: Pooled, touched: Fraction, others: Fraction, tells: Fraction
) -> tuple[int, int]:
    whole, chances = _in_whole_numbers(touched, others, tells)
    ways = [1]
    for count, (mine, theirs) in zip(pool.seen, chances, strict=True):
        if count:
            ways = _product(ways, _so_many_mine(count, mine, theirs), pool.given)
    return ways[pool.given], comb(pool.seen.total, pool.given) * whole**pool.seen.total


@lru_cache
def _in_whole_numbers(
    touched: Fraction, others: Fraction, tells: Fraction
) -> tuple[int, tuple[tuple[int, int], ...]]:
    """A common denominator, and over it the chances of being seen so on either side."""
    chances = [(chance_of(one, touched, tells), chance_of(one, others, tells)) for one in Seen]
    whole = lcm(*(chance.denominator for pair in chances for chance in pair))
    return whole, tuple((int(mine * whole), int(theirs * whole)) for mine, theirs in chances)


def _so_many_mine(count: int, mine: int, theirs: int) -> Iterable[int]:
    """For 0, 1, ... of `count` alike skeins that went through: the ways, times their chances."""
    return [comb(count, n) * mine**n * theirs ** (count - n) for n in range(count + 1)]


def _product(one: Sequence[int], other: Iterable[int], most: int) -> list[int]:
    """The coefficients of the product of two polynomials, up to x to the power of `most`."""
    result = [0] * (most + 1)
    for m, b in enumerate(other):
        for n, a in enumerate(one[: most + 1 - m] if m <= most else ()):
            result[n + m] += a * b
    return result
