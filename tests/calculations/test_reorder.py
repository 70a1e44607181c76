"""More of a lot: common practice, no source. The rule of succession is Laplace's."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.reorder import Fabric, blending, need, redye_chance, still_needed_m
from app.problems import BadInput

D = Decimal
FABRIC = Fabric(D(27), D(36), D("1.30"))


def test_1640_m_at_388_m_are_4_23_skeins_and_with_the_allowance_five() -> None:
    assert f"{need(D(1640), D(388), D(0)).exact:.2f}" == "4.23"
    wanted = need(D(1640), D(388))
    assert (wanted.metres, wanted.skeins) == (D(1722), 5)
    assert not wanted.only_just()


def test_three_skeins_for_62_percent_leave_713_m_which_two_skeins_only_just_are() -> None:
    left = still_needed_m(D(3), D(388), D("0.62"))
    assert (f"{3 * 388 + left:.0f}", f"{left:.0f}") == ("1877", "713")
    wanted = need(left, D(388), D("0.08"))
    assert (f"{wanted.exact:.2f}", wanted.skeins) == ("1.99", 2)
    assert wanted.only_just()
    assert not wanted.only_just(spare=D("0.01"))


def test_a_whole_number_of_skeins_is_not_counted_up_and_a_finished_piece_needs_nothing() -> None:
    assert need(D(776), D(388), D(0)).skeins == 2
    assert still_needed_m(D(3), D(388), D(1)) == 0
    assert need(D(0), D(388)).skeins == 0


def test_61_m_of_each_lot_must_be_left_for_blending() -> None:
    zone = blending(FABRIC, D(120), D(8))
    assert zone.rows == 29
    assert f"{zone.m_a_row:.2f}" == "4.21"
    assert f"{zone.all_m:.0f}" == "122"
    assert f"{zone.each_m:.0f}" == "61"


def test_a_redye_comes_near_in_38_percent_and_in_two_tries_in_60() -> None:
    assert redye_chance(4, 11) == Fraction(5, 13)
    assert redye_chance(4, 11, tries=2) == 1 - Fraction(8, 13) * Fraction(9, 14)
    said = [f"{float(redye_chance(4, 11, tries)):.0%}" for tries in (1, 2)]
    assert said == ["38%", "60%"]


def test_a_colourway_without_history_is_an_even_chance_and_none_is_ever_certain() -> None:
    assert redye_chance(0, 0) == Fraction(1, 2)
    assert redye_chance(30, 30) < 1


@given(st.integers(0, 40), st.integers(0, 40), st.integers(1, 5))
def test_more_tries_and_a_better_history_never_lessen_the_chance(
    near: int, others: int, tries: int
) -> None:
    chance = redye_chance(near, near + others, tries)
    assert 0 < chance < redye_chance(near, near + others, tries + 1) < 1
    assert chance < redye_chance(near + 1, near + 1 + others, tries)


@pytest.mark.parametrize(("near", "lots", "tries"), [(5, 4, 1), (-1, 4, 1), (1, 4, 0)])
def test_a_history_that_cannot_be_is_refused(near: int, lots: int, tries: int) -> None:
    with pytest.raises(BadInput, match="cannot be"):
        redye_chance(near, lots, tries)


@given(st.decimals(0, 5000, places=1), st.decimals(1, 900, places=1), st.decimals(0, 1, places=2))
def test_the_skeins_are_enough_and_one_less_is_not(
    metres: Decimal, skein: Decimal, allowance: Decimal
) -> None:
    wanted = need(metres, skein, allowance)
    assert wanted.skeins * skein >= wanted.metres - D("1e-9")
    assert (wanted.skeins - 1) * skein < wanted.metres or wanted.skeins == 0


@pytest.mark.parametrize(
    ("what", "reckon"),
    [
        ("length needed", lambda: need(D(-1), D(388))),
        ("length of a skein", lambda: need(D(1), D(0))),
        ("allowance", lambda: need(D(1), D(388), D(-1))),
        ("number of skeins used", lambda: still_needed_m(D(0), D(388), D("0.5"))),
        ("share of the piece", lambda: still_needed_m(D(1), D(388), D("1.2"))),
        ("share of the piece", lambda: still_needed_m(D(1), D(388), D(0))),
        ("number of rows", lambda: Fabric(D(27), D(0), D(1))),
        ("width of the piece", lambda: blending(FABRIC, D(0), D(8))),
        ("height of the zone", lambda: blending(FABRIC, D(120), D("NaN"))),
    ],
)
def test_what_cannot_be_is_refused_by_name(what: str, reckon: object) -> None:
    assert callable(reckon)
    with pytest.raises(BadInput, match=what):
        reckon()
