"""Painting in zones. The worked figures are common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.zones import (
    Zone,
    dye_a_skein_g,
    fillings,
    fit,
    room_ml,
    stronger,
    total_ml,
)
from app.problems import BadInput

D = Decimal
ZONES = (
    Zone("A", D(60), D("0.5")),
    Zone("B", D(45), D(1)),
    Zone("C", D(30), D("0.25")),
    Zone("D", D(12), D(2)),
)
SKEIN_G = D(100)


def test_four_zones_of_147_ml_carry_1_065_g_that_is_1_065_percent() -> None:
    assert total_ml(ZONES) == 147
    assert dye_a_skein_g(ZONES) == D("1.065")
    assert dye_a_skein_g(ZONES) / SKEIN_G * 100 == D("1.065")


def test_eight_skeins_and_a_tenth_dead_fill_four_bottles() -> None:
    filled = fillings(ZONES, 8)
    assert [one.volume_ml for one in filled] == [528, 396, 264, D("105.6")]
    powders = [one.powder_g().quantize(D("0.01")) for one in filled]
    assert powders == [D("2.64"), D("3.96"), D("0.66"), D("2.11")]


def test_bottle_a_from_2_percent_stock_is_132_ml_and_396_of_water() -> None:
    assert fillings(ZONES, 8)[0].from_stock_ml(D(2)) == (132, 396)


def test_a_stock_too_weak_for_a_bottle_is_refused() -> None:
    with pytest.raises(BadInput, match="too weak for bottle D"):
        fillings(ZONES, 8)[3].from_stock_ml(D(1))


def test_weak_powder_fills_the_same_bottle_with_more() -> None:
    assert fillings(ZONES, 8)[1].powder_g(D("0.9")) == D("4.4")


def test_at_80_percent_pick_up_there_is_room_for_140_ml_and_7_puddle() -> None:
    fitted = fit(ZONES, SKEIN_G, D("0.80"))
    assert (fitted.room_ml, fitted.over_ml) == (140, 7)


def test_spun_to_70_percent_there_is_room_for_150_ml() -> None:
    """Enough, and 73 % would just do."""
    assert room_ml(SKEIN_G, D("0.70")) == 150
    assert fit(ZONES, SKEIN_G, D("0.70")).over_ml == 0
    assert fit(ZONES, SKEIN_G, D("0.80")).pick_up_at_most == D("0.73")


def test_or_zone_c_is_cut_by_7_ml_at_higher_strength() -> None:
    cut = fit(ZONES, SKEIN_G, D("0.80")).cut
    assert cut is not None
    assert (cut.bottle, cut.ml) == ("C", 23)
    assert cut.percent.quantize(D("0.001")) == D("0.326")
    assert abs(cut.dye_g - D("0.075")) < D("1e-20")


def test_a_zone_that_would_lose_more_than_half_is_not_cut() -> None:
    fitted = fit((Zone("A", D(150), D(1)), Zone("B", D(20), D("0.1"))), SKEIN_G, D("0.80"))
    assert fitted.over_ml == 30
    assert fitted.cut is not None
    assert fitted.cut.bottle == "A"


def test_a_skein_may_have_to_be_bone_dry() -> None:
    assert fit((Zone("A", D(220), D(1)),), SKEIN_G, D("0.5")).pick_up_at_most == 0


def test_where_nothing_helps_nothing_is_pretended() -> None:
    fitted = fit((Zone("A", D(300), D(1)),), SKEIN_G, D("1.0"))
    assert (fitted.over_ml, fitted.pick_up_at_most, fitted.cut) == (180, None, None)


def test_wrong_figures_are_refused() -> None:
    with pytest.raises(BadInput, match="volume of zone A"):
        Zone("A", D(0), D(1))
    with pytest.raises(BadInput, match="strength of zone A"):
        Zone("A", D(10), D(-1))
    with pytest.raises(BadInput, match="number of skeins"):
        fillings(ZONES, 0)
    with pytest.raises(BadInput, match="strength of the powder"):
        fillings(ZONES, 8)[0].powder_g(D(0))
    with pytest.raises(BadInput, match="dead volume"):
        fillings(ZONES, 8, D("-0.1"))
    with pytest.raises(BadInput, match="volume to cut"):
        stronger(ZONES[0], D(-1))
    with pytest.raises(BadInput, match="dry weight of the skein"):
        room_ml(D(0), D("0.8"))
    with pytest.raises(BadInput, match="volume left of zone A"):
        stronger(ZONES[0], D(60))


LAID = st.lists(
    st.builds(
        Zone,
        st.sampled_from("ABCDE"),
        st.integers(1, 120).map(D),
        st.decimals("0.05", "4", places=2),
    ),
    min_size=1,
    max_size=6,
)


@given(LAID, st.integers(1, 60))
def test_every_zone_gets_its_bottle_and_twice_the_skeins_twice_the_dye(
    zones: list[Zone], skeins: int
) -> None:
    once, twice = fillings(zones, skeins), fillings(zones, 2 * skeins)
    assert [one.zone for one in once] == zones
    assert [2 * one.dye_g for one in once] == [one.dye_g for one in twice]
    assert sum(one.dye_g for one in once) == dye_a_skein_g(zones) * skeins * D("1.1")


@given(LAID, st.decimals("0.4", "1.9", places=2))
def test_what_is_advised_fits_and_keeps_the_dye(zones: list[Zone], pick_up: Decimal) -> None:
    fitted = fit(zones, SKEIN_G, pick_up)
    if fitted.pick_up_at_most is not None:
        assert fit(zones, SKEIN_G, min(pick_up, fitted.pick_up_at_most)).over_ml == 0
    if fitted.cut is not None:
        was = [zone for zone in zones if abs(zone.dye_g - fitted.cut.dye_g) < D("1e-20")]
        assert total_ml(zones) - fitted.over_ml == fitted.room_ml
        assert fitted.cut.ml in [zone.ml - fitted.over_ml for zone in was]
