"""Balances with a class on their plate; OIML R 76-1:2006 itself is tested as published."""

from decimal import Decimal

import pytest

from app.calculations.verified_balances import Accuracy, least_load_g, permitted_error_g
from app.problems import BadInput

D = Decimal


def test_a_shop_scale_of_class_iii_by_1_g_weighs_20_g_and_more() -> None:
    assert least_load_g(Accuracy.MEDIUM, D(1)) == 20


def test_a_100_g_weight_may_read_half_a_step_off_on_a_fine_balance() -> None:
    assert permitted_error_g(Accuracy.HIGH, D("0.1"), D(100)) == D("0.05")
    assert permitted_error_g(Accuracy.HIGH, D("0.01"), D(100)) == D("0.01")
    assert permitted_error_g(Accuracy.HIGH, D("0.001"), D(100)) == D("0.0015")


def test_no_class_iii_balance_has_steps_of_a_hundredth() -> None:
    assert least_load_g(Accuracy.MEDIUM, D("0.01")) is None


def test_no_step_and_no_weight_are_refused() -> None:
    with pytest.raises(BadInput, match="verification interval"):
        least_load_g(Accuracy.HIGH, D(0))
    with pytest.raises(BadInput, match="test weight"):
        permitted_error_g(Accuracy.HIGH, D("0.1"), D(0))
