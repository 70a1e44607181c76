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
    print(on_screen(day.window)); print("-----")
    day.type("Aske Mill"); day.press("Enter"); day.type("2241"); day.press("Enter")
    print(on_screen(day.window)); print("-----", day.window.focusWidget().accessibleName())
    day.type("Tarn"); day.press("Enter")
    print(on_screen(day.window)); print("-----", day.window.focusWidget().accessibleName())
    day.type("1520"); day.press("Enter")
    print(on_screen(day.window)); print("-----", day.window.focusWidget().accessibleName(), day.trouble)
