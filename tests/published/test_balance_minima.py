"""Least weights by USP General Chapter 41 and by OIML R 76-1:2006.

USP 41: the rule and its example were read in a copy of the chapter, 820 steps in a balance maker's
summary, 0.41 steps from memory. R 76-1: Tables 3 and 6 were read in a copy.
"""

from decimal import Decimal

import pytest

from app.calculations.balances import Balance, Rule
from app.calculations.verified_balances import Accuracy, least_load_g, permitted_error_g
from tests.published.published_values import rows_of

D = Decimal
MINIMA = rows_of("minimum_weight")
LEAST_LOADS = rows_of("oiml_r76_table3")
ERRORS = rows_of("oiml_r76_table6")
CLASSES = {"I": "class_I", "II": "class_II", "III": "class_III", "IIII": "class_IIII"}


@pytest.mark.parametrize("row", MINIMA, ids=lambda row: row["d_g"])
@pytest.mark.parametrize(
    ("column", "tolerance"),
    [
        ("min_g_at_0.10pct", None),
        ("min_g_at_1pct", "0.01"),
        ("min_g_at_2pct", "0.02"),
        ("min_g_at_5pct", "0.05"),
    ],
)
def test_the_least_weight_by_usp_41(
    row: dict[str, str], column: str, tolerance: str | None
) -> None:
    """0.10 % is the chapter's own; the others are its formula with a studio's tolerance."""
    balance = Balance(D(row["d_g"]), Rule.USP_41, tolerance and D(tolerance))
    assert balance.minimum_g == D(row[column])


def test_the_chapters_example_of_0_15_mg_repeatability_gives_300_mg() -> None:
    balance = Balance(D("0.0001"), Rule.USP_41, repeatability_g=D("0.00015"))
    assert balance.minimum_g == D("0.30000")


def test_common_practice_is_named_apart_and_asks_another_weight() -> None:
    """50 steps at 2 %, where the chapter's formula gives 41 and the chapter itself 820."""
    for row in MINIMA:
        step = D(row["d_g"])
        assert Balance(step).minimum_g == 50 * step
        assert D(row["min_g_at_2pct"]) < 50 * step < D(row["min_g_at_0.10pct"])


@pytest.mark.parametrize("row", LEAST_LOADS, ids=lambda row: f"{row['class']} {row['e_from_g']}")
def test_the_least_load_by_accuracy_class(row: dict[str, str]) -> None:
    accuracy, intervals = Accuracy(row["class"].split()[0]), D(row["Min_lower_limit_in_e"])
    for column in ("e_from_g", "e_to_g"):
        if row[column]:
            interval = D(row[column])
            assert least_load_g(accuracy, interval) == intervals * interval


@pytest.mark.parametrize("accuracy", Accuracy)
def test_the_permitted_error_grows_at_the_published_loads(accuracy: Accuracy) -> None:
    interval = D("0.1")
    limits = [row[f"{CLASSES[accuracy]}_m_upto"] for row in ERRORS]
    allowed = [D(row["mpe_in_e"]) * interval for row in ERRORS]
    assert allowed == [D("0.05"), D("0.1"), D("0.15")]
    for limit, error, next_error in zip(limits[:2], allowed, allowed[1:], strict=False):
        load = D(limit) * interval
        assert permitted_error_g(accuracy, interval, load) == error
        assert permitted_error_g(accuracy, interval, load + interval) == next_error


def test_the_special_class_has_no_last_limit_of_load() -> None:
    assert ERRORS[2]["class_I_m_upto"] == "over 200000"
    assert permitted_error_g(Accuracy.SPECIAL, D("0.001"), D(201)) == D("0.0015")
