"""Stock solutions. The worked figures are common practice, no source."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.stock import (
    Bottle,
    diluted_percent,
    dye_in_stock_g,
    good_until,
    is_past_its_life,
    percent_made_up,
    powder_for_stock_g,
    stock_ml,
)
from app.problems import BadInput
from app.work.stocks import LIFE_OF_ACID_STOCK

D = Decimal
MADE = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


def test_a_litre_of_1_percent_from_powder_of_92_percent_takes_10_87_g() -> None:
    assert powder_for_stock_g(D(1000), D(1), D("0.92")).quantize(D("0.01")) == D("10.87")


def test_what_was_really_weighed_says_what_the_stock_is() -> None:
    assert percent_made_up(D("10.87"), D(1000), D("0.92")) == D("1.00004")


def test_0_02_percent_on_200_g_are_4_ml_of_1_percent_or_40_ml_of_a_tenth_of_it() -> None:
    dye = D(200) * D("0.02") / 100
    assert dye == D("0.04")
    assert stock_ml(dye, D(1)) == 4
    tenth = diluted_percent(D(100), D(1), D(1000))
    assert tenth == D("0.1")
    assert stock_ml(dye, tenth) == 40


def test_1_ml_of_1_percent_on_100_g_is_0_01_percent_of_the_fibre() -> None:
    assert dye_in_stock_g(D(1), D(1)) / 100 * 100 == D("0.01")


@pytest.mark.parametrize(
    ("days", "end"),
    [  # acid dye half a year, reactive dye without alkali a week, a mixed bottle two days
        (LIFE_OF_ACID_STOCK, datetime(2026, 8, 29, 9, 0, tzinfo=UTC)),
        (7, datetime(2026, 3, 9, 9, 0, tzinfo=UTC)),
        (2, datetime(2026, 3, 4, 9, 0, tzinfo=UTC)),
    ],
)
def test_a_stock_keeps_the_days_it_was_given_to_their_last_moment(
    days: int, end: datetime
) -> None:
    assert good_until(MADE, days) == end
    assert not is_past_its_life(MADE, days, end)
    assert is_past_its_life(MADE, days, end + timedelta(seconds=1))


def test_a_stock_without_a_life_keeps() -> None:
    assert good_until(MADE, None) is None
    assert not is_past_its_life(MADE, None, MADE + timedelta(days=9999))


def test_wrong_figures_are_refused() -> None:
    with pytest.raises(BadInput, match="strength of the stock"):
        stock_ml(D(1), D(0))
    with pytest.raises(BadInput, match="dye"):
        stock_ml(D(-1), D(1))
    with pytest.raises(BadInput, match="strength of the powder"):
        powder_for_stock_g(D(100), D(1), D(0))
    with pytest.raises(BadInput, match="volume it is made up to"):
        diluted_percent(D(10), D(1), D(0))
    with pytest.raises(BadInput, match="volume of stock"):
        percent_made_up(D(1), D(0))
    with pytest.raises(BadInput, match="rest in the bottle"):
        Bottle(D(1), D(-5))


@given(
    st.decimals("0.001", "100", places=3),
    st.decimals("0.01", "20", places=2),
    st.decimals("0.3", "1.5", places=2),
)
def test_what_goes_into_a_stock_comes_out_of_it(
    dye: Decimal, percent: Decimal, strength: Decimal
) -> None:
    volume = stock_ml(dye, percent)
    assert abs(dye_in_stock_g(volume, percent) - dye) < D("1e-20")
    powder = powder_for_stock_g(volume, percent, strength)
    assert abs(percent_made_up(powder, volume, strength) - percent) < D("1e-20")
