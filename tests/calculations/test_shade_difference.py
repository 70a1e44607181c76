"""Differences of colour. The lots are invented; the limits are common practice, no source."""

import subprocess
import sys
from math import dist

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from app.calculations.shade import Colour, Viewing
from app.calculations.shade_difference import (
    Difference,
    apart,
    ciede2000,
    cmc,
    difference,
    differs_by_lamp,
    doubts,
    drift,
    mean_of,
)
from app.problems import BadInput
from tests.calculations.shades import COLOURS, DRY, SHOP, TEAL, WET, colour

NAVY, NEXT_NAVY = colour(25.1, 8.0, -20.5), colour(26.2, 7.4, -19.3)


def far(one: Colour, other: Colour) -> str:
    return f"{difference(one, other).ciede2000:.2f}"


def test_two_navies_are_1_06_apart_and_1_10_in_cmc_though_1_73_plainly() -> None:
    navies = difference(NAVY, NEXT_NAVY)
    assert (f"{navies.ciede2000:.2f}", f"{navies.cmc:.2f}") == ("1.06", "1.10")
    assert f"{dist(NAVY.lab, NEXT_NAVY.lab):.2f}" == "1.73"


def test_a_mean_of_4_against_a_mean_of_4_is_sure_to_half_a_unit() -> None:
    lots = difference(TEAL["P"], TEAL["Q"])
    assert lots.uncertainty == pytest.approx(2 * 0.35 / 4**0.5 * 2**0.5)
    assert str(lots) == "0.5 ± 0.5"
    assert f"{lots.at_worst:.1f}" == "1.0"


def test_single_readings_are_twice_as_unsure() -> None:
    one, other = (colour(50, 0, 0, readings=1), colour(50, 0, 1, readings=1))
    assert difference(one, other).uncertainty == pytest.approx(0.99, abs=0.005)
    assert difference(one, other, error_of_a_reading=0.1).uncertainty == pytest.approx(0.283, 0.01)


@pytest.mark.parametrize(
    ("pair", "printed"),
    [
        ("PQ", "0.47"), ("QR", "0.57"), ("RS", "0.66"), ("ST", "0.70"), ("TV", "0.38"),
        ("UV", "3.07"),
    ],
)
def test_the_eight_teal_lots_are_so_far_apart(pair: str, printed: str) -> None:
    assert far(TEAL[pair[0]], TEAL[pair[1]]) == printed


def test_lots_of_a_weak_jar_a_stained_wash_and_a_yellow_cone_are_so_far_off() -> None:
    good, weak, weak_too = (
        colour(48.2, -36.6, 3.3), colour(50.0, -34.9, 5.9), colour(49.7, -34.9, 5.9)
    )
    assert (far(good, weak), far(weak, weak_too)) == ("2.57", "0.30")
    assert f"{difference(colour(48.3, -36.6, 3.3), good).ciede2000:.2f}" == "0.10"
    assert far(colour(65.5, 6.6, 4.0), colour(64.5, 8.5, 5.2)) == "2.15"
    assert far(colour(74.1, -15.5, -12.8), colour(72.3, -12.1, -10.3)) == "2.96"
    assert far(colour(89.6, -2.0, 10.8), colour(87.1, -1.6, 13.2)) == "2.34"


def test_steps_that_each_look_harmless_leave_the_standard_2_4_behind_after_four() -> None:
    lots = [TEAL[name] for name in "PQRST"]
    drifts = [drift(lots[0], last, new) for last, new in zip(lots, lots[1:], strict=False)]
    assert all(0.4 < one.from_last.ciede2000 < 0.8 for one in drifts)
    assert f"{drifts[-1].from_standard.ciede2000:.1f}" == "2.4"
    assert [one.is_hidden() for one in drifts] == [False, False, True, True]


def test_a_step_that_is_seen_by_itself_is_not_hidden() -> None:
    assert not drift(TEAL["P"], TEAL["U"], TEAL["V"]).is_hidden()
    assert drift(TEAL["P"], TEAL["U"], TEAL["V"]).is_hidden(small_step=3.5)
    assert not drift(TEAL["P"], TEAL["S"], TEAL["T"]).is_hidden(most=2.5)


def so_far(ciede2000_seen: float, viewing: Viewing) -> Difference:
    one = colour(50, 0, 0, at=viewing)
    return Difference(one, one, ciede2000_seen, ciede2000_seen, 0.5)


def test_lots_whose_difference_changes_with_the_lamp_by_more_than_0_7_differ_by_lamp() -> None:
    assert differs_by_lamp(so_far(0.5, DRY), so_far(1.3, SHOP))
    assert differs_by_lamp(so_far(1.3, DRY), so_far(0.5, SHOP))
    assert not differs_by_lamp(so_far(0.5, DRY), so_far(1.1, SHOP))
    assert differs_by_lamp(so_far(0.5, DRY), so_far(1.1, SHOP), most=0.5)


def test_one_lamp_is_not_two_lamps() -> None:
    with pytest.raises(BadInput, match="Both differences are for A"):
        differs_by_lamp(so_far(0.5, SHOP), so_far(1.3, SHOP))


@pytest.mark.parametrize("other", [WET, SHOP])
def test_what_was_looked_at_otherwise_is_refused_everywhere(other: Viewing) -> None:
    odd = colour(50, 0, 0, at=other)
    with pytest.raises(BadInput):
        difference(NAVY, odd)
    with pytest.raises(BadInput):
        apart([NAVY, NEXT_NAVY, odd])
    with pytest.raises(BadInput):
        drift(NAVY, NEXT_NAVY, odd)


def test_the_mean_of_a_card_keeps_how_far_its_places_are_apart() -> None:
    places = [(48.0, -36.0, 3.0), (48.4, -36.4, 3.2), (48.2, -36.2, 3.4), (48.2, -36.2, 3.2)]
    card = mean_of(places, DRY)
    assert card.lab == pytest.approx((48.2, -36.2, 3.2))
    assert card.readings == 4
    assert card.spread == max(ciede2000(one, other) for one in places for other in places)
    assert doubts(card) == ()


def test_one_place_has_no_spread_and_none_is_refused() -> None:
    assert mean_of([(50, 0, 0)], DRY).spread is None
    with pytest.raises(BadInput, match="no readings"):
        mean_of([], DRY)


def test_few_readings_and_uneven_ones_are_doubted_in_sentences() -> None:
    assert doubts(colour(50, 0, 0, readings=1)) == ("Only 1 reading: read the card at 4 places.",)
    assert doubts(Colour(50, 0, 0, DRY, 3, spread=0.9)) == (
        "Only 3 readings: read the card at 4 places.",
        "The readings are 0.9 apart: is the card wound evenly?",
    )
    assert doubts(Colour(50, 0, 0, DRY, 4, spread=0.8)) == ()


def are_opposite(one: Colour, other: Colour) -> bool:
    """Whether their hues are 180° apart to the last bit: either way round is then the shorter."""
    across = one.a * other.b - one.b * other.a
    along = one.a * other.a + one.b * other.b
    return along < 0 and abs(across) <= 1e-6 * -along


@given(COLOURS, COLOURS)
def test_ciede2000_is_the_same_both_ways_round_and_nothing_for_like_colours(
    one: Colour, other: Colour
) -> None:
    assume(not are_opposite(one, other))
    there, back = ciede2000(one.lab, other.lab), ciede2000(other.lab, one.lab)
    assert there == pytest.approx(back, rel=1e-9, abs=1e-9)
    assert ciede2000(one.lab, one.lab) == 0
    apart = max(abs(a - b) for a, b in zip(one.lab, other.lab, strict=True))
    assert there > 0 or apart < 1e-9  # what is finer than a float's own step has no difference


@given(st.lists(COLOURS, min_size=1, max_size=4))
def test_the_table_of_pairs_is_that_of_the_pairs(colours: list[Colour]) -> None:
    table = apart(colours)
    for place, one in enumerate(colours):
        assert table[place][place] == 0
        for there, other in enumerate(colours[:place]):
            assert table[place][there] == table[there][place] == ciede2000(other.lab, one.lab)


def test_cmc_depends_on_which_of_the_two_is_the_standard() -> None:
    assert cmc(NAVY.lab, NEXT_NAVY.lab) != cmc(NEXT_NAVY.lab, NAVY.lab)
    assert difference(NAVY, NEXT_NAVY).cmc == cmc(NAVY.lab, NEXT_NAVY.lab)


def test_the_window_starts_without_the_colour_library_and_without_numpy() -> None:
    """Either costs a quarter of a second that nobody at the tag table should wait for."""
    look = ("import sys, app.calculations.shade_difference, app.__main__, app.window.main_window;"
            "print(sorted({'numpy', 'coloraide', 'colour'} & set(sys.modules)))")
    done = subprocess.run([sys.executable, "-c", look], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
