"""What still goes into the cup, with the numbers of a pot of 602 g."""

from dataclasses import replace
from decimal import Decimal

import pytest

from app.calculations.codes import Kind, numbered
from app.calculations.measuring import Pouring, Weighing
from app.lookups.at_balance import AtBalance, Wanted, at_balance
from app.lookups.jars import jar_with
from app.lookups.weigh_sources import stock_with
from app.work.bundling import make_plates
from app.work.jars import say_strength
from app.work.recipes import ComponentIn, RecipeIn, ZoneIn, write_recipe
from app.work.stocks import StockIn, make_stock
from app.work.studio import choose
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import BLACK, BLUE, DYES, Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    return Dyehouse(studio)


def look(house: Dyehouse, weighing: int) -> AtBalance:
    found = house.studio.book.ask(at_balance, weighing, house.studio.clock.now)
    assert found is not None
    return found


def grams(wanted: Wanted) -> Decimal:
    found = wanted.powder_g(wanted.jars[0].strength_permille)
    assert found is not None
    return found.quantize(Decimal("0.001"))


def test_each_line_asks_its_grams_and_names_its_jar(house: Dyehouse) -> None:
    now = look(house, house.begin())
    assert [(one.substance, grams(one), one.jars[0].shown) for one in now.wanted] == [
        ("B1 turquoise", Decimal("5.117"), "1"), ("Y1 lemon", Decimal("1.324"), "2"),
        ("K1 black", Decimal("0.602"), "3")]
    assert now.bath_l == Decimal("12.04")
    assert now.dry is not None
    assert not now.dry.estimated


def test_a_weaker_powder_is_weighed_heavier(house: Dyehouse) -> None:
    house.studio.do(say_strength, 1, 920)
    assert grams(look(house, house.begin()).wanted[0]) == Decimal("5.562")


def test_a_damp_weight_comes_with_its_range(house: Dyehouse) -> None:
    weighing = house.studio.do(begin_weighing, WeighingIn(
        "bath", house.recipe, (), 1_083_000, 800))
    dry = look(house, weighing).dry
    assert dry is not None
    assert [round(one, 1) for one in (dry.g, dry.least_g, dry.most_g)] == [
        Decimal("601.7"), Decimal("585.4"), Decimal("618.9")]


def test_what_was_taken_and_tipped_back_leaves_the_rest(house: Dyehouse) -> None:
    weighing = house.begin()
    house.take(weighing, house.fills[1], 5000)
    first = look(house, weighing).wanted[0]
    assert first.is_taken
    assert first.given_g == 5
    assert grams(first) == Decimal("0.117")


def test_below_the_balances_least_a_stock_is_made_and_then_used(house: Dyehouse) -> None:
    house.studio.do(write_recipe, RecipeIn(1, (replace(BLACK, amount=200),), reason="paler"))
    house.recipe = 2
    weighing = house.begin()
    (black,) = look(house, weighing).wanted
    assert isinstance(black.way, Pouring)
    assert black.way.make_up is not None
    powder = house.studio.do(begin_weighing, WeighingIn("stock"))
    house.take(powder, house.fills[3], 500)
    (bottle,) = house.studio.do(make_plates, Kind.VESSEL, [9])
    stock = house.studio.do(make_stock, StockIn(powder, 25, bottle))
    (black,) = look(house, weighing).wanted
    assert isinstance(black.way, Pouring)
    assert black.way.make_up is None
    assert black.volume_ml(black.bottles[0].percent) == Decimal("6.02")
    line = house.studio.do(begin_line, LineIn(weighing, stock=stock))
    house.studio.do(take_weight, line, ul=6_000)
    assert look(house, weighing).wanted[0].given_g == Decimal("0.12")
    found = house.studio.book.ask(stock_with, numbered(Kind.VESSEL, 9).text)
    assert found is not None
    assert found.stock == stock
    assert house.studio.book.ask(stock_with, "U0000") is None


def test_a_finer_balance_weighs_it(house: Dyehouse) -> None:
    house.studio.do(choose, {"balance step": "0.001"})
    assert all(isinstance(one.way, Weighing) for one in look(house, house.begin()).wanted)


def test_bottles_are_reckoned_with_what_stays_in_them(house: Dyehouse) -> None:
    blue = replace(BLUE, unit="bottle", amount=5_000, zone="A")
    version = house.studio.do(write_recipe, RecipeIn(
        1, (blue,), "zones", zones=(ZoneIn("A", 1000, 60),), reason="painted"))
    weighing = house.studio.do(begin_weighing, WeighingIn("bottles", version, (), 800_000))
    assert grams(look(house, weighing).wanted[0]) == Decimal("2.640")


def test_no_line_of_a_long_recipe_is_lost_or_moved_and_each_is_counted_on_its_own(
    house: Dyehouse
) -> None:
    """Fibre, bath and bottle, the same dye in each, twice; without a bath g/L is not known."""
    lines = tuple(ComponentIn("B1 turquoise", unit, 5_000, zone="A" if unit == "bottle" else None)
                  for unit in ("owf", "bath", "bottle") * 2)
    painted = RecipeIn(1, lines, "zones", zones=(ZoneIn("A", 1000, 60),), reason="all three")
    house.recipe = house.studio.do(write_recipe, painted)
    asked = [one.standard_g for one in look(house, house.begin()).wanted]
    assert asked == [Decimal("3.01"), None, Decimal("1.9866")] * 2
    house.recipe = house.studio.do(write_recipe, replace(painted, liquor_tenths=200))
    asked = [one.standard_g for one in look(house, house.begin()).wanted]
    assert asked == [Decimal("3.01"), Decimal("60.2"), Decimal("1.9866")] * 2


def test_vinegar_is_reckoned_as_a_solution(house: Dyehouse) -> None:
    acid = ComponentIn("acetic acid", "owf", 15_000, "assistant", "5 % vinegar")
    house.recipe = house.studio.do(write_recipe, RecipeIn(1, (*DYES, acid), reason="vinegar"))
    last = look(house, house.begin()).wanted[-1]
    assert last.solution_percent == 5
    assert last.volume_ml(Decimal(5)) == Decimal("180.6")


def test_a_jar_is_found_by_its_plate_and_what_is_not_there_is_none(house: Dyehouse) -> None:
    found = house.studio.book.ask(jar_with, numbered(Kind.JAR, 4).text)
    assert found is not None
    assert found.dye == "N1 navy"
    assert house.studio.book.ask(jar_with, numbered(Kind.JAR, 77).text) is None
    assert house.studio.book.ask(at_balance, 99, house.studio.clock.now) is None
