"""Plain rates and exact tests beside the ranking, checked by another library and by counting."""

from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import false_discovery_control, fisher_exact

from app.calculations.plain_tests import (
    adjusted_for_many,
    apart_by_chance,
    more_than_by_chance,
    plain_tests,
)
from tests.calculations.suspect_cases import CONE_A, FINAL, LOT_2, WASH_1, thirty_two

COUNTS = st.integers(0, 25)


@settings(max_examples=1000, deadline=None)
@given(COUNTS, COUNTS, COUNTS, COUNTS)
def test_the_exact_test_is_that_of_another_library(a: int, b: int, c: int, d: int) -> None:
    table = [[a, b], [c, d]]
    one_sided = fisher_exact(table, alternative="greater").pvalue
    assert float(more_than_by_chance(a, b, c, d)) == pytest.approx(one_sided, rel=1e-8)
    two_sided = fisher_exact(table, alternative="two-sided").pvalue
    assert float(apart_by_chance(a, b, c, d)) == pytest.approx(two_sided, rel=1e-8)


@given(*[st.integers(0, 3)] * 4)
def test_it_is_the_share_of_all_ways_to_deal_out_the_faulty_ones(
    a: int, b: int, c: int, d: int
) -> None:
    deals = [
        sum(place < a + b for place in faulty)
        for faulty in combinations(range(a + b + c + d), a + c)
    ]
    assert more_than_by_chance(a, b, c, d) == Fraction(sum(n >= a for n in deals), len(deals))


@given(st.lists(st.fractions(0, 1, max_denominator=1000), min_size=1, max_size=40))
def test_the_adjustment_is_that_of_another_library(chances: list[Fraction]) -> None:
    theirs = false_discovery_control([float(one) for one in chances])
    assert [float(one) for one in adjusted_for_many(chances)] == pytest.approx(list(theirs))


def test_nothing_is_adjusted_where_nothing_is_tested() -> None:
    assert adjusted_for_many([]) == ()


def test_of_the_32_skeins_no_test_calls_anything_guilty() -> None:
    """The exact test sees the lot and its cone alike, and after adjustment says nothing at all."""
    tested = plain_tests(thirty_two(FINAL))
    assert {tested[0].suspect, tested[1].suspect} == {CONE_A, LOT_2}
    of_lot, of_wash = (next(t for t in tested if t.suspect == s) for s in (LOT_2, WASH_1))
    assert (of_lot.rate, of_lot.others_rate) == (Fraction(3, 8), Fraction(2, 24))
    assert (of_wash.rate, of_wash.others_rate) == (Fraction(3, 16), Fraction(2, 16))
    assert of_lot.chance == more_than_by_chance(3, 1, 2, 12)
    assert min(one.adjusted for one in tested) > Fraction(1, 20)
