"""Priors and rates of faults: working estimates of the trade, shifted by the kind of fault."""

from fractions import Fraction

import pytest

from app.calculations.fault_settings import FAVOURED, PRIORS, Rates, Settings
from app.problems import BadInput


def test_the_priors_and_the_weights_each_make_one() -> None:
    assert sum(PRIORS.values()) == 1
    assert sum(weight for _, weight in Rates().touched) == 1
    assert sum(weight for _, weight in Rates().others) == 1


def test_a_kind_without_a_prior_of_its_own_takes_that_of_all_others() -> None:
    assert Settings().prior("bath") == Fraction(1, 20)
    assert Settings(other=Fraction(1, 10)).prior("bath") == Fraction(1, 10)


@pytest.mark.parametrize("fault", sorted(FAVOURED))
def test_a_fault_favours_the_kinds_it_mostly_comes_from_and_no_other(fault: str) -> None:
    shifted = {kind for kind in PRIORS if Settings().prior(kind, fault) != PRIORS[kind]}
    assert shifted == set(FAVOURED[fault])
    assert all(Settings().prior(kind, fault) == 3 * PRIORS[kind] for kind in shifted)


def test_silence_says_little_of_a_shade_that_a_buyer_has_nothing_to_hold_against() -> None:
    assert Settings().of("off shade").rates.tells == Fraction(1, 50)
    assert Settings().of("stain") == Settings().of(None) == Settings()
    assert Settings(rates=Rates(tells=Fraction(0))).of("off shade").rates.tells == 0


def test_a_fault_that_nobody_listed_shifts_nothing() -> None:
    assert Settings().prior("cone", "glitter") == Settings().prior("cone") == Fraction(3, 10)


@pytest.mark.parametrize(
    "wrong",
    [
        {"touched": ()}, {"others": ()}, {"tells": Fraction(5, 4)}, {"tells": Fraction(-1, 4)},
        {"touched": ((Fraction(1), Fraction(1)),)}, {"others": ((Fraction(0), Fraction(1)),)},
        {"others": ((Fraction(1, 2), Fraction(0)),)},
    ],
)
def test_rates_that_cannot_be_are_refused_in_a_sentence(wrong: dict[str, Fraction]) -> None:
    with pytest.raises(BadInput) as refused:
        Rates(**wrong)
    assert "settings for suspects" in refused.value.what
    assert refused.value.next_step


def test_a_prior_of_nothing_is_refused_when_it_is_asked_for() -> None:
    with pytest.raises(BadInput, match="the prior of cone is 0"):
        Settings(priors={"cone": Fraction(0)}).prior("cone")
