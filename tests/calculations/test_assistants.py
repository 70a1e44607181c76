"""Acids and salts. The worked figures are common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.assistants import (
    CITRIC_ACID,
    SODA_ASH,
    SODIUM_SULPHATE,
    Form,
    Substance,
    in_form,
)
from app.calculations.stock import stock_ml
from app.problems import BadInput

D = Decimal


def test_30_1_g_of_anhydrous_sodium_sulphate_are_68_3_g_of_crystals() -> None:
    anhydrous = D(602) * 5 / 100
    assert anhydrous == D("30.1")
    crystals = in_form(anhydrous, SODIUM_SULPHATE, Form.ANHYDROUS, Form.CRYSTALS)
    assert crystals.quantize(D("0.1")) == D("68.3")
    assert SODIUM_SULPHATE.factor.quantize(D("0.001")) == D("2.268")


def test_crystals_weighed_for_anhydrous_are_a_56_percent_underdose() -> None:
    assert (SODIUM_SULPHATE.underdose * 100).quantize(D(1)) == 56


@pytest.mark.parametrize(
    ("substance", "molar", "factor"),
    [(SODA_ASH, "105.99", "2.700"), (CITRIC_ACID, "192.12", "1.094")],
)
def test_other_crystals_have_their_own_factor(
    substance: Substance, molar: str, factor: str
) -> None:
    """Molar masses as printed on the tubs, from memory."""
    assert substance.anhydrous_g.quantize(D("0.01")) == D(molar)
    assert substance.factor.quantize(D("0.001")) == D(factor)


def test_vinegar_of_5_percent_for_1_5_percent_acetic_acid_is_180_6_ml() -> None:
    assert stock_ml(D(602) * D("1.5") / 100, D(5)) == D("180.6")


def test_the_form_that_is_meant_and_at_hand_stays_as_it_is() -> None:
    assert in_form(D("30.1"), SODIUM_SULPHATE, Form.CRYSTALS, Form.CRYSTALS) == D("30.1")


def test_less_than_nothing_is_refused() -> None:
    with pytest.raises(BadInput, match="weight of sodium sulphate"):
        in_form(D(-1), SODIUM_SULPHATE, Form.ANHYDROUS, Form.CRYSTALS)


@given(
    st.decimals("0", "5000", places=1), st.sampled_from([SODIUM_SULPHATE, SODA_ASH, CITRIC_ACID])
)
def test_there_and_back_is_the_same_and_crystals_weigh_more(g: Decimal, of: Substance) -> None:
    crystals = in_form(g, of, Form.ANHYDROUS, Form.CRYSTALS)
    assert crystals >= g
    assert abs(in_form(crystals, of, Form.CRYSTALS, Form.ANHYDROUS) - g) < D("1e-20")
