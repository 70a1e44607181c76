"""What lies on a shelf, lot by lot."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.shelves import met, on_shelf, shelf_words
from app.work.bundling import make_plates
from app.work.moving import To, move, put_by
from app.work.selling import sell


@pytest.fixture
def shelf(studio):
    return studio.do(make_plates, Kind.SHELF, [12], "by the window")[0]


def lies(studio, shelf):
    return studio.book.ask(on_shelf, shelf)


def test_an_empty_shelf_holds_nothing(studio, shelf):
    assert lies(studio, shelf) == ()
    assert studio.book.ask(shelf_words, shelf) == "shelf 012, by the window"


def test_a_shelf_holds_what_lies_there_by_its_tags(studio, shelf):
    lot, skeins = studio.tagged(studio.cone(), 6)
    studio.do(move, skeins[:4], To("shelf", place=shelf))
    (one,) = lies(studio, shelf)
    assert (one.lot, one.code, one.colourway, one.base, one.put_up, one.count, one.put_by) == (
        lot, studio.code(lot), "Sluice Keeper's Glove", "Tarnfield 4-ply", "skein", 4, 0)
    assert len(one.marks) == 4
    assert all(mark.startswith(f"{one.code}-") for mark in one.marks)


def test_what_was_sold_is_gone_and_what_is_put_by_lies_there_still(studio, shelf):
    (other,) = studio.do(make_plates, Kind.SHELF, [13])
    _, skeins = studio.tagged(studio.cone(), 6)
    studio.do(move, skeins, To("shelf", place=shelf))
    studio.do(sell, skeins[:1])
    studio.do(move, skeins[1:2], To("shelf", place=other))
    studio.do(put_by, skeins[2:4], shelf, studio.clock.now + timedelta(days=7))
    (one,) = lies(studio, shelf)
    assert (one.count, one.put_by) == (4, 2)


def test_two_lots_of_one_colourway_in_one_bin_are_told(studio, shelf):
    first, some = studio.tagged(studio.cone(), 3)
    assert met(lies(studio, shelf)) == ()
    second, more = studio.tagged(studio.cone(), 2)
    studio.do(move, [*some, *more], To("shelf", place=shelf))
    (told,) = met(lies(studio, shelf))
    assert [(one.lot, one.count) for one in told.lots] == [(first, 3), (second, 2)]


def test_a_deed_taken_back_puts_nothing_there(studio, shelf):
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(move, skeins, To("shelf", place=shelf))
    studio.undo()
    assert lies(studio, shelf) == ()
