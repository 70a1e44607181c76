"""All that is in a book in numbers, which add up."""

from app.lookups.book_totals import book_totals
from app.work.matching import find
from app.work.remaking import cut
from tests.makers import Studio


def test_an_empty_book_has_nothing(studio: Studio) -> None:
    totals = studio.book.ask(book_totals)
    assert (totals.cones, totals.lots, totals.tags, totals.there, totals.somewhere) == (0,) * 5
    assert totals.states == {}


def test_what_was_wound_counted_tagged_and_cut_is_somewhere(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 6)
    studio.wind(studio.cone(), 2)
    studio.do(cut, skeins[0], 5, "mini", 600)
    studio.do(find, 1, 103_000)
    totals = studio.book.ask(book_totals)
    assert (totals.wound, totals.cut, totals.made, totals.found) == ({"skein": 8}, 1, 5, 1)
    assert (totals.tags, totals.tags_void, totals.cones, totals.deliveries) == (6, 1, 2, 2)
    assert totals.there == totals.somewhere == 8 - 1 + 5 + 1


def test_one_counted_too_many_is_a_stranger_that_has_to_be_somewhere_too(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 6)
    studio.dye(group)
    studio.finish(group, red=7)
    totals = studio.book.ask(book_totals)
    assert totals.strangers == 1
    assert totals.there == totals.somewhere == 7
