"""Drying. The worked figures are common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.drying import (
    Air,
    deficit_kpa,
    dry_test,
    fitted_rate,
    hours_to_dry,
    rate_g_h,
    saturation_kpa,
)
from app.calculations.put_up_weight import RoomRegain
from app.problems import BadInput

D = Decimal
SPUN, SQUEEZED = D("0.50"), D("1.60")
STANDARD = D("0.16")


def test_20_degrees_and_50_percent_lack_1_169_kpa_and_take_6_4_g_an_hour() -> None:
    deficit = deficit_kpa(D(20), D("0.5"))
    assert deficit.quantize(D("0.001")) == D("1.169")
    assert rate_g_h(deficit).quantize(D("0.1")) == D("6.4")


@pytest.mark.parametrize(
    ("celsius", "humidity", "pick_up", "air", "hours"),
    [
        (20, "0.5", SPUN, Air.FAN, "7.8"),
        (20, "0.5", SQUEEZED, Air.FAN, "24.9"),
        (18, "0.6", SPUN, Air.FAN, "11.0"),
        (18, "0.6", SPUN, Air.STILL, "20.2"),
        (12, "0.8", SPUN, Air.FAN, "32.4"),
        (12, "0.8", SPUN, Air.STILL, "59.4"),
        (12, "0.8", SQUEEZED, Air.FAN, "103.7"),
    ],
)
def test_the_hours_of_a_skein_on_the_rail(
    celsius: int, humidity: str, pick_up: Decimal, air: Air, hours: str
) -> None:
    hung = hours_to_dry(pick_up, deficit_kpa(D(celsius), D(humidity)), air.value)
    assert hung is not None
    assert hung.quantize(D("0.1")) == D(hours)


def test_in_air_that_is_full_of_water_nothing_dries() -> None:
    assert hours_to_dry(SPUN, deficit_kpa(D(20), D(1))) is None


def test_103_1_g_should_read_100_9_in_a_room_of_55_percent() -> None:
    room = RoomRegain(D("0.135"), estimated=True)
    tested = dry_test(D("101.5"), D("103.1"), STANDARD, room)
    assert tested.expected_g.quantize(D("0.1")) == D("100.9")
    assert not tested.damp
    assert tested.estimated


def test_more_than_102_percent_of_that_is_damp() -> None:
    room = RoomRegain(D("0.135"), estimated=False)
    assert not dry_test(D("102.8"), D("103.1"), STANDARD, room).damp
    assert dry_test(D("103.0"), D("103.1"), STANDARD, room).damp


def test_102_percent_itself_is_still_dry() -> None:
    room = RoomRegain(STANDARD, estimated=False)
    assert not dry_test(D("102.00"), D(100), STANDARD, room).damp
    assert dry_test(D("102.01"), D(100), STANDARD, room).damp


def test_ones_own_room_is_fitted_from_a_skein_that_was_seen_to_dry() -> None:
    deficit = deficit_kpa(D(18), D("0.6"))
    rate = fitted_rate(SPUN, D(14), deficit)
    assert Air.STILL.value < rate < Air.FAN.value
    assert hours_to_dry(SPUN, deficit, rate) == pytest.approx(D(14))


def test_the_saturation_pressure_at_20_degrees_is_2_34_kpa() -> None:
    """The familiar value, 2.34 kPa, from memory; 0.611 kPa at freezing."""
    assert saturation_kpa(D(20)).quantize(D("0.01")) == D("2.34")
    assert saturation_kpa(D(0)).quantize(D("0.001")) == D("0.611")


def test_wrong_figures_are_refused() -> None:
    with pytest.raises(BadInput, match="humidity"):
        deficit_kpa(D(20), D(50))
    with pytest.raises(BadInput, match="°C"):
        saturation_kpa(D(-237))
    with pytest.raises(BadInput, match="rate"):
        rate_g_h(D(1), D(0))
    with pytest.raises(BadInput, match="pick-up"):
        hours_to_dry(D(-1), D(1))
    with pytest.raises(BadInput, match="pick-up"):
        fitted_rate(D(-1), D(10), D(1))
    with pytest.raises(BadInput, match="deficit"):
        rate_g_h(D(-1))
    with pytest.raises(BadInput, match="deficit"):
        fitted_rate(SPUN, D(10), D(0))
    with pytest.raises(BadInput, match="reading"):
        dry_test(D(0), D(100), STANDARD, RoomRegain(D("0.13"), estimated=False))


@given(
    st.decimals("5", "35", places=1),
    st.decimals("0.2", "0.9", places=2),
    st.decimals("0.1", "2", places=2),
)
def test_warmer_and_drier_air_and_less_water_are_quicker(
    celsius: Decimal, humidity: Decimal, pick_up: Decimal
) -> None:
    now = hours_to_dry(pick_up, deficit_kpa(celsius, humidity))
    warmer = hours_to_dry(pick_up, deficit_kpa(celsius + 1, humidity))
    drier = hours_to_dry(pick_up, deficit_kpa(celsius, humidity - D("0.01")))
    lighter = hours_to_dry(pick_up - D("0.05"), deficit_kpa(celsius, humidity))
    assert now is not None
    assert all(other is not None and other < now for other in (warmer, drier, lighter))
