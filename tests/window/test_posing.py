"""The real window posed for a picture."""

from datetime import timedelta
from types import SimpleNamespace

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from app.lookups.recent import entries
from app.problems import Refused
from app.window.places import PLACES
from app.window.posing import open_window, quiet, save, show_in, wait_until
from app.work.holding import hold
from tests.window.overlaps import overlaps

DESK = [place for place in PLACES if place.finds]


@pytest.fixture
def posed(studio, tmp_path):
    """The desk at 900 by 640 on a studio with one cone on hold."""
    studio.do(hold, "cone", studio.cone(), "oil stain")
    studio.book.close()
    window = open_window(studio.book.path, tmp_path, (900, 640), 1.0, DESK)
    yield window
    window.close()


def test_with_nothing_said_the_desk_shows_what_is_on_hold(posed, tmp_path):
    show_in(posed)
    assert posed.floor.bench().hand.page.name.code.accessibleName() == "C·0001·7"
    save(posed, tmp_path / "desk.png")
    image = QImage(str(tmp_path / "desk.png"))
    assert (image.width(), image.height()) == (900, 640)


def test_a_bench_is_shown_by_its_title_with_who_wrote_last_signed_on(posed):
    show_in(posed, "desk")
    assert posed.floor.bench().hand.empty.isVisible()
    assert posed.session.person == "OW"


def test_the_clock_stands_five_minutes_after_the_last_entry(posed):
    (last,) = posed.session.ask(entries, 1)
    assert posed.session.book.clock() == last.written + timedelta(minutes=5)


def test_at_twice_the_text_nothing_lies_on_anything_of_a_cone_on_hold(studio, tmp_path):
    cone = studio.cone()
    studio.do(hold, "cone", cone, "oil in the yarn, seen under the lamp at the reel this morning")
    studio.book.close()
    window = open_window(studio.book.path, tmp_path, (1280, 800), 2.0)
    show_in(window, "Winding")
    window.reception.scanned("C00017")
    quiet(window)
    assert window.floor.bench().cards.cone.isVisible()
    assert overlaps(window) == []
    window.close()


def test_what_grows_deep_inside_has_its_room_before_a_picture_is_taken(qtbot):
    words, inner = QLabel("short"), None
    words.setWordWrap(True)
    for _ in range(12):  # as deep as the words of a card lie in the window
        outer = QWidget()
        QVBoxLayout(outer).addWidget(inner or words)
        inner = outer
    page = QScrollArea()
    page.background = SimpleNamespace(jobs=lambda: 0)
    page.setWidgetResizable(True)
    page.setWidget(inner)
    page.resize(300, 200)
    qtbot.addWidget(page)
    page.show()
    quiet(page)
    words.setText("a sentence that needs many lines " * 40)
    quiet(page)
    assert words.height() >= words.heightForWidth(words.width())


def test_what_never_comes_to_rest_is_refused(monkeypatch, qapp):
    monkeypatch.setattr("app.window.posing.PATIENCE_S", 0.0)
    with pytest.raises(Refused, match="did not come to rest"):
        wait_until(lambda: False)


def test_a_picture_that_cannot_be_written_is_refused(posed, tmp_path):
    with pytest.raises(Refused, match="cannot be written"):
        save(posed, tmp_path / "no such folder" / "desk.png")
