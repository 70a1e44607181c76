"""A shelf is counted by scanner: right, elsewhere, missing, sold yet here; and put right."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.lookups.skeins import named_by_tag, now_of
from app.work.bundling import make_plates
from tests.deeds import put, send
from tests.window.benches.at_work import DONE, begin_work


@pytest.fixture
def table(qtbot, settings, studio):
    studio.shelf, studio.corner = studio.do(make_plates, Kind.SHELF, [12, 13], "by the window")
    yield from begin_work(qtbot, settings, studio, 7)


def marks(studio, skeins):
    return [studio.book.ask(named_by_tag, [one])[one].mark for one in skeins]


def test_a_shelf_is_counted_and_the_book_put_right(table):
    """Six: two right, one in the corner by the book, one sold, two missing."""
    studio = table.studio
    _, skeins = studio.tagged(studio.cone(), 6)
    tags = marks(studio, skeins)
    studio.do(put, [*skeins[:2], *skeins[4:]], "shelf", studio.shelf)
    studio.do(put, skeins[2:3], "shelf", studio.corner)
    studio.do(send, skeins[3:4])
    table.scan(numbered(Kind.SHELF, 12).text)
    table.press("F6")
    table.scan(DONE)
    count = table.bench.shelf
    assert count.next.text().startswith("Nothing was scanned. Scan what lies here")
    table.scan(*tags[:4], DONE)
    assert count.next.text().startswith("What is sold stays as it is")
    assert count.met.accessibleName() == "4 scanned the book has 4 here"
    assert count.sums.text() == ("2 skeins right, 1 skein elsewhere by the book, 1 skein sold by "
                                 "the book, yet here, 2 skeins missing")
    assert [row[0] for row in count.table._rows] == [shown(tag) for tag in tags[2:]]
    table.press("F10")
    assert count.why.wrong.text() == "Say what was found: the entry keeps it."
    table.click(count.why.line)
    table.type("moved")
    table.press("Enter")
    assert table.said == "put right: 1 skein here, 2 lost: moved"
    now = [studio.book.ask(now_of, one).state for one in skeins]
    assert now[:3] == ["shelf"] * 3
    assert now[4:] == ["lost", "lost"]
    assert studio.book.ask(now_of, skeins[3]).state.startswith("sent")
    studio.check()


def test_a_shelf_that_fits_asks_for_nothing(table):
    studio = table.studio
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(put, skeins, "shelf", studio.shelf)
    table.scan(numbered(Kind.SHELF, 12).text)
    table.press("F6")
    table.scan(*marks(studio, skeins))
    table.press("F9")
    count = table.bench.shelf
    assert count.next.text() == "The shelf is as the book says."
    assert not count.right_key.isVisible()
