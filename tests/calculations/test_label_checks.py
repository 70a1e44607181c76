"""Percents from dry masses, and a label held against an assay."""

from decimal import Decimal

import pytest

from app.calculations.label_checks import (
    is_cashmere,
    labelled_percents,
    may_be_ignored,
    outside_tolerance,
)
from app.calculations.markets import market
from app.problems import NotFound


def grams(**dry: int) -> dict[str, Decimal]:
    return {fibre: Decimal(g) for fibre, g in dry.items()}


def test_dry_masses_take_their_agreed_allowance_before_they_are_percents() -> None:
    dry = grams(wool=75, polyamide=25)
    assert labelled_percents(dry, market("EU")) == {"wool": 77, "polyamide": 23}
    assert labelled_percents(dry, market("UK")) == {"wool": 77, "polyamide": 23}
    assert labelled_percents(dry, market("US")) == {"wool": 77, "polyamide": 23}


def test_the_form_of_a_fibre_is_taken_where_it_is_said() -> None:
    dry = grams(wool=75, polyamide=20, silk=5)
    forms = {"wool": "combed", "polyamide": "filament"}
    assert labelled_percents(dry, market("EU"), forms) == {"wool": 77, "polyamide": 18, "silk": 5}
    with pytest.raises(NotFound, match="no allowance for twisted wool"):
        labelled_percents(dry, market("EU"), {"wool": "twisted"})


def test_no_allowance_is_guessed_for_a_market_without_a_table() -> None:
    with pytest.raises(NotFound, match="for Canada"):
        labelled_percents(grams(wool=75, silk=25), market("Canada"))


def test_every_fibre_that_markets_name_finds_its_row_or_none_is_taken() -> None:
    for fibre in ("alpaca", "mohair", "linen", "hemp", "cotton", "viscose", "elastane", "ramie"):
        assert labelled_percents({fibre: Decimal(1)}, market("EU")) == {fibre: 100}


def test_the_tolerance_is_the_markets_and_an_unstated_fibre_counts() -> None:
    stated = grams(wool=80, silk=20)
    assert outside_tolerance(stated, grams(wool=76, silk=20, linen=4), market("EU")) == (
        "linen", "wool")
    assert outside_tolerance(stated, grams(wool=76, silk=20, linen=4), market("Canada")) == ()
    assert outside_tolerance(grams(wool=100), grams(wool=98, silk=2), market("EU")) == ()
    assert outside_tolerance(grams(wool=100), grams(wool=98, silk=2), market("US")) != ()


def test_a_stray_fibre_may_be_ignored_and_one_on_purpose_never() -> None:
    assert may_be_ignored(Decimal(2), on_purpose=False)
    assert not may_be_ignored(Decimal(3), on_purpose=False)
    assert may_be_ignored(Decimal(5), on_purpose=False, carded=True)
    assert not may_be_ignored(Decimal("0.1"), on_purpose=True, carded=True)


def test_cashmere_is_a_matter_of_figures() -> None:
    assert is_cashmere(Decimal("18.9"), Decimal("2.5"), Decimal(23))
    assert not is_cashmere(Decimal("18.9"), Decimal("3.5"), Decimal(23))
