"""Rinsing and bleeding. The worked figures are common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.rinses import After, after, left_by_a_rinse, rinses_to_clear
from app.problems import BadInput

D = Decimal
HELD_L, RINSE_L = D("0.602"), D(6)


def test_0_602_l_held_and_6_l_of_rinse_leave_0_0912() -> None:
    assert left_by_a_rinse(HELD_L, RINSE_L).quantize(D("0.0001")) == D("0.0912")


def test_from_10_mg_two_rinses_clear_it() -> None:
    factor = left_by_a_rinse(HELD_L, RINSE_L)
    assert (10 * factor).quantize(D("0.01")) == D("0.91")
    rinses = rinses_to_clear(D(10), HELD_L, RINSE_L)
    assert (rinses.number, rinses.at_most) == (2, 2)
    assert rinses.left_mg_l.quantize(D("0.001")) == D("0.083")


def test_from_60_mg_two_just_do_and_it_may_take_three() -> None:
    rinses = rinses_to_clear(D(60), HELD_L, RINSE_L)
    assert (60 * left_by_a_rinse(HELD_L, RINSE_L)).quantize(D("0.1")) == D("5.5")
    assert (rinses.number, rinses.at_most) == (2, 3)
    assert rinses.left_mg_l.quantize(D("0.001")) == D("0.499")


def test_clear_water_needs_no_rinse() -> None:
    assert rinses_to_clear(D("0.4"), HELD_L, RINSE_L).number == 0


@pytest.mark.parametrize(
    ("seen", "what_to_do"),
    [
        ([], After.RINSE_AGAIN),
        (["5.5"], After.RINSE_AGAIN),
        (["5.5", "0.45"], After.CLEAR),
        (["5.5", "2", "2"], After.BLEEDS),
        (["5.5", "2", "3"], After.BLEEDS),
        (["5.5", "0.3", "0.3"], After.CLEAR),
        (["9", "5", "3", "2"], After.NOT_FIXED),
    ],
)
def test_a_rinse_as_strong_as_the_one_before_is_bleeding(
    seen: list[str], what_to_do: After
) -> None:
    assert after([D(one) for one in seen]) is what_to_do


def test_bleeding_sends_it_back_to_acid_and_heat() -> None:
    assert After.BLEEDS == "it bleeds: back to acid and heat"


def test_a_rinse_of_a_spoonful_is_refused_and_not_counted_for_ever() -> None:
    with pytest.raises(BadInput, match="99 rinses of this size would not clear it"):
        rinses_to_clear(D(60), D(3), D("0.01"))
    with pytest.raises(BadInput, match="99 rinses"):
        rinses_to_clear(D(60), D("1e30"), D("0.01"))


def test_wrong_figures_are_refused() -> None:
    with pytest.raises(BadInput, match="rinse"):
        left_by_a_rinse(HELD_L, D(0))
    with pytest.raises(BadInput, match="held"):
        left_by_a_rinse(D(0), RINSE_L)
    with pytest.raises(BadInput, match="dye in the held water"):
        rinses_to_clear(D(-1), HELD_L, RINSE_L)
    with pytest.raises(BadInput, match="limit of clear"):
        rinses_to_clear(D(10), HELD_L, RINSE_L, D(0))
    with pytest.raises(BadInput, match="strength of a rinse"):
        after([D(-1)])


@given(
    st.decimals("0", "500", places=1),
    st.decimals("0.1", "3", places=1),
    st.decimals("1", "30", places=1),
)
def test_the_number_is_the_least_that_clears_it(
    start: Decimal, held: Decimal, rinse: Decimal
) -> None:
    rinses, factor = rinses_to_clear(start, held, rinse), left_by_a_rinse(held, rinse)
    assert rinses.left_mg_l < D("0.5")
    assert rinses.number == 0 or rinses.left_mg_l / factor >= D("0.5") - D("1e-20")
    assert rinses.at_most >= rinses.number
