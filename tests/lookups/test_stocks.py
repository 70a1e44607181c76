"""The stocks that stand ready: what is left of each, and which is in a bottle now."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.stocks import stocks_on_shelf
from app.work.bundling import make_plates
from app.work.stocks import StockIn, make_stock
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars of 500 g."""
    return Dyehouse(studio)


def stock(house: Dyehouse, plate: int | None = None, days: int | None = 7) -> int:
    weighing = house.studio.do(begin_weighing, WeighingIn("stock"))
    house.take(weighing, house.fills[1], 10_000)
    made: int = house.studio.do(make_stock, StockIn(weighing, 1_000, plate, days))
    return made


def test_a_stock_says_its_jar_its_strength_and_its_life(house: Dyehouse) -> None:
    stock(house)
    (found,) = house.studio.book.ask(stocks_on_shelf)
    assert (found.dye, found.jar, found.bottle) == ("B1 turquoise", "jar 1, fill 1", None)
    assert (found.mg_per_l, found.left_ul) == (10_000, 1_000_000)
    assert found.good_until == found.made + timedelta(days=7)
    assert not found.too_old(found.made + timedelta(days=7))
    assert found.too_old(found.made + timedelta(days=7, seconds=1))


def test_one_without_a_life_keeps_and_an_empty_one_is_gone(house: Dyehouse) -> None:
    made = stock(house, days=None)
    (found,) = house.studio.book.ask(stocks_on_shelf)
    assert (found.good_until, found.too_old(found.made + timedelta(days=9999))) == (None, False)
    line = house.studio.do(begin_line, LineIn(house.begin(), stock=made))
    house.studio.do(take_weight, line, ul=1_000_000)
    assert house.studio.book.ask(stocks_on_shelf) == ()


def test_of_a_bottle_only_the_newest_stock_stands_there(house: Dyehouse) -> None:
    (bottle,) = house.studio.do(make_plates, Kind.VESSEL, [7])
    stock(house, bottle)
    loose = stock(house)
    second = stock(house, bottle)
    other = stock(house)
    assert [(one.stock, one.bottle) for one in house.studio.book.ask(stocks_on_shelf)] == [
        (other, None), (second, "7"), (loose, None)]
