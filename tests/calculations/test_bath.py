"""The bath against the pot. The worked figures are common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.bath import (
    fits,
    level_l,
    liquor_l,
    most_g,
    most_skeins,
    ratio_of,
    soaked_in_l,
    split,
    usable_l,
    water_to_add,
    widest_ratio,
)
from app.problems import BadInput, Refused

D = Decimal
POT_L, LARGE_POT_L, SKEIN_G, USUAL = D(20), D(40), D("103.1"), D(20)


def to(places: str, value: Decimal) -> Decimal:
    return value.quantize(D(places))


def test_602_g_at_20_to_1_stand_at_12_5_l_of_15_usable() -> None:
    bath = liquor_l(D(602), USUAL)
    assert bath == D("12.04")
    assert to("0.01", level_l(bath, D(602)) - bath) == D("0.46")
    assert to("0.1", level_l(bath, D(602))) == D("12.5")
    assert usable_l(POT_L) == 15
    assert fits(D(602), USUAL, POT_L)


def test_skeins_soaked_at_100_percent_bring_0_6_l_so_11_4_are_added() -> None:
    soaked = soaked_in_l(D(602), D(1))
    assert to("0.1", soaked) == D("0.6")
    assert to("0.1", water_to_add(liquor_l(D(602), USUAL), [soaked])) == D("11.4")


def test_903_g_fit_at_15_to_1_only() -> None:
    """Nine of the six skeins that weigh 602 g."""
    at = {ratio: level_l(liquor_l(D(903), D(ratio)), D(903)) for ratio in (15, 16, 20)}
    assert [to("0.1", at[ratio]) for ratio in (15, 16)] == [D("14.2"), D("15.1")]
    assert to("0.01", at[20]) == D("18.75")
    assert [fits(D(903), D(ratio), POT_L) for ratio in (15, 16, 20)] == [True, False, False]
    assert widest_ratio(D(903), POT_L) == 15


def test_most_at_20_to_1_is_722_g_or_7_skeins_at_14_98_l() -> None:
    assert to("1", most_g(POT_L, USUAL)) == 722
    assert most_skeins(POT_L, USUAL, SKEIN_G) == 7
    seven = 7 * SKEIN_G
    assert to("0.01", level_l(liquor_l(seven, USUAL), seven)) == D("14.98")
    assert not fits(8 * SKEIN_G, USUAL, POT_L)


def test_14_skeins_are_two_pots_and_two_lots() -> None:
    pots = split(14, SKEIN_G, USUAL, POT_L)
    assert (pots.skeins, pots.lots) == ((7, 7), 2)
    assert split(7, SKEIN_G, USUAL, POT_L).lots == 1


def test_15_skeins_are_three_pots_of_5_and_8_are_two_of_4() -> None:
    assert split(15, SKEIN_G, USUAL, POT_L).skeins == (5, 5, 5)
    assert split(8, SKEIN_G, USUAL, POT_L).skeins == (4, 4)


def test_a_bath_that_just_reaches_the_mark_fits() -> None:
    """1310 g take 1 L of room; with 13.1 L of bath that is three quarters of 18.8 L."""
    assert fits(D(1310), D(10), D("18.8"))
    assert not fits(D(1310), D(10), D("18.79"))


def test_the_large_pot_takes_14_skeins_at_once() -> None:
    assert most_skeins(LARGE_POT_L, USUAL, SKEIN_G) == 14


def test_the_ratio_of_a_bath_as_it_stands_is_told() -> None:
    assert ratio_of(D("12.04"), D(602)) == 20


def test_more_liquid_than_the_bath_is_refused() -> None:
    with pytest.raises(BadInput, match="more than the whole bath"):
        water_to_add(D(10), [D(6), D("4.1")])
    assert water_to_add(D(10), [D(6), D(4)]) == 0


def test_a_skein_too_large_for_the_pot_is_refused_with_the_way_out() -> None:
    with pytest.raises(Refused, match="Not one skein") as refused:
        split(3, D(800), USUAL, POT_L)
    assert refused.value.next_step == "Take a larger pot or a smaller ratio."
    assert widest_ratio(D(20_000), POT_L) == 0


def test_wrong_figures_are_refused() -> None:
    with pytest.raises(BadInput, match="liquor ratio"):
        liquor_l(D(602), D(0))
    with pytest.raises(BadInput, match="dry weight"):
        liquor_l(D(-1), USUAL)
    with pytest.raises(BadInput, match="dry weight"):
        soaked_in_l(D(0), D(1))
    with pytest.raises(BadInput, match="pick-up"):
        soaked_in_l(D(602), D(-1))
    with pytest.raises(BadInput, match="size of the pot"):
        most_g(D(0), USUAL)
    with pytest.raises(BadInput, match="dry weight of a skein"):
        most_skeins(POT_L, USUAL, D(0))
    with pytest.raises(BadInput, match="number of skeins"):
        split(0, SKEIN_G, USUAL, POT_L)
    with pytest.raises(BadInput, match="already in"):
        water_to_add(D(10), [D(-1)])


@given(
    st.integers(1, 200),
    st.decimals("10", "300", places=1),
    st.decimals("10", "40", places=0),
    st.decimals("10", "80", places=0),
)
def test_a_split_loses_no_skein_overfills_no_pot_and_uses_no_pot_too_many(
    skeins: int, skein_g: Decimal, ratio: Decimal, pot_l: Decimal
) -> None:
    if not most_skeins(pot_l, ratio, skein_g):
        return
    pots = split(skeins, skein_g, ratio, pot_l)
    assert sum(pots.skeins) == skeins
    assert max(pots.skeins) - min(pots.skeins) <= 1
    assert all(fits(count * skein_g, ratio, pot_l) for count in pots.skeins)
    assert (pots.lots - 1) * most_skeins(pot_l, ratio, skein_g) < skeins


@given(st.decimals("10", "5000", places=0), st.decimals("5", "80", places=0))
def test_the_widest_ratio_fits_and_the_next_does_not(dry_g: Decimal, pot_l: Decimal) -> None:
    ratio = widest_ratio(dry_g, pot_l)
    assert ratio == 0 or fits(dry_g, D(ratio), pot_l)
    assert not fits(dry_g, D(ratio + 1), pot_l)
