"""Weights and lengths: as kept, as reckoned, as printed."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.units import grams, metres, milligrams, millimetres, ounces, yards


@pytest.mark.parametrize(
    ("g", "oz"), [("100", "3.53"), ("50", "1.76"), ("20", "0.71"), ("113.3980925", "4.00")]
)
def test_grams_are_printed_in_hundredths_of_an_ounce(g: str, oz: str) -> None:
    assert ounces(Decimal(g)) == Decimal(oz)


@pytest.mark.parametrize(
    ("m", "yd"), [("388", 424), ("410", 448), ("194", 212), ("112", 122), ("0.9144", 1)]
)
def test_metres_are_printed_in_whole_yards(m: str, yd: int) -> None:
    assert yards(Decimal(m)) == yd


@given(st.integers(0, 10**9))
def test_what_is_kept_comes_back_as_it_was(whole: int) -> None:
    assert milligrams(grams(whole)) == whole
    assert millimetres(metres(whole)) == whole


def test_a_half_is_counted_up() -> None:
    assert milligrams(Decimal("0.0005")) == 1
    assert millimetres(Decimal("412.5004")) == 412_500
    assert grams(103_125) == Decimal("103.125")
