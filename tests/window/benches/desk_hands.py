"""The desk open in the real window on a real book, and ways to read what it shows."""

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from app.lookups.studio import people
from app.store.copies import last_copy
from app.store.deed import By
from app.window.main_window import MainWindow
from app.window.places import PLACES
from app.window.session import Session
from tests.window.benches.at_work import AtWork


class AtDesk(AtWork):
    """The owner at the desk."""

    @property
    def hand(self):
        """The first view."""
        return self.bench.hand

    @property
    def name(self):
        """The card of the thing in hand."""
        return self.hand.page.name

    @property
    def sums(self):
        """Where to: (skeins, state, grams), the sum last."""
        return self.hand.page.where_to.lines

    @property
    def origins(self):
        """Where from: (code, how sure)."""
        return [(row.origin.code, row.sure) for row in self.hand.page.where_from.rows]

    @property
    def choices(self):
        """(code, words, swatch) of what may be chosen."""
        assert self.hand.choices.isVisible()
        return [(row.thing.code, row.thing.words, row.thing.swatch)
                for row in self.hand.choices.rows.rows]

    @property
    def notes(self):
        """What is written over the yarn, with its certainty, for every stop that has a note."""
        tags = self.window.floor.trail.tags
        return [(tag.station.certainty, tag.station.note) for tag in tags if tag.station.note]

    @property
    def held(self):
        """{kind of stop: here or below} for every tag that wears HOLD."""
        tags = self.window.floor.trail.tags
        return {tag.station.kind: tag.station.held for tag in tags if tag.station.held}

    def ask(self, words):
        """Type into the scan line, and Enter."""
        self.press("Escape")
        self.window.head.scan_line.clear()
        self.type(words)
        self.press("Enter")

    def words(self, widget=None):
        """All words in sight on the bench."""
        labels = (widget or self.bench).findChildren(QLabel)
        return "\n".join(label.text() for label in labels if label.isVisible())


def open_desk(qtbot, settings, studio, other=4):
    """The window with one working bench and the desk in front; closes it at the end."""
    settings.person, settings.station = "OW", "desk"
    book = studio.book

    def copied():
        copy = last_copy(book.path)
        return "no copy yet" if copy is None else copy.path.name

    session = Session(book, By, lambda: book.ask(people), copied, lambda *_: None)
    places = [place for place in PLACES if place.number in (other, 10)]
    window = MainWindow(settings, places, lambda: session)
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    QTest.qWaitForWindowActive(window)
    at_desk = AtDesk(qtbot, window, studio)
    at_desk.quiet()
    at_desk.enter(0)
    yield at_desk
    window.close()
