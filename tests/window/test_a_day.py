"""One day in the real window, by scanner and keys alone: from an unpacked cone to applied tags.

Every number is read off the screen.
"""

import pytest

from app.calculations.codes import shown
from app.documents.proof import read_back
from app.lookups.origins import members_of, origins
from app.lookups.things import by_code
from app.store.journal import verify
from tests.window.benches.at_work import disc
from tests.window.day import count, dye, open_day, receive_one_cone, tag, wind_six


@pytest.fixture
def day(qtbot, settings, studio, monkeypatch):
    """The first morning of a studio."""
    yield from open_day(qtbot, settings, studio, monkeypatch)


def test_from_an_unpacked_cone_to_applied_tags(day):
    receive_one_cone(day)
    wind_six(day)
    code = dye(day)
    count(day)
    marks = tag(day, code)
    day.enter(10)
    day.scan(marks[2])
    day.sees(shown(marks[2]), "C·0001·7", code, "known")
    book = day.studio.book
    found = book.ask(by_code, marks[2])
    above = book.ask(lambda c: origins(c, members_of(c, found, day.studio.clock.now)))
    assert [(one.code, one.sure) for one in above if one.kind in ("cone", "lot")] == [
        ("C·0001·7", "known"), (code, "known")]
    assert book.ask(verify).entries > 12
    assert day.hands["scans"] == 25


def test_a_bounced_tag_is_counted_once(day):
    receive_one_cone(day)
    wind_six(day)
    code = dye(day)
    count(day)
    day.enter(7)
    day.scan(disc(31))
    day.press("P")
    day._qtbot.waitUntil(lambda: bool(day.opened))
    day.quiet()
    (mark, *_) = [found.code for page in read_back(day.opened[0].read_bytes(), 300)
                  for found in page]
    day.bounce(mark)
    day.sees("6 counted, 1 tied on, 5 to tie on, 0 to print, 0 void", code)
