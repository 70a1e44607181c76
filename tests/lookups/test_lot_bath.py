"""The bath as it was."""

from app.calculations.codes import Kind
from app.lookups.lot_bath import Painting, lot_bath
from app.work.bundling import make_plates
from app.work.painting import into_steamer, lay_on_board
from app.work.recipes import ComponentIn, RecipeIn, ZoneIn, write_recipe
from app.work.stocks import fill_bottles
from tests.full_lot import FullLot
from tests.makers import Studio


def test_readings_of_one_entry_stand_together_and_struck_ones_are_left_out(studio: Studio) -> None:
    full = FullLot(studio)
    was = studio.book.ask(lot_bath, full.bath)
    assert was is not None
    assert [(one.done, one.decidegrees, one.ph_centi, one.clearness, one.water_ml)
            for one in was.readings] == [
        ("", 300, 650, 2, None), ("", None, None, None, 900), ("heat up", None, None, None, None),
        ("", 850, 430, 0, None)]
    assert {one.person for one in was.readings} == {"DA"}


def test_pot_volume_times_and_cords_are_those_of_its_day(studio: Studio) -> None:
    full = FullLot(studio)
    was = studio.book.ask(lot_bath, full.bath)
    assert was is not None
    assert (was.pot, was.bath_ml, was.dry_mg, was.person, was.lifted_by) == (
        "1", 24_750, 1_237_500, "DA", "WS")
    assert [(cord.disc, cord.count, cord.tie) for cord in was.cords] == [
        ("031", 6, "red"), ("032", 6, "blue")]
    assert was.lifted is not None
    assert was.begun < was.lifted


def test_yarn_without_a_disc_says_so_and_no_bath_is_none(studio: Studio) -> None:
    studio.dye(studio.wind(studio.cone(), 2))
    was = studio.book.ask(lot_bath, 1)
    assert was is not None
    assert [cord.disc for cord in was.cords] == [None]
    assert (was.pot, was.lifted, was.readings, was.boards) == (None, None, (), ())
    assert studio.book.ask(lot_bath, 99) is None


def test_a_painted_lot_names_its_boards_and_bottle_sets(studio: Studio) -> None:
    (board,) = studio.do(make_plates, Kind.BOARD, [3])
    version = studio.do(write_recipe, RecipeIn(
        1, (ComponentIn("blue", "bottle", 10_000, zone="A"),), look="zones",
        zones=(ZoneIn("A", 1000, 60),)))
    bottles = studio.do(fill_bottles, version)
    studio.do(lay_on_board, board, [studio.wind(studio.cone(), 2)], bottles)
    done = studio.do(into_steamer, [board], None, studio.random)
    was = studio.book.ask(lot_bath, done["baths"][0])
    assert was is not None
    assert (was.pot, was.boards) == (None, (Painting("3", 1),))
