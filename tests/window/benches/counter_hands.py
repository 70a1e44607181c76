"""The counter open in the real window on a real book, and ways to read what it shows."""

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from app.calculations.codes import Kind, numbered
from app.lookups.studio import people
from app.lookups.things import of_lot
from app.store.deed import By
from app.window.main_window import MainWindow
from app.window.places import PLACES
from app.window.session import Session
from app.work.bundling import make_plates
from app.work.moving import To, move
from tests.window.benches.at_work import AtWork


def shelf(number):
    return numbered(Kind.SHELF, number).text


class AtCounter(AtWork):
    """The shop staff at the counter."""

    @property
    def hand(self):
        return self.bench.hand

    @property
    def card(self):
        """The lot in hand."""
        assert self.hand.lot_card.isVisible()
        return self.hand.lot_card

    @property
    def left(self):
        """The number that decides, with its words."""
        return self.card.left.accessibleName()

    @property
    def rest(self):
        """Where the others are, in a sentence."""
        return self.card.rest.text().replace("\u00a0", " ")

    @property
    def rows(self):
        """What the list offers, row by row."""
        assert self.hand.listed.isVisible()
        return [row.accessibleName() for row in self.hand.listed.rows.rows]

    @property
    def basket(self):
        """What lies on the counter: (mark, price, why not)."""
        return [row.accessibleName() for row in self.hand.basket_card.rows
                if row.isVisible()]

    @property
    def question(self):
        """What is asked, or nothing."""
        asked = self.hand.question
        return "" if asked is None else asked.accessibleName()

    def ask(self, words):
        """Type into the scan line, and Enter."""
        self.press("Escape")
        self.window.head.scan_line.clear()
        self.type(words)
        self.press("Enter")

    def fill(self, field, words):
        """Write into a field, in place of what stands there, with Enter."""
        field.line.setFocus()
        field.line.clear()
        self.type(words)
        self.press("Enter")

    def words(self, widget=None):
        """All words in sight on the bench."""
        labels = (widget or self.bench).findChildren(QLabel)
        return "\n".join(label.text() for label in labels if label.isVisible())

    def shelved(self, count, place, colour="Sluice Keeper's Glove"):
        """A lot of so many skeins on a shelf; its number, its code, and its marks."""
        studio = self.studio
        lot, skeins = studio.tagged(studio.cone(), count)
        studio.do(move, skeins, To("shelf", place=place))
        marks = {thing.id: thing.code for thing in studio.book.ask(of_lot, lot)}
        return lot, studio.code(lot), skeins, [marks[skein] for skein in skeins]


def open_counter(qtbot, settings, studio):
    """The window with the desk and the counter, and two shelves; closes it at the end."""
    settings.person, settings.station = "OW", "till"
    book = studio.book
    studio.shelves = studio.do(make_plates, Kind.SHELF, [4])
    studio.shelves += studio.do(make_plates, Kind.SHELF, [7], "the window")
    session = Session(book, By, lambda: book.ask(people), lambda: "no copy", lambda *_: None)
    places = [place for place in PLACES if place.number in (9, 10)]
    window = MainWindow(settings, places, lambda: session)
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    QTest.qWaitForWindowActive(window)
    at_counter = AtCounter(qtbot, window, studio)
    at_counter.quiet()
    at_counter.enter(9)
    yield at_counter
    window.close()
