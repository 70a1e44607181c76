"""The real window on a real book, with hands on its keyboard and a scanner in them."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from app.calculations.codes import Kind, numbered
from app.lookups.studio import people
from app.store.deed import By
from app.window.main_window import MainWindow
from app.window.places import PLACES
from app.window.session import Session
from tests.window.conftest import quiet
from tests.window.hands import pause, send

DONE, UNDO, MIXED, HOLD, SPLIT, SECONDS, GOOD, FAULT = (
    numbered(Kind.ACTION, number).text for number in range(1, 9)
)
PLATES = tuple(place.number for place in PLACES)
_ALT, _NAMES = Qt.KeyboardModifier.AltModifier, {"Enter": "Return"}


def plate(count):
    """The COUNT plate of this number."""
    return numbered(Kind.ACTION, 10 + count).text


def disc(number):
    return numbered(Kind.DISC, number).text


def pot(number):
    return numbered(Kind.POT, number).text


class AtWork:
    """Someone at one bench; `studio` does in the book what was done elsewhere."""

    def __init__(self, qtbot, window, studio):
        self._qtbot, self.window, self.studio = qtbot, window, studio

    @property
    def bench(self):
        return self.window.floor.bench()

    def enter(self, number):
        """Open the bench with this number by its key."""
        self.press(f"Alt+{number}")

    def scan(self, *codes):
        """Pull the trigger on each code, with time between them."""
        for code in codes:
            with self._qtbot.waitSignal(self.window.head.scan_line.scanned):
                send(self.window, code + "\r", 5)
            for _ in range(3):
                pause()
            self.quiet()

    def bounce(self, code):
        """The trigger bounces: the same code comes twice within two seconds."""
        line = self.window.head.scan_line
        with self._qtbot.waitSignal(line.scanned):
            send(self.window, code + "\r", 5)
        self.quiet()
        with self._qtbot.waitSignal(line.scanned_again):
            send(self.window, code + "\r", 5)
        self.quiet()

    def press(self, *keys):
        """Press keys one after the other: 'L', 'Enter', 'F8', 'Alt+4'."""
        window, held = self.window.windowHandle(), self.window.head.scan_line.watch.keystrokes
        for key in keys:
            if len(key) == 1:
                QTest.keyClick(window, key)
            else:
                *alt, name = key.split("+")
                code = getattr(Qt.Key, f"Key_{_NAMES.get(name, name)}")
                QTest.keyClick(window, code, _ALT if alt else Qt.KeyboardModifier.NoModifier)
            self._qtbot.wait(60)
            self._qtbot.waitUntil(lambda: not held.holds())  # a key may be the first of a scan
            self.quiet()

    def type(self, words):
        """Type words with one's fingers, into whatever has the focus."""
        self.press(*words)

    def ask(self, words):
        """Type into the scan line, and Enter."""
        self.press("Escape")
        self.window.head.scan_line.clear()
        self.type(words)
        self.press("Enter")

    def click(self, widget):
        """A tap."""
        self._qtbot.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.quiet()

    def quiet(self):
        """Wait until nothing is going on."""
        quiet(self._qtbot, self.window)

    def words(self, widget=None):
        """All words in sight on the bench."""
        labels = (widget or self.bench).findChildren(QLabel)
        return "\n".join(label.text() for label in labels if label.isVisible())

    @property
    def said(self):
        """What the foot says was done."""
        return self.window.foot.said.text()

    @property
    def note(self):
        """What the foot tells beside it."""
        return self.window.foot.note.text()

    @property
    def trouble(self):
        """What could not be done, or nothing."""
        strip = self.window.floor.problem
        return strip.accessibleName() if strip.isVisible() else ""

    @property
    def found(self):
        """What looks wrong, sentence by sentence."""
        return [finding.sentence for finding in self.window.floor.findings._open]

    @property
    def trail(self):
        """(kind, code) of the stations that hang on the yarn."""
        return [(tag.station.kind, tag.station.code) for tag in self.window.floor.trail.tags]


def open_window(
    hands, qtbot, settings, book, numbers=PLATES, studio=None, copied=lambda: "no copy"
):
    """`hands` of whoever is signed on, at the benches with these numbers; closed at the end."""
    session = Session(book, By, lambda: book.ask(people), copied, lambda *_: None)
    window = MainWindow(settings, [place for place in PLACES if place.number in numbers],
                        lambda: session)
    qtbot.addWidget(window)
    window.show()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    QTest.qWaitForWindowActive(window)
    at_work = hands(qtbot, window, studio)
    at_work.quiet()
    yield at_work
    window.close()


def begin_work(qtbot, settings, studio, number):
    """Open the window at one bench; closes it at the end."""
    settings.person, settings.station = "OW", "bench"
    for at_work in open_window(
            AtWork, qtbot, settings, studio.book, {4, 6, 7, number}, studio):
        at_work.enter(number)
        yield at_work
