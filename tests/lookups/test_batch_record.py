"""All of a lot in one answer: from its cones to where it is, with what was marked."""

import pytest

from app.lookups.batch_record import BatchRecord, batch_record
from app.problems import NotFound
from app.work.opening_stock import OldLot, open_lot
from tests.full_lot import FullLot
from tests.makers import EACH_MG, Studio


def record_of(studio: Studio, lot: int) -> BatchRecord:
    return studio.book.ask(batch_record, lot, studio.clock.now)


def test_a_lot_with_a_long_life_is_told_from_cone_to_customer(studio: Studio) -> None:
    full = FullLot(studio)
    one = record_of(studio, full.lot)
    assert (one.colourway, one.base, one.count, one.born_by) == (
        "Sluice Keeper's Glove", "Tarnfield 4-ply", 12, "DA")
    assert [(cone.cone.batch, cone.least, cone.of) for cone in one.yarn_in] == [
        ("A-203", 6, 12), ("A-203", 6, 12)]
    assert one.cones_known
    assert one.recipe is not None
    assert (one.recipe.recipe.number, one.recipe.next_number, one.recipe.next_reason) == (
        1, 2, "less black")
    assert "K1 black left out" in one.recipe.changed
    assert [jar.number for jar in one.fills] == [1, 1, 1]
    assert one.weighed.off_recipe == ("dye was added at the pot",)
    assert {"DA", "WS", "TW", "LP", "OW"} <= set(one.people)
    studio.check()


def test_what_was_taken_back_or_noted_is_part_of_the_record(studio: Studio) -> None:
    full = FullLot(studio)
    marked = record_of(studio, full.lot).marked
    assert [one.said for one in marked if one.undone] == [f"bath {full.bath}: pH 4.80"]
    assert any("no sister of others" in note for one in marked for note in one.findings)


def test_of_a_lot_older_than_the_book_little_is_known(studio: Studio) -> None:
    lot = studio.do(open_lot, OldLot("OLD77", studio.version, 1, 4), EACH_MG)
    number = lot if isinstance(lot, int) else 1
    one = record_of(studio, number)
    assert (one.bath, one.recipe, one.weighed.known, one.fills) == (None, None, False, ())


def test_a_lot_that_is_not_there_is_not_found(studio: Studio) -> None:
    with pytest.raises(NotFound):
        record_of(studio, 99)
