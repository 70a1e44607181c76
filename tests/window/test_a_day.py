"""One day in the real window, by scanner and keys alone: from an unpacked cone to applied tags.

Every number is read off the screen.
"""

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QWidget

from app.calculations.codes import Kind, numbered
from app.lookups.studio import people
from app.store.deed import By
from app.window.main_window import MainWindow
from app.window.places import PLACES
from app.window.session import Session
from app.work.bundling import make_plates
from tests.window.benches.at_work import DONE, AtWork, disc, plate, pot


def on_screen(window):
    """All words that can be seen on the open bench and the trail, as one text."""
    bench = window.floor.bench()
    seen = []
    for root in (window.floor.trail, bench):
        for widget in root.findChildren(QWidget):
            if widget.isVisible():
                words = widget.text() if isinstance(widget, QLabel) else widget.accessibleName()
                seen.append(words)
    return "\n".join(dict.fromkeys(filter(None, seen)))


@pytest.fixture
def day(qtbot, settings, studio):
    """The whole window on a book with a base, a colourway, discs and pots, and nothing else."""
    studio.do(make_plates, Kind.BENCH, [1, 2, 4, 6, 7, 10])
    settings.person, settings.station = "OW", "bench"
    book = studio.book
    session = Session(book, By, lambda: book.ask(people), lambda: "no copy", lambda *_: None)
    window = MainWindow(settings, PLACES, lambda: session)
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    QTest.qWaitForWindowActive(window)
    at_work = AtWork(qtbot, window, studio)
    at_work.quiet()
    yield at_work
    window.close()


def enter(day, number):
    """A bench is entered by the plate on its wall."""
    day.scan(numbered(Kind.BENCH, number).text)


def test_from_an_unpacked_cone_to_applied_tags(day):
    studio = day.studio
    from app.work.studio import choose
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    cone = studio.cone()
    enter(day, 2)
    day.scan("C00017")
    day.scan(plate(6))
    day.scan(disc(31))
    enter(day, 4)
    day.scan(pot(1), disc(31))
    day.type("slu")
    day.press("Enter")
    print(on_screen(day.window)); print("-----")
    day.scan(DONE)
    print(on_screen(day.window)); print("-----", day.said)
    day.scan(pot(1))
    print(on_screen(day.window)); print("-----", day.said, day.trouble)
    day.press("L")
    print("-----", day.said, day.trouble)
    enter(day, 6)
    day.scan(disc(31))
    print(on_screen(day.window)); print("-----")
    day.scan(plate(6))
    day.scan(DONE)
    print(on_screen(day.window)); print("-----", day.said)
    enter(day, 7)
    day.scan(disc(31))
    print(on_screen(day.window)); print("-----")
    day.press("P")
    print(on_screen(day.window)); print("-----", day.said, day.trouble)
