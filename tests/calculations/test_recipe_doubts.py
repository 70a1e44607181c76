"""Odd recipes are spoken of, and usual ones are not. Limits are common practice, no source."""

from decimal import Decimal

from app.calculations.assistants import SODA_ASH, SODIUM_SULPHATE
from app.calculations.recipe_doubts import doubts_about, forms_not_said
from app.calculations.scaling import Component, Per

D = Decimal


def dyes(*percents: str) -> list[Component]:
    return [Component(f"dye {place}", D(percent)) for place, percent in enumerate(percents)]


def test_a_usual_recipe_is_left_alone() -> None:
    assert doubts_about(dyes("0.85", "0.22", "0.10"), D(20)) == ()
    assert doubts_about(dyes("0.030", "0.010", "0.008")) == ()
    assert doubts_about(dyes("1.6", "3.4")) == ()


def test_more_than_5_percent_of_all_dyes_is_odd() -> None:
    assert doubts_about(dyes("2.6", "2.41")) == (
        "All dyes together are 5.01 %: even blacks take no more than 5.",
    )


def test_less_than_0_005_percent_of_one_dye_is_odd() -> None:
    assert doubts_about(dyes("0.005")) == ()
    (doubt,) = doubts_about(dyes("0.5", "0.0049"))
    assert doubt == "dye 1 is 0.0049 %: is the point in the right place?"


def test_a_ratio_beyond_the_usual_is_odd_at_either_end() -> None:
    assert len(doubts_about([], D("9.9"))) == 1
    assert len(doubts_about([], D("50.1"))) == 1
    assert doubts_about([], D(10)) == doubts_about([], D(50)) == ()


def test_grams_a_litre_are_not_counted_as_percent() -> None:
    assert doubts_about([Component("pigment", D(30), Per.LITRE)]) == ()


def test_what_is_sold_in_two_forms_is_asked_for_its_form_with_the_factor_between_them() -> None:
    assert forms_not_said([("sodium sulphate", "crystals"), ("citric acid", ""),
                           ("acetic acid", "5 % vinegar")]) == ()
    for name, substance in (("Sodium sulfate", SODIUM_SULPHATE), ("sodium carbonate", SODA_ASH)):
        (said,) = forms_not_said([(name, "")])
        assert said == (f"Say of {name} anhydrous or crystals: 1 g of the one is "
                        f"{substance.factor:.2f} g of the other.")
    assert forms_not_said([("acetic acid", "")]) == (
        "Say of acetic acid which strength: 5 % vinegar, or a stronger acid.",)
