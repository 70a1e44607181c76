"""Winding yield, turns and relaxation.

The worked figures are common practice, no source; each was reckoned anew by hand.
"""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.winding import (
    build_up_m,
    checked_tex,
    fibre_g,
    grams_in,
    metres_in,
    relaxation_of,
    relaxed_length_m,
    shares,
    turns_for,
    winding_yield,
)

D = Decimal
SKEIN_M, MINI_M, END_WASTE_M = D("412.5"), D("82.5"), D(8)


def to(places: str, value: Decimal) -> Decimal:
    return value.quantize(D(places))


def test_a_cone_of_1462_g_gross_holds_5625_7_m() -> None:
    fibre = fibre_g(D(1462) - D(64), D("0.02"), D("0.13"), D("0.16"))
    assert to("0.1", fibre) == D("1406.4")
    assert to("0.1", metres_in(fibre, D(250))) == D("5625.7")


def test_that_cone_gives_13_skeins_and_3_minis() -> None:
    fibre = fibre_g(D(1398), D("0.02"), D("0.13"), D("0.16"))
    given_ = winding_yield(metres_in(fibre, D(250)), SKEIN_M, MINI_M, END_WASTE_M)
    assert (given_.skeins, given_.minis) == (13, 3)
    assert (to("0.1", given_.rest_m), to("0.1", given_.tail_m)) == (D("255.2"), D("7.7"))


def test_a_count_off_by_2_4_percent_costs_that_cone_two_minis() -> None:
    tex = checked_tex(D("25.6"), D(100))
    assert tex == 256
    length = metres_in(fibre_g(D(1398), D("0.02"), D("0.13"), D("0.16")), tex)
    given_ = winding_yield(length, SKEIN_M, MINI_M, END_WASTE_M)
    assert to("0.1", length) == D("5493.8")
    assert (given_.skeins, given_.minis, to("0.1", given_.tail_m)) == (13, 1, D("40.8"))


def test_net_weight_by_100_g_would_promise_a_skein_too_many() -> None:
    assert round(D(1398) / 100) == 14 > 13


def test_a_cone_of_1516_g_net_gives_14_skeins_and_leaves_317_5_m() -> None:
    length = metres_in(fibre_g(D(1516), D("0.02"), D("0.13"), D("0.16")), D(250))
    given_ = winding_yield(length, SKEIN_M, MINI_M, END_WASTE_M)
    assert (given_.skeins, to("0.1", given_.rest_m)) == (14, D("317.5"))


def test_400_m_at_3_percent_on_a_reel_of_1_50_m_take_275_turns() -> None:
    assert turns_for(D(400), D("0.03"), D("1.50")) == 275
    assert 275 * D("1.50") == SKEIN_M


def test_woollen_spun_at_7_percent_takes_287_turns_for_the_same_400_m() -> None:
    assert turns_for(D(400), D("0.07"), D("1.50")) == 287


def test_a_hung_girth_of_1_452_m_means_399_3_m_and_3_2_percent() -> None:
    assert 275 * D("1.452") == D("399.3")
    assert relaxation_of(D("1.50"), D("1.452")) == D("0.032")
    assert relaxed_length_m(SKEIN_M, D("0.032")) == D("399.3")


def test_a_layer_of_4_mm_adds_12_6_mm_a_turn_and_3_5_m_a_skein() -> None:
    assert to("0.0001", build_up_m(1, D("0.004"))) == D("0.0126")
    extra = build_up_m(275, D("0.004"))
    assert to("0.1", extra) == D("3.5")
    assert to("0.0001", extra / SKEIN_M) == D("0.0084")


def test_400_m_relaxed_weigh_103_1_g_so_100_g_are_388_m() -> None:
    assert to("0.001", grams_in(SKEIN_M, D(250))) == D("103.125")
    assert relaxed_length_m(metres_in(D(100), D(250)), D("0.03")) == 388


@pytest.mark.parametrize(
    ("tex", "put_up_g", "relaxation", "printed_m"),
    [
        (250, 100, "0.03", 388),
        (238, 100, "0.025", 410),
        (444, 100, "0.05", 214),
        (125, 50, "0.04", 384),
        (333, 100, "0.02", 294),
        (833, 100, "0.07", 112),
    ],
)
def test_each_base_prints_its_relaxed_length(
    tex: int, put_up_g: int, relaxation: str, printed_m: int
) -> None:
    """The demo's bases; invented, so this proves only that its figures agree."""
    assert round(relaxed_length_m(metres_in(D(put_up_g), D(tex)), D(relaxation))) == printed_m


def test_a_skein_over_a_join_is_62_and_38_percent_of_two_cones() -> None:
    assert [round(100 * share) for share in shares([D("255.2"), D("157.3")])] == [62, 38]


lengths = st.decimals("0", "9000", places=3)
wound = st.decimals("50", "900", places=3)


@given(lengths, wound, st.decimals("5", "90", places=3), st.decimals("0", "20", places=3))
def test_a_yield_uses_all_that_the_cone_holds_and_never_more(
    length: Decimal, skein: Decimal, mini: Decimal, waste: Decimal
) -> None:
    given_ = winding_yield(length, skein, mini, waste)
    used = given_.skeins * skein + given_.minis * mini + given_.tail_m
    assert used == max(length - waste, 0)
    assert 0 <= given_.tail_m < mini
    assert given_.rest_m < skein


@given(st.decimals("50", "900", places=2), st.decimals("0", "0.1", places=3))
def test_the_turns_never_fall_short_and_never_give_a_turn_too_many(
    target: Decimal, relaxation: Decimal
) -> None:
    turns = turns_for(target, relaxation, D("1.50"))
    nothing = D("1e-18")
    assert relaxed_length_m(turns * D("1.50"), relaxation) >= target - nothing
    assert relaxed_length_m((turns - 1) * D("1.50"), relaxation) < target


@given(lengths, st.decimals("50", "900", places=1))
def test_grams_and_metres_of_a_count_turn_into_each_other(length: Decimal, tex: Decimal) -> None:
    assert abs(metres_in(grams_in(length, tex), tex) - length) < D("1e-18")


@given(st.lists(st.decimals("0.1", "400", places=1), min_size=1, max_size=4))
def test_the_shares_of_a_join_make_the_whole_skein(parts: list[Decimal]) -> None:
    assert abs(sum(shares(parts)) - 1) < D("1e-20")
