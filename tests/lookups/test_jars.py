"""Jars as they are, and the counts that a wrong jar is found by."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.jars import (
    gaps,
    jar_of,
    jars_now,
    lots_by_line,
    uses,
)
from app.work.additions import Addition, addition
from app.work.bundling import make_plates
from app.work.jars import Refill, refill, set_reorder, weigh_jar
from app.work.painting import into_steamer, lay_on_board
from app.work.stocks import fill_bottles
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back
from tests.dyehouse import Dyehouse
from tests.makers import Studio
from tests.work.test_stocks import painted


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars of 500 g."""
    return Dyehouse(studio)


def test_jars_come_by_number_with_what_is_left(house: Dyehouse) -> None:
    house.weighed()
    assert [(jar.shown, jar.dye, jar.left_mg) for jar in house.studio.book.ask(jars_now)] == [
        ("1", "B1 turquoise", 494_883), ("2", "Y1 lemon", 498_676), ("3", "K1 black", 499_398),
        ("4", "N1 navy", 500_000)]
    assert house.studio.book.ask(jars_now)[0].strength_permille == 1000


def test_what_runs_low_is_to_buy(house: Dyehouse) -> None:
    house.studio.do(set_reorder, 1, 100_000)
    assert not any(jar.to_buy for jar in house.studio.book.ask(jars_now))
    house.take(house.begin(), house.fills[1], 375_000)
    assert not house.jar(1).soon_to_buy
    house.take(house.begin(), house.fills[1], 25_000)
    assert (house.jar(1).soon_to_buy, house.jar(1).to_buy) == (True, False)
    house.take(house.begin(), house.fills[1], 1)
    assert not house.jar(1).soon_to_buy
    assert [jar.jar for jar in house.studio.book.ask(jars_now) if jar.to_buy] == [1]
    assert not house.jar(1).nearly_empty
    house.take(house.begin(), house.fills[1], 50_000)
    assert house.jar(1).nearly_empty


def test_the_uses_of_a_fill_are_in_their_order(house: Dyehouse) -> None:
    line = house.take(house.begin(), house.fills[1], 5_200)
    house.studio.do(tip_back, line, 80)
    house.studio.do(refill, 1, Refill("q", 1_000))
    found = house.studio.book.ask(uses, house.fills[1])
    assert [(use.mg, use.into) for use in found] == [
        (5_200, "weigh-out 1"), (-80, "weigh-out 1"), (494_880, "the next fill")]
    old = house.studio.book.ask(jar_of, house.fills[1])
    assert old is not None
    assert (old.left_mg, old.number) == (0, 1)
    assert house.studio.book.ask(jar_of, 99) is None


def test_a_jar_lighter_and_another_heavier_by_7_7_g_stand_side_by_side(house: Dyehouse) -> None:
    """Jar 1 of 712.4 g, nine uses of 93.3 g in all; 611.4 g are found, and jar 2 has 7.7 more."""
    house.studio.do(refill, 1, Refill("q", 212_400))
    house.studio.do(weigh_jar, 1, 712_400)
    house.studio.do(weigh_jar, 2, 500_000)
    weighing = house.begin()
    for mg in (10_000,) * 8 + (13_300,):
        house.take(weighing, house.jar(1).fill, mg)
    house.take(weighing, house.fills[2], 7_700)
    assert "7.7 g less" in house.studio.done(weigh_jar, 1, 611_400).findings[0]
    house.studio.do(weigh_jar, 2, 500_000)
    light, heavy = house.studio.book.ask(gaps)
    assert (light.before_mg, light.expected_mg, light.gap_mg) == (712_400, 619_100, -7_700)
    assert (len(light.uses), sum(use.mg for use in light.uses)) == (9, 93_300)
    assert (heavy.fill, heavy.gap_mg, [use.mg for use in heavy.uses]) == (
        house.fills[2], 7_700, [7_700])


def test_after_a_weighing_its_weight_counts_and_not_the_lines_before(house: Dyehouse) -> None:
    weighing = house.begin()
    house.take(weighing, house.fills[1], 5_000)
    house.studio.do(weigh_jar, 1, 490_000)
    house.take(weighing, house.fills[1], 1_000)
    (count,) = house.studio.book.ask(gaps)
    assert (count.gap_mg, [use.mg for use in count.uses]) == (-5_000, [5_000])
    assert (house.jar(1).left_mg, house.jar(1).booked_mg) == (489_000, 494_000)


def test_a_line_entered_late_belongs_before_the_weighing_it_happened_before(
    house: Dyehouse,
) -> None:
    weighing = house.begin()
    line = house.studio.do(begin_line, LineIn(weighing, fill=house.fills[1]))
    then = house.studio.clock.now + timedelta(minutes=1)
    house.studio.clock.now += timedelta(minutes=10)
    house.studio.do(weigh_jar, 1, 495_000)
    assert house.studio.book.ask(gaps)[0].gap_mg == -5_000
    house.studio.do(take_weight, line, 5_000, happened=then)
    assert house.studio.book.ask(gaps)[0].gap_mg == 0
    assert house.jar(1).left_mg == 495_000


def test_a_line_names_the_lots_it_went_into(house: Dyehouse) -> None:
    studio = house.studio
    first, second = house.dye(house.weighed()), house.dye(house.weighed())
    waiting = house.take(house.begin(), house.fills[1], 10)
    more = studio.do(addition, Addition(2, fill=house.fills[1], mg=7))
    recipe, weighing = painted(house)
    poured = house.take(weighing, house.fills[1], 2_640)
    (board,) = studio.do(make_plates, Kind.BOARD, [1])
    studio.do(lay_on_board, board, [studio.wind(1, 1)], studio.do(fill_bottles, recipe, weighing))
    (third,) = studio.do(into_steamer, [board], None, studio.random)["lots"]
    found = studio.book.ask(lots_by_line, house.fills[1])
    codes = {line: [code.replace("·", "") for code in lots] for line, lots in found.items()}
    assert codes == {1: [studio.code(first)], 4: [studio.code(second)],
                     more: [studio.code(second)], poured: [studio.code(third)]}
    assert waiting not in codes
