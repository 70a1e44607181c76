"""Skeins go to their shelf: the shelf then tags, or tags and then the shelf."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.lookups.printed import tags_of
from app.lookups.shelves import on_shelf
from app.lookups.skeins import now_of
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.reporting import FaultIn, report_fault
from app.work.selling import sell
from app.work.tagging import spoil_tags
from tests.window.benches.at_work import begin_work, disc
from tests.window.benches.tag_table_hands import eleven_on_the_table


@pytest.fixture
def table(qtbot, settings, studio, opened):
    """At the tag table; shelf 12 is by the window, shelf 13 in the corner."""
    studio.shelf, studio.corner = studio.do(make_plates, Kind.SHELF, [12, 13], "by the window")
    yield from begin_work(qtbot, settings, studio, 7)


def plate(number):
    return numbered(Kind.SHELF, number).text


def mark_of(studio, skein):
    return studio.book.ask(now_of, skein).mark


def lies(studio, shelf):
    return [(one.count, len(one.marks)) for one in studio.book.ask(on_shelf, shelf)]


def test_a_shelf_and_then_its_tags(table):
    studio = table.studio
    lot, skeins = studio.tagged(studio.cone(), 3)
    table.scan(plate(12))
    shelf = table.bench.shelf
    assert shelf.name.text() == "shelf 012, by the window"
    assert shelf.number.accessibleName() == "0 lie here"
    marks = [mark_of(studio, skein) for skein in skeins]
    table.scan(*marks[:2])
    assert lies(studio, studio.shelf) == [(2, 2)]
    assert shelf.number.accessibleName() == "2 lie here"
    assert shelf.last.text() == f"{shown(marks[1])} lies here now."
    assert [list(row)[1:5] for row in shelf.lots.table._rows] == [
        [shown(studio.code(lot)), "Sluice Keeper's Glove", "Tarnfield 4-ply", "2 skeins"]]
    table.press("F2")
    assert shelf.number.accessibleName() == "1 lies here"
    studio.check()


def test_tags_and_then_the_shelf(table):
    studio = table.studio
    eleven = eleven_on_the_table(studio)
    table.scan(disc(31))
    studio.print(eleven, 11)
    tags = [tag.mark for tag in studio.book.ask(tags_of, eleven)]
    table.scan(*tags[:3])
    table.scan(plate(12))
    assert table.said == "3 skeins on shelf 012"
    assert table.bench.shelf.last.text() == "3 skeins just tied on lie here now."
    assert lies(studio, studio.shelf) == [(3, 3)]
    table.press("F8")
    assert table.bench.shelf is None
    assert table.bench.piles.isVisible()


def test_a_tag_that_lies_there_already_is_counted_once(table):
    studio = table.studio
    _, skeins = studio.tagged(studio.cone(), 1)
    mark = mark_of(studio, skeins[0])
    table.scan(plate(12), mark)
    before = studio.last()
    table.scan(mark)
    assert studio.last() == before
    assert table.bench.shelf.last.text() == f"{shown(mark)} lies here already: counted once."


def test_a_skein_from_another_shelf_moves(table):
    studio = table.studio
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(move, skeins, To("shelf", place=studio.corner))
    table.scan(plate(12), mark_of(studio, skeins[0]))
    assert (lies(studio, studio.shelf), lies(studio, studio.corner)) == ([(1, 1)], [(1, 1)])


def test_a_skein_told_faulty_is_shelved_and_what_was_told_is_said(table):
    studio = table.studio
    _, skeins = studio.tagged(studio.cone(), 1)
    mark = mark_of(studio, skeins[0])
    studio.do(report_fault, FaultIn("streak", "counter"), skeins)
    table.scan(plate(12), mark)
    words = "“streak” was told of it on 6 Apr 2026; nobody closed it."
    assert table.bench.shelf.last.text() == f"{shown(mark)} lies here now. {words}"
    table.scan(mark)
    assert table.bench.shelf.last.text().endswith(f"counted once. {words}")


def test_a_tag_whose_skein_was_sold_is_said_and_kept(table):
    studio = table.studio
    _, skeins = studio.tagged(studio.cone(), 1)
    mark = mark_of(studio, skeins[0])
    studio.do(sell, skeins)
    table.scan(plate(12), mark)
    assert any("was sold and is on a shelf again" in found for found in table.found)
    assert lies(studio, studio.shelf) == [(1, 1)]


def test_void_and_loose_tags_move_nothing(table):
    studio = table.studio
    pile = eleven_on_the_table(studio)
    void, loose = studio.print(pile, 2)
    studio.do(spoil_tags, [void], "torn")
    table.scan(plate(12))
    marks = {tag.id: tag.mark for tag in studio.book.ask(tags_of, pile)}
    table.scan(marks[void])
    assert "is void" in table.trouble
    table.scan(marks[loose])
    assert "hangs on no skein yet" in table.trouble
    assert lies(studio, studio.shelf) == []


def test_two_lots_of_one_colourway_in_one_bin_are_said_with_both_counts(table):
    studio = table.studio
    first, some = studio.tagged(studio.cone(), 3)
    second, more = studio.tagged(studio.cone(), 2)
    studio.do(move, some, To("shelf", place=studio.shelf))
    table.scan(plate(12), mark_of(studio, more[0]))
    codes = [shown(studio.code(lot)) for lot in (first, second)]
    assert table.bench.shelf.lots.met.text() == (
        f"2 lots of Sluice Keeper's Glove, Tarnfield 4-ply, lie here: 3 of {codes[0]} and 1 of "
        f"{codes[1]}. Tie them apart, or say it to who buys.")
    assert lies(studio, studio.shelf) == [(3, 3), (1, 1)]


def test_a_shelf_that_is_not_in_the_book_is_told(table):
    table.scan(plate(99))
    assert "is no shelf in the book" in table.trouble
    assert table.bench.shelf is None
