"""Every tag of a lot is accounted for."""

from app.lookups.lot_tags import lot_tags
from tests.full_lot import FullLot
from tests.makers import Studio


def test_printed_is_on_skeins_and_void_and_waiting(studio: Studio) -> None:
    full = FullLot(studio)
    found = studio.book.ask(lot_tags, full.lot)
    assert dict(found.counts) == {"hangs": 11, "void": 2}
    assert len(found.tags) == 13
    void = [tag for tag in found.tags if tag.state == "void"]
    assert [(tag.tied_on is None, tag.successor is None) for tag in void] == [
        (True, True), (False, False)]
    assert void[1].successor == f"{full.code}-00"
    assert {tag.printed_by for tag in found.tags} == {"LP"}


def test_the_words_are_kept_as_they_were_printed_each_once(studio: Studio) -> None:
    full = FullLot(studio)
    (words,) = studio.book.ask(lot_tags, full.lot).words
    assert "Staithe Row 3, Quernlow" in words


def test_a_tag_that_nobody_tied_on_waits(studio: Studio) -> None:
    row = studio.wind(studio.cone(), 2)
    lot = studio.dye(row)
    (pile,) = studio.finish(row, red=2)
    studio.print(pile, 2)
    assert dict(studio.book.ask(lot_tags, lot).counts) == {"waiting": 2}
