"""Chances in a mixed pool. The worked figures are common practice; the counting is exact."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.chances import at_least_one, exactly, expected, least_and_most


def test_a_buyer_of_4_out_of_7_and_5_holds_one_of_the_5_with_92_9_percent() -> None:
    assert at_least_one(12, 5, 4) == 1 - Fraction(35, 495)
    assert round(100 * float(at_least_one(12, 5, 4)), 1) == 92.9
    assert round(float(expected(12, 5, 4)), 2) == 1.67
    assert least_and_most(12, 5, 4) == (0, 4)


def test_six_of_twelve_not_known_which_are_six_expected_when_all_are_held() -> None:
    assert expected(12, 6, 12) == 6
    assert least_and_most(12, 6, 12) == (6, 6)


@pytest.mark.parametrize(
    ("pool", "marked", "drawn", "chance"),
    [(12, 0, 4, 0), (12, 12, 1, 1), (12, 9, 4, 1), (1, 1, 0, 0)],
)
def test_what_is_certain_is_certain(pool: int, marked: int, drawn: int, chance: int) -> None:
    assert at_least_one(pool, marked, drawn) == chance


@st.composite
def pools(draw: st.DrawFn) -> tuple[int, int, int]:
    pool = draw(st.integers(1, 40))
    return pool, draw(st.integers(0, pool)), draw(st.integers(0, pool))


@given(pools())
def test_the_chances_make_one_and_their_mean_is_the_expected_number(
    case: tuple[int, int, int],
) -> None:
    least, most = least_and_most(*case)
    chances = {hit: exactly(hit, *case) for hit in range(case[0] + 1)}
    assert sum(chances.values()) == 1
    assert sum(hit * chance for hit, chance in chances.items()) == expected(*case)
    assert {hit for hit, chance in chances.items() if chance} == set(range(least, most + 1))
