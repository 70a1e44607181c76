"""What is left in the bath. The worked figures are common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.exhaustion import (
    Usual,
    absorbance,
    bath_g_l,
    by_ladder,
    by_mass,
    measured,
)
from app.problems import BadInput, NotFound

D = Decimal
LADDER = [D("0.040"), D("0.020"), D("0.010"), D("0.005"), D("0.0025")]
START = bath_g_l(D("5.117"), D("12.04"))


def percent(share: Decimal) -> Decimal:
    return (100 * share).quantize(D("0.1"))


def test_5_117_g_in_12_04_l_are_0_425_g_a_litre() -> None:
    assert START.quantize(D("0.001")) == D("0.425")


def test_an_end_like_the_0_010_jar_means_97_6_percent_and_0_12_g_left() -> None:
    """Between the jars beside it: 95.3 to 98.8 %."""
    seen = by_ladder(START, LADDER, D("0.010"))
    assert percent(seen.share) == D("97.6")
    assert (percent(seen.at_least), percent(seen.at_most)) == (D("95.3"), D("98.8"))
    assert (D("5.117") * (1 - seen.share)).quantize(D("0.01")) == D("0.12")


def test_a_photometer_reads_0_142_at_one_in_ten_then_0_018_which_is_98_7_percent() -> None:
    seen = measured(absorbance(D("0.142"), 10), absorbance(D("0.018")))
    assert percent(seen.share) == D("98.7")
    assert seen.at_least == seen.at_most == seen.share


def test_the_palest_jar_may_be_clear_and_the_darkest_the_bath_it_was() -> None:
    assert by_ladder(START, LADDER, D("0.0025")).at_most == 1
    assert by_ladder(START, LADDER, D("0.040")).at_least == 0
    assert by_ladder(D("0.03"), LADDER, D("0.020")).at_least == 0


def test_under_93_percent_is_low_but_turquoise_at_90_is_as_usual() -> None:
    at_90 = measured(D(100), D(10))
    assert at_90.is_low()
    assert not at_90.is_low(Usual.TURQUOISE)
    assert measured(D(100), D(16)).is_low(Usual.TURQUOISE)
    assert not measured(D(100), D(7)).is_low()


def test_a_bath_that_boiled_away_is_reckoned_by_mass() -> None:
    seen = by_mass(D("0.500"), D("2.00"), D("0.025"), D("1.80"))
    assert percent(seen.share) == D("95.5")


def test_a_jar_that_is_not_on_the_sill_is_not_chosen() -> None:
    with pytest.raises(NotFound, match=r"No jar of 0\.3 g/L"):
        by_ladder(START, LADDER, D("0.3"))


def test_wrong_figures_are_refused() -> None:
    with pytest.raises(BadInput, match="bath"):
        bath_g_l(D(1), D(0))
    with pytest.raises(BadInput, match="start of the bath"):
        measured(D(0), D(1))
    with pytest.raises(BadInput, match="start of the bath"):
        by_ladder(D(0), LADDER, D("0.010"))
    with pytest.raises(BadInput, match="bath at the end"):
        by_mass(D(1), D(2), D("0.1"), D(-2))
    with pytest.raises(BadInput, match="end of the bath"):
        measured(D(1), D(-1))
    with pytest.raises(BadInput, match="reading"):
        absorbance(D("-0.1"))
    with pytest.raises(BadInput, match="dilution"):
        absorbance(D("0.1"), 0)


@given(st.decimals("0.001", "5", places=3), st.sampled_from(LADDER))
def test_what_is_seen_lies_within_its_range(start: Decimal, jar: Decimal) -> None:
    seen = by_ladder(start, LADDER, jar)
    assert seen.at_least <= seen.share <= seen.at_most <= 1
