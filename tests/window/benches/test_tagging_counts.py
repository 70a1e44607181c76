"""A shelf is counted by scanner alone: right, elsewhere, missing, sold yet here; and put right."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.lookups.skeins import named_by_tag, now_of
from app.work.bundling import make_plates
from app.work.holding import hold
from tests.deeds import put, send
from tests.window.benches.at_work import DONE, begin_work, plate
from tests.window.benches.desk_hands import open_desk

SHELF = numbered(Kind.SHELF, 12).text


@pytest.fixture
def table(qtbot, settings, studio):
    studio.shelf, studio.corner = studio.do(make_plates, Kind.SHELF, [12, 13], "by the window")
    yield from begin_work(qtbot, settings, studio, 7)


def marks(studio, skeins):
    return [studio.book.ask(named_by_tag, [one])[one].mark for one in skeins]


def on_shelf(studio, count, cone=None):
    """So many on shelf 12, and their tags."""
    _, skeins = studio.tagged(cone or studio.cone(), count)
    studio.do(put, skeins, "shelf", studio.shelf)
    return skeins, marks(studio, skeins)


def states(studio, skeins):
    return [studio.book.ask(now_of, one).state for one in skeins]


def test_a_shelf_is_counted_and_the_book_put_right(table):
    """Six: two right, one in the corner by the book, one sold, two missing."""
    studio = table.studio
    _, skeins = studio.tagged(studio.cone(), 6)
    tags = marks(studio, skeins)
    studio.do(put, [*skeins[:2], *skeins[4:]], "shelf", studio.shelf)
    studio.do(put, skeins[2:3], "shelf", studio.corner)
    studio.do(send, skeins[3:4])
    table.scan(SHELF)
    table.press("F6")
    table.scan(DONE)
    count = table.bench.shelf
    assert count.next.text() == (
        "None of the 4 that the book has here was scanned: is the whole shelf counted?")
    table.scan(*tags[:4], DONE)
    assert count.next.text().startswith("What is sold stays as it is")
    assert count.met.accessibleName() == "4 scanned the book has 4 here"
    assert count.sums.text() == ("2 skeins right, 1 skein elsewhere by the book, 1 skein sold by "
                                 "the book, yet here, 2 skeins missing")
    assert [row[0] for row in count.table._rows] == [shown(tag) for tag in tags[2:]]
    table.click(count.why.does)
    assert count.why.field.wrong.text() == "Say what was found: the entry keeps it."
    table.click(count.why.field.line)
    table.type("moved")
    table.press("Enter")
    assert table.said == "put right: 1 skein here, 2 lost: moved"
    now = states(studio, skeins)
    assert now[:3] == ["shelf"] * 3
    assert now[4:] == ["lost", "lost"]
    assert now[3].startswith("sent")
    assert count.next.text() == (
        "All else is put right. Show it to the owner: the book has it sold.")
    assert [row[0] for row in count.table._rows] == [shown(tags[3])]
    studio.check()


def test_a_shelf_that_fits_asks_for_nothing(table):
    studio = table.studio
    _, tags = on_shelf(studio, 2)
    table.scan(SHELF)
    table.press("F6")
    table.scan(*tags)
    table.press("F9")
    count = table.bench.shelf
    assert count.next.text() == "The shelf is as the book says."
    assert count.why is None


def test_by_scanner_alone_done_counts_closes_and_count_says_why(table):
    """Three on hold and one missing that went over the counter: it is told though it was held."""
    studio = table.studio
    cone = studio.cone()
    skeins, tags = on_shelf(studio, 4, cone)
    studio.do(hold, "cone", cone, "oil")
    table.scan(SHELF)
    assert "DONE counts this shelf" in table.words()
    table.scan(DONE, *tags[:3], DONE)
    count = table.bench.shelf
    assert count.why.why.title == "What became of the skein that nobody met?"
    assert [key.accessibleName() for key in count.why.answers][1] == "2  sold without a scan"
    table.scan(plate(2))
    assert table.said == "put right: 0 skeins here, 1 sold: sold without a scan"
    assert any(found.startswith("HOLD") for found in table.found)
    assert states(studio, skeins) == ["shelf"] * 3 + ["sent"]
    assert count.next.text() == "The book is put right."
    table.scan(DONE)
    assert table.bench.shelf is None
    studio.check()


def test_few_scanned_is_doubted_until_it_is_answered_or_more_are_scanned(table):
    studio = table.studio
    skeins, tags = on_shelf(studio, 5)
    table.scan(SHELF, DONE, *tags[:2], DONE)
    count = table.bench.shelf
    asks = "2 of the 5 that the book has here were scanned: is the whole shelf counted?"
    assert count.next.text() == asks
    table.scan(plate(1))  # nothing is asked yet that it could answer
    assert states(studio, skeins) == ["shelf"] * 5
    table.scan(tags[0], DONE)  # counted before: as few as before
    assert count.next.text() == asks
    table.scan(DONE)
    assert count.why.why.title == "What became of the 3 skeins that nobody met?"
    table.scan(tags[2])
    assert count.why is None
    assert [row[0] for row in count.table._rows] == [shown(tag) for tag in tags[3:]]
    table.scan(DONE, plate(1))  # 3 of 5 are not few
    assert states(studio, skeins) == ["shelf"] * 3 + ["lost"] * 2
    assert table.said == "put right: 0 skeins here, 2 lost: looked for, and not found"
    table.press("F2")
    assert states(studio, skeins) == ["shelf"] * 5
    assert count.next.text() == "Scan every tag that lies here, then DONE."


def test_a_reason_that_was_begun_stays_while_more_is_scanned(table):
    studio = table.studio
    _, tags = on_shelf(studio, 3)
    table.scan(SHELF, DONE, tags[0], DONE, DONE)
    table.type("under")
    table.scan(tags[1], DONE)
    assert table.bench.shelf.why.field.line.text() == "under"
    table.press("F8")
    assert table.bench.shelf.why is None
    table.press("F8")
    assert table.bench.shelf is None


def test_done_with_nothing_in_hand_says_what_to_scan(table):
    table.scan(DONE)
    assert "a shelf, which DONE counts" in table.trouble


def test_what_is_sold_and_lies_here_stands_among_the_balances_until_it_is_shelved(
    qtbot, settings, studio
):
    studio.do(make_plates, Kind.SHELF, [12], "by the window")
    _, skeins = studio.tagged(studio.cone(), 1)
    (tag,) = marks(studio, skeins)
    studio.do(send, skeins)
    for work in open_desk(qtbot, settings, studio, 7):
        work.enter(7)
        work.scan(SHELF, DONE, tag, DONE)
        assert work.bench.shelf.next.text() == "Show it to the owner: the book has it sold."
        work.enter(0)
        work.press("Alt+B")
        balances = work.bench.back.balances
        (row,) = balances.rows
        assert row.gap.name.startswith(shown(tag))
        assert "yet met on shelf 012, by the window at the count of" in work.words(balances)
        work.enter(7)
        work.scan(DONE, SHELF, tag)
        work.enter(0)
        work.press("Alt+B")
        assert "All balances add up" in work.words(balances)
