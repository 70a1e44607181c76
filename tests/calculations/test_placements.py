"""A pool summed over every way to place it, against every way written out one by one."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations
from math import comb, exp, log

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import hypergeom

from app.calculations.chances import exactly
from app.calculations.evidence import Pooled, Seen, Tally, tally
from app.calculations.placements import chance_of, log_placed, placed

QUARTER = Fraction(1, 4)
RATES = st.fractions(Fraction(1, 40), Fraction(39, 40), max_denominator=40)


def seen_by_hand(seen: Seen, rate: Fraction, tells: Fraction) -> Fraction:
    table = {"faulty": rate, "good": 1 - rate, "silent": (1 - rate) + rate * (1 - tells)}
    return table.get(seen.value, Fraction(1))


def one_by_one(
    members: Sequence[Seen], given: int, touched: Fraction, others: Fraction, tells: Fraction
) -> Fraction:
    """The mean over all choices of the members that went through, no two of them lumped."""
    whole, ways = Fraction(0), 0
    for chosen in combinations(range(len(members)), given):
        product = Fraction(1)
        for place, seen in enumerate(members):
            product *= seen_by_hand(seen, touched if place in chosen else others, tells)
        whole, ways = whole + product, ways + 1
    return whole / ways


@st.composite
def pools(draw: st.DrawFn) -> tuple[list[Seen], int]:
    members = draw(st.lists(st.sampled_from(Seen), max_size=6))
    return members, draw(st.integers(0, len(members)))


@pytest.mark.long
@settings(max_examples=500, deadline=None)
@given(pools(), RATES, RATES, RATES)
def test_lumped_placements_are_exactly_the_placements_one_by_one(
    case: tuple[list[Seen], int], touched: Fraction, others: Fraction, tells: Fraction
) -> None:
    members, given = case
    expected = one_by_one(members, given, touched, others, tells)
    pool = Pooled(tally(members), given)
    assert placed(pool, touched, others, tells) == expected
    assert log_placed(pool, touched, others, tells) == pytest.approx(log(expected), abs=1e-9)


@pytest.mark.parametrize("seen", list(Seen))
def test_a_skein_is_faulty_or_good_or_one_in_four_tells(seen: Seen) -> None:
    rate = Fraction(3, 5)
    assert chance_of(seen, rate, QUARTER) == seen_by_hand(seen, rate, QUARTER)
    assert chance_of(Seen.SILENT, rate, QUARTER) == 1 - Fraction(3, 20)


def test_six_of_twelve_with_two_faulty_as_in_the_mixed_pot() -> None:
    """Two of the two among the six in 15 of 66 ways, one in 36, none in 15."""
    pool, high, low = Pooled(Tally(faulty=2, unseen=10), 6), Fraction(3, 5), Fraction(1, 50)
    ways = (15 * high**2 + 36 * high * low + 15 * low**2) / 66
    assert placed(pool, high, low, QUARTER) == ways
    assert [exactly(hit, 12, 6, 2) for hit in (2, 1, 0)] == [
        Fraction(15, 66), Fraction(36, 66), Fraction(15, 66)
    ]


@given(st.integers(1, 30), st.data())
def test_the_ways_are_those_of_the_hypergeometric_distribution(
    pool: int, data: st.DataObject
) -> None:
    marked, drawn = data.draw(st.integers(0, pool)), data.draw(st.integers(0, pool))
    hit = data.draw(st.integers(max(0, drawn - (pool - marked)), min(marked, drawn)))
    tiny = Fraction(1, 10**40)
    seen = Tally(faulty=hit, good=drawn - hit, unseen=pool - drawn)
    chance = comb(drawn, hit) * placed(Pooled(seen, marked), 1 - tiny, tiny, QUARTER)
    assert float(chance) == pytest.approx(hypergeom.pmf(hit, pool, marked, drawn), rel=1e-9)


def test_a_pool_of_three_hundred_faulty_skeins_does_not_underflow() -> None:
    pool = Pooled(Tally(faulty=300), 1)
    found = log_placed(pool, Fraction(9, 10), Fraction(1, 200), QUARTER)
    assert found == pytest.approx(log(0.9) + 299 * log(0.005), rel=1e-12)
    assert exp(found) == 0


def test_an_empty_pool_says_nothing() -> None:
    assert placed(Pooled(Tally(), 0), Fraction(1, 2), Fraction(1, 9), QUARTER) == 1
