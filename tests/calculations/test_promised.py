"""What a tag may promise, by worked examples of the house base."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.promised import Promised, promised

OIL, SHORTER = Decimal("0.02"), Decimal("0.03")


@pytest.mark.parametrize(("wound_m", "tex", "says"), [
    ("412.5", "250", Promised(100, 388)),  # 275 turns of 1.50 m: 103.1 g with oil, 101.1 g without
    ("82.5", "250", Promised(20, 77)),  # a mini of 55 turns: 20.2 g
    ("412.5", "125", Promised(50, 388)),  # lace at half the count
    ("40", "250", Promised(9, 34)),  # under 20 g in whole grams
    ("3", "250", Promised(0, 0)),
])
def test_a_tag_says_round_grams_and_the_metres_of_so_many(
    wound_m: str, tex: str, says: Promised
) -> None:
    assert promised(Decimal(wound_m), Decimal(tex), OIL, SHORTER) == says


@given(
    wound_m=st.decimals(1, 2_000, places=2), tex=st.decimals(20, 2_000, places=1),
    oil=st.decimals(0, "0.1", places=3), relaxation=st.decimals(0, "0.1", places=3),
)
def test_a_tag_never_says_more_than_is_inside(
    wound_m: Decimal, tex: Decimal, oil: Decimal, relaxation: Decimal
) -> None:
    says = promised(wound_m, tex, oil, relaxation)
    assert says.g <= wound_m * tex / 1000 * (1 - oil)
    assert says.m <= wound_m * (1 - relaxation)
