"""Stock solutions by weight in volume and by dilution; a refilled bottle is a new set."""

from datetime import timedelta

import pytest

from app.lookups.weigh_sources import stock_now
from app.lookups.weighings import weigh_out
from app.problems import NotFound, Refused
from app.work.recipes import ComponentIn, RecipeIn, ZoneIn, write_recipe
from app.work.stocks import StockIn, fill_bottles, make_stock, refill_bottle
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars of 500 g."""
    return Dyehouse(studio)


def one_per_cent(house: Dyehouse, mg: int = 10_000) -> int:
    weighing = house.studio.do(begin_weighing, WeighingIn("stock"))
    house.take(weighing, house.fills[1], mg)
    stock: int = house.studio.do(make_stock, StockIn(weighing, 1_000))
    return stock


def test_ten_grams_in_a_litre_are_one_per_cent(house: Dyehouse) -> None:
    stock = house.studio.book.ask(stock_now, one_per_cent(house))
    assert (stock.mg_per_l, stock.made_ml, stock.left_ul) == (10_000, 1_000, 1_000_000)
    assert (stock.fill, house.jar(1).left_mg) == (house.fills[1], 490_000)
    assert house.out(1).closed
    house.studio.undo()
    assert house.studio.book.ask(stock_now, stock.stock) is None
    assert not house.out(1).closed
    house.studio.check()


def test_powder_of_92_per_cent_is_kept_as_it_was_weighed(house: Dyehouse) -> None:
    assert house.studio.book.ask(stock_now, one_per_cent(house, 10_870)).mg_per_l == 10_870


def test_100_ml_of_1_per_cent_made_to_a_litre_are_a_tenth(house: Dyehouse) -> None:
    strong = one_per_cent(house)
    weighing = house.studio.do(begin_weighing, WeighingIn("stock"))
    line = house.studio.do(begin_line, LineIn(weighing, stock=strong, target_ul=100_000))
    house.studio.do(take_weight, line, ul=100_000)
    done = house.studio.done(make_stock, StockIn(weighing, 1_000))
    assert done.said == "made 1 L of 0.1 % stock from 1 % stock of jar 1, fill 1"
    weak = house.studio.book.ask(stock_now, done.answer)
    assert (weak.mg_per_l, weak.fill) == (1_000, house.fills[1])
    assert house.studio.book.ask(stock_now, strong).left_ul == 900_000
    assert house.jar(1).left_mg == 490_000


def test_a_stock_is_weighed_from_and_too_old_after_its_life(house: Dyehouse) -> None:
    stock = one_per_cent(house)
    weighing = house.begin()
    done = house.studio.done(begin_line, LineIn(weighing, stock=stock, target_ul=132_400))
    assert (done.findings, done.said) == (
        (), "began to weigh B1 turquoise from 1 % stock of jar 1, fill 1")
    house.studio.do(take_weight, done.answer, ul=132_400)
    house.studio.clock.now += timedelta(days=181)
    (said,) = house.studio.done(begin_line, LineIn(weighing, stock=stock)).findings
    assert "is past its 180 days" in said


@pytest.mark.parametrize("ml", [0, -5, 1])
def test_a_volume_that_cannot_be_is_refused(house: Dyehouse, ml: int) -> None:
    weighing = house.studio.do(begin_weighing, WeighingIn("stock"))
    house.take(weighing, house.fills[1], 10_000)
    with pytest.raises(Refused, match="cannot be made of that"):
        house.studio.do(make_stock, StockIn(weighing, ml))


def test_a_stock_is_of_one_jar_and_its_powder_is_made_up_once(house: Dyehouse) -> None:
    weighing = house.studio.do(begin_weighing, WeighingIn("stock"))
    with pytest.raises(Refused, match="A stock is made of one jar"):
        house.studio.do(make_stock, StockIn(weighing, 1_000))
    house.take(weighing, house.fills[1], 10_000)
    other = house.take(weighing, house.fills[2], 10)
    with pytest.raises(Refused, match="A stock is made of one jar"):
        house.studio.do(make_stock, StockIn(weighing, 1_000))
    house.studio.do(tip_back, other, 10)
    open_line = house.studio.do(begin_line, LineIn(weighing, fill=house.fills[1]))
    with pytest.raises(Refused, match="A cup stands on the balance still"):
        house.studio.do(make_stock, StockIn(weighing, 1_000))
    house.studio.do(take_weight, open_line, 10_000)
    stock = house.studio.do(make_stock, StockIn(weighing, 1_000))
    assert house.studio.book.ask(stock_now, stock).mg_per_l == 20_000
    with pytest.raises(Refused, match="This powder was made up already"):
        house.studio.do(make_stock, StockIn(weighing, 1_000))
    with pytest.raises(NotFound, match="Nothing was weighed out for a stock"):
        house.studio.do(make_stock, StockIn(house.begin(), 1_000))


def painted(house: Dyehouse) -> tuple[int, int]:
    """A recipe of two zones, and a weigh-out for its bottles, begun."""
    zones = (ZoneIn("A", 600, 60), ZoneIn("B", 400, 45))
    poured = (ComponentIn("B1 turquoise", "bottle", 5_000, zone="A"),
              ComponentIn("Y1 lemon", "bottle", 10_000, zone="B"))
    written = RecipeIn(1, poured, "zones", zones=zones, reason="zones")
    recipe = house.studio.do(write_recipe, written)
    weighing = house.studio.do(begin_weighing, WeighingIn("bottles", recipe))
    return recipe, weighing


def test_a_refilled_bottle_is_a_new_set_after_the_old_one(house: Dyehouse) -> None:
    recipe, weighing = painted(house)
    house.take(weighing, house.fills[1], 2_640)
    done = house.studio.done(fill_bottles, recipe, weighing)
    assert (done.said, done.findings) == (
        "filled bottle set 1 of Sluice Keeper's Glove",
        ("The weigh-out of these bottles is still open: close it when all is in.",))
    again = house.studio.done(refill_bottle, done.answer, "A")
    assert again.said == "filled bottle A again: set 2 of Sluice Keeper's Glove"
    assert again.findings == (
        "Nothing was weighed for these bottles: what is in them is not known.",)
    house.studio.undo()
    assert house.studio.done(refill_bottle, done.answer, "B", weighing).said.startswith(
        "filled bottle B again: set 3")
    house.studio.check()


def test_bottles_are_of_a_recipe_and_of_their_own_weigh_out(house: Dyehouse) -> None:
    recipe, weighing = painted(house)
    assert house.studio.book.ask(weigh_out, weighing).missing == ("B1 turquoise", "Y1 lemon")
    with pytest.raises(Refused, match="is not for bottles of this recipe"):
        house.studio.do(fill_bottles, recipe, house.begin())
    with pytest.raises(Refused, match="is not for bottles of this recipe"):
        house.studio.do(fill_bottles, house.recipe, weighing)
    with pytest.raises(NotFound, match="This recipe is not in the book"):
        house.studio.do(fill_bottles, 99)
    one = house.studio.do(fill_bottles, recipe, weighing)
    with pytest.raises(Refused, match="This recipe has no zone E"):
        house.studio.do(refill_bottle, one, "E")
    with pytest.raises(NotFound, match="This bottle set is not in the book"):
        house.studio.do(refill_bottle, 99, "A")
