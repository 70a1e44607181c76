"""Every test of the window starts in the same look, and leaves nothing running."""

from pathlib import Path

import pytest
from PySide6.QtCore import QObject, QUrl, Slot
from PySide6.QtGui import QDesktopServices
from PySide6.QtTest import QTest

from app.window.computer_settings import ComputerSettings
from app.window.look.look import Look
from app.window.look.stylesheet import wear
from app.window.main_window import MainWindow
from tests.window.example_benches import LotBench, ReelBench
from tests.window.fakes import FakeBook, a_place, a_session


class Opened(QObject):
    """Stands in for whatever program shows a PDF on this computer."""

    def __init__(self):
        super().__init__()
        self.files = []

    @Slot(QUrl)
    def take(self, url):
        self.files.append(Path(url.toLocalFile()))


@pytest.fixture(autouse=True)
def dressed(qapp):
    """Daylight at the size it came with; answers a way to change the text."""
    wear(qapp, Look())
    return lambda factor: wear(qapp, Look(text=factor))


@pytest.fixture
def settings(tmp_path):
    """A computer where SK signed on at the till."""
    kept = ComputerSettings(tmp_path / "computer.ini")
    kept.person, kept.station = "SK", "till"
    return kept


@pytest.fixture
def opened():
    """The files that were opened for the person."""
    viewer = Opened()
    QDesktopServices.setUrlHandler("file", viewer, "take")
    yield viewer.files
    QDesktopServices.unsetUrlHandler("file")


@pytest.fixture
def fake_book():
    return FakeBook()


@pytest.fixture
def shell(qtbot, settings, fake_book):
    """The whole window with two benches, its book open, the reel bench in front."""
    places = [a_place(ReelBench, "Winding", number=2, finds=False), a_place(LotBench)]
    window = MainWindow(settings, places, lambda: a_session(fake_book))
    qtbot.addWidget(window)
    window.show()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    quiet(qtbot, window)
    QTest.qWaitForWindowActive(window)
    yield window
    window.close()


def quiet(qtbot, window):
    """Wait until nothing is going on in the background, and what came of it is on the screen."""
    calm = 0

    def still():
        nonlocal calm
        calm = 0 if window.background.jobs() else calm + 1
        return calm > 1

    qtbot.waitUntil(still, timeout=20_000)
