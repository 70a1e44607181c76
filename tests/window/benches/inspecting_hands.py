"""The inspecting bench open in the real window on a real book."""

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from app.lookups.studio import people
from app.store.deed import By
from app.window.main_window import MainWindow
from app.window.places import PLACES
from app.window.session import Session
from tests.window.benches.at_work import AtWork


class AtWindow(AtWork):
    """The lead dyer at the north window."""

    @property
    def card(self):
        """The lot in hand."""
        assert self.bench.card.isVisible()
        return self.bench.card

    @property
    def number(self):
        """The number that decides, with its words, and what it means."""
        return f"{self.card.number.accessibleName()}: {self.card.means.text()}"

    @property
    def question(self):
        """What is asked, or nothing."""
        asked = self.card.question
        return "" if asked is None else asked.accessibleName()

    @property
    def page(self):
        """The pictures."""
        assert self.bench.showing.page.isVisible()
        return self.bench.showing.page

    def words(self):
        """All words in sight on the bench."""
        return "\n".join(one.text() for one in self.bench.findChildren(QLabel) if one.isVisible())

    def ask(self, words):
        """Type into the scan line, and Enter."""
        self.press("Escape")
        self.window.head.scan_line.clear()
        self.type(words)
        self.press("Enter")

    def read(self, lightness, a, b, *keys):
        """Type a reading with the keyboard alone; keys are pressed before it is saved."""
        self.press("F7")
        for words in (lightness, a, b):
            self.type(words)
            self.press("Tab")
        self.press(*keys, "Enter")


def open_inspecting(qtbot, settings, book, studio=None):
    """The window with inspecting and the desk; closes it at the end."""
    settings.person, settings.station = "OW", "window"
    session = Session(book, By, lambda: book.ask(people), lambda: "no copy", lambda *_: None)
    places = [place for place in PLACES if place.title in ("Inspecting", "Counter", "Desk")]
    window = MainWindow(settings, places, lambda: session)
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    QTest.qWaitForWindowActive(window)
    at = AtWindow(qtbot, window, studio)
    at.quiet()
    at.enter("I")
    yield at
    window.close()
