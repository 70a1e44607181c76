"""The weight check. Worked figures are common practice; the European limits are from memory."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.fibre_tables import regain_by_humidity
from app.calculations.put_up_weight import (
    RoomRegain,
    Verdict,
    by_humidity,
    by_reference_skein,
    check_batch,
    check_weight,
    tolerable_error_g,
)

D = Decimal
STANDARD = D("0.16")
# Made up to have the mean, the spread and the ends of the worked case.
THIRTEEN = "96.1 98.2 98.9 99.2 99.6 100.0 100.4 100.6 101.1 101.4 101.6 101.8 102.3"


@pytest.mark.parametrize(
    ("regain", "standard_g", "verdict"),
    [("0.10", "102.5", Verdict.FULL), ("0.17", "96.4", Verdict.LIGHT)],
)
def test_one_reading_passes_in_the_heated_shop_and_is_light_in_the_wet_autumn(
    regain: str, standard_g: str, verdict: Verdict
) -> None:
    checked = check_weight(D("97.2"), D(100), RoomRegain(D(regain), estimated=False), STANDARD)
    assert checked.standard_g.quantize(D("0.1")) == D(standard_g)
    assert checked.verdict is verdict


def test_a_light_skein_may_be_sold_as_what_it_weighs() -> None:
    checked = check_weight(D("97.2"), D(100), RoomRegain(D("0.17"), estimated=False), STANDARD)
    assert checked.sell_as_g == 96


def test_the_reference_skein_is_no_estimate_but_the_humidity_is() -> None:
    measured = by_reference_skein(D("56.5"), D(50))
    estimated = by_humidity(D("0.55"), regain_by_humidity("wool"))
    assert measured == RoomRegain(D("0.13"), estimated=False)
    assert estimated == RoomRegain(D("0.135"), estimated=True)
    assert check_weight(D(99), D(100), estimated, STANDARD).estimated


@pytest.mark.parametrize(
    ("nominal_g", "error_g"),
    [
        ("20", "1.8"),
        ("25", "2.3"),
        ("50", "4.5"),
        ("96", "4.5"),
        ("100", "4.5"),
        ("115", "5.2"),
        ("150", "6.8"),
        ("200", "9"),
        ("250", "9"),
        ("400", "12"),
        ("750", "15"),
        ("2000", "30"),
    ],
)
def test_the_tolerable_error_follows_the_european_table(nominal_g: str, error_g: str) -> None:
    """Directive 76/211/EEC, Annex I; from memory."""
    assert tolerable_error_g(D(nominal_g)) == D(error_g)


@pytest.mark.parametrize(
    ("standard_g", "verdict"),
    [
        ("100", Verdict.FULL),
        ("99.99", Verdict.LIGHT),
        ("95.5", Verdict.LIGHT),
        ("95.49", Verdict.TOO_LIGHT),
        ("91.0", Verdict.TOO_LIGHT),
        ("90.99", Verdict.FAR_TOO_LIGHT),
    ],
)
def test_the_limits_of_100_g_are_95_5_and_91_0(standard_g: str, verdict: Verdict) -> None:
    room = RoomRegain(STANDARD, estimated=False)
    assert check_weight(D(standard_g), D(100), room, STANDARD).verdict is verdict


def test_thirteen_weights_from_96_1_to_102_3_pass_barely() -> None:
    batch = check_batch([D(weight) for weight in THIRTEEN.split()], D(100))
    assert batch.count == 13
    assert batch.mean_g.quantize(D("0.01")) == D("100.09")
    assert batch.deviation_g is not None
    assert batch.deviation_g.quantize(D("0.01")) == D("1.71")
    assert (batch.below_t1, batch.below_t2, batch.passes) == (0, 0, True)


def test_a_batch_fails_by_its_average_by_too_many_light_ones_or_by_one_far_too_light() -> None:
    below_average = check_batch([D("99.9")] * 40, D(100))
    one_in_forty = check_batch([D("95.4"), *[D("101")] * 39], D(100))
    two_in_forty = check_batch([D("95.4")] * 2 + [D("101")] * 38, D(100))
    far_too_light = check_batch([D("90.9"), *[D("102")] * 99], D(100))
    assert not below_average.passes
    assert (one_in_forty.below_t1, one_in_forty.passes) == (1, True)
    assert (two_in_forty.below_t1, two_in_forty.passes) == (2, False)
    assert (far_too_light.below_t1, far_too_light.below_t2, far_too_light.passes) == (1, 1, False)


def test_the_spread_of_a_single_weight_is_not_known() -> None:
    assert check_batch([D("100.2")], D(100)).deviation_g is None
    assert check_batch([D(99), D(101)], D(100)).deviation_g == D(2).sqrt()


def test_an_average_of_exactly_the_nominal_weight_is_enough() -> None:
    assert check_batch([D(100)] * 3, D(100)).passes


@given(st.decimals("80", "120", places=1), st.decimals("0.05", "0.30", places=3))
def test_a_heavier_reading_is_never_judged_worse(reading: Decimal, regain: Decimal) -> None:
    room = RoomRegain(regain, estimated=False)
    order = list(Verdict)
    lighter = check_weight(reading, D(100), room, STANDARD)
    heavier = check_weight(reading + D("0.1"), D(100), room, STANDARD)
    assert order.index(heavier.verdict) <= order.index(lighter.verdict)
    assert lighter.sell_as_g <= lighter.standard_g
