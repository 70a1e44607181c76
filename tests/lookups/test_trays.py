"""Bottles, boards and what waits for the steamer."""

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.pot_steps import pots_at_work
from app.lookups.trays import board_with, trays_now
from app.work.bundling import make_plates
from app.work.painting import into_steamer, lay_on_board
from app.work.stocks import fill_bottles, refill_bottle
from tests.dyehouse import Dyehouse
from tests.work.test_stocks import painted


@pytest.fixture
def house(studio):
    """A recipe of two zones with a weigh-out for its bottles, and a board."""
    house = Dyehouse(studio)
    house.zoned, house.weighing = painted(house)
    house.board, _ = studio.do(make_plates, Kind.BOARD, [1, 2])
    return house


def now(house):
    return house.studio.book.ask(trays_now)


def test_a_zoned_recipe_and_what_was_weighed_for_its_bottles(house):
    assert [one.version for one in now(house).recipes] == [house.zoned]
    assert (now(house).bottles, now(house).weighed) == ((), {house.zoned: house.weighing})
    made = house.studio.do(fill_bottles, house.zoned, house.weighing)
    (bottles,) = now(house).bottles
    assert (bottles.id, bottles.number, bottles.known, bottles.refilled) == (made, 1, True, None)
    assert now(house).weighed == {}
    assert [(zone.letter, zone.ml_on(103_125)) for zone in bottles.zones] == [
        ("A", 61.875), ("B", pytest.approx(46.40625))]
    assert (bottles.ml_per_100_g, bottles.fits.over_ml) == (105, 0)


def test_a_refilled_set_takes_the_place_of_the_one_before(house):
    made = house.studio.do(fill_bottles, house.zoned, house.weighing)
    again = house.studio.do(refill_bottle, made, "B")
    (bottles,) = now(house).bottles
    assert (bottles.id, bottles.refilled, bottles.known) == (again, "B", False)


def test_a_board_holds_its_yarn_until_the_steamer(house):
    studio = house.studio
    made = studio.do(fill_bottles, house.zoned, house.weighing)
    row = studio.wind(studio.cone(), 4, "red", studio.discs[0])
    studio.do(lay_on_board, house.board, [row], made)
    code = numbered(Kind.BOARD, 1).text
    board = studio.book.ask(board_with, code)
    assert (board.count, board.laid[0].disc, board.laid[0].bottles) == (4, "031", made)
    assert now(house).boards == (board,)
    assert studio.book.ask(board_with, numbered(Kind.BOARD, 2).text).laid == ()
    assert studio.book.ask(board_with, numbered(Kind.BOARD, 9).text) is None
    (steamer,) = studio.do(make_plates, Kind.STEAMER, [3])
    studio.do(into_steamer, [house.board], steamer, studio.random)
    assert now(house).boards == ()
    (work,) = studio.book.ask(pots_at_work)
    assert (work.steamer, work.steams) == (3, True)
