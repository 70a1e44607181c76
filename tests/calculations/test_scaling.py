"""Recipes in grams. The worked figures are common practice, no source; each was reckoned anew."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.scaling import (
    Component,
    Per,
    from_damp,
    from_winding,
    powder_g,
    standard_g,
)
from app.calculations.stock import stock_ml
from app.problems import BadInput

D = Decimal
SIX_SKEINS = from_winding(D(602))
BLUE, YELLOW, BLACK = (
    Component("blue", D("0.85")),
    Component("yellow", D("0.22")),
    Component("black", D("0.10")),
)


def to(places: str, value: Decimal) -> Decimal:
    return value.quantize(D(places))


def test_602_g_take_5_117_g_of_blue_1_324_g_of_yellow_and_0_602_g_of_black() -> None:
    grams = [standard_g(one, SIX_SKEINS.g) for one in (BLUE, YELLOW, BLACK)]
    assert grams == [D("5.117"), D("1.3244"), D("0.602")]


def test_the_same_from_a_1_percent_stock_is_511_7_and_132_4_and_60_2_ml() -> None:
    grams = [standard_g(one, SIX_SKEINS.g) for one in (BLUE, YELLOW, BLACK)]
    volumes = [to("0.1", stock_ml(one, D(1))) for one in grams]
    assert volumes == [D("511.7"), D("132.4"), D("60.2")]


def test_blue_of_92_percent_strength_takes_5_562_g() -> None:
    assert to("0.001", powder_g(D("5.117"), D("0.92"))) == D("5.562")


def test_a_strength_that_is_not_known_is_counted_as_the_standard() -> None:
    assert powder_g(D("5.117"), None) == D("5.117")


def test_1083_g_damp_at_80_percent_are_601_7_g_and_marked_as_estimated() -> None:
    """In print the range is given as 2.8 % either way; it is 2.9 % up and 2.7 % down."""
    dry = from_damp(D(1083), D("0.80"))
    assert to("0.1", dry.g) == D("601.7")
    assert (to("0.1", dry.least_g), to("0.1", dry.most_g)) == (D("585.4"), D("618.9"))
    assert dry.estimated
    assert not SIX_SKEINS.estimated
    assert to("0.001", dry.most_g / dry.g) == D("1.029")
    assert to("0.001", dry.least_g / dry.g) == D("0.973")


def test_damp_yarn_taken_as_dry_is_overdosed_1_8_times() -> None:
    assert to("0.01", D(1083) / from_damp(D(1083), D("0.80")).g) == D("1.80")


def test_grams_a_litre_are_counted_on_the_bath() -> None:
    salt = Component("salt", D(5), Per.LITRE)
    assert standard_g(salt, D(602), D("12.04")) == D("60.2")
    with pytest.raises(BadInput, match="salt is given in grams a litre"):
        standard_g(salt, D(602))


@pytest.mark.parametrize(
    ("name", "percent", "grams"),
    [
        ("citric acid", "2", "12.0"),
        ("sodium sulphate", "5", "30.1"),
        ("levelling agent, least", "0.5", "3.0"),
        ("levelling agent, most", "1", "6.0"),
    ],
)
def test_assistants_are_scaled_as_every_line_is(name: str, percent: str, grams: str) -> None:
    assert to("0.1", standard_g(Component(name, D(percent)), D(602))) == D(grams)


@pytest.mark.parametrize("amount", ["0", "-0.2", "NaN"])
def test_a_line_of_nothing_or_less_is_refused(amount: str) -> None:
    with pytest.raises(BadInput, match="amount of yellow"):
        Component("yellow", D(amount))


def test_no_weight_no_bath_and_no_strength_are_refused() -> None:
    with pytest.raises(BadInput, match="dry weight"):
        from_winding(D(0))
    with pytest.raises(BadInput, match="damp weight"):
        from_damp(D(-1), D("0.8"))
    with pytest.raises(BadInput, match="pick-up"):
        from_damp(D(100), D("-0.8"))
    with pytest.raises(BadInput, match="bath"):
        standard_g(Component("salt", D(5), Per.LITRE), D(602), D(0))
    with pytest.raises(BadInput, match="whose weight is not known"):
        standard_g(BLUE, None)
    with pytest.raises(BadInput, match="dry weight"):
        standard_g(BLUE, D(0))
    with pytest.raises(BadInput, match="strength of the powder"):
        powder_g(D(5), D(0))


COMPONENTS = st.builds(
    Component, st.just("blue"), st.decimals("0.001", "20", places=3), st.sampled_from(Per))
WEIGHTS = st.decimals("0.1", "9000", places=1)
STRENGTHS = st.decimals("0.3", "1.5", places=3)


@given(COMPONENTS, WEIGHTS, st.integers(2, 50), STRENGTHS)
def test_so_many_times_the_yarn_takes_so_many_times_the_powder(
    line: Component, dry_g: Decimal, times: int, strength: Decimal
) -> None:
    little = powder_g(standard_g(line, dry_g, dry_g / 50), strength)
    much = powder_g(standard_g(line, dry_g * times, dry_g * times / 50), strength)
    assert little > 0
    assert abs(much - times * little) < D("1e-18") * times * dry_g


@given(WEIGHTS, st.decimals("0", "3", places=2))
def test_the_range_of_a_damp_weight_holds_the_weight_itself(
    damp_g: Decimal, pick_up: Decimal
) -> None:
    dry = from_damp(damp_g, pick_up)
    assert dry.least_g < dry.g <= dry.most_g <= damp_g
    assert dry.estimated
