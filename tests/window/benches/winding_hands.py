"""Hands at the reel: what is read there, and what hangs on its discs."""

from PySide6.QtTest import QTest

from app.calculations.codes import Kind, numbered
from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.lookups.studio import people
from app.store.deed import By
from app.window.main_window import MainWindow
from app.window.places import PLACES
from app.window.session import Session
from tests.window.benches.at_work import AtWork


def begin_winding(qtbot, settings, studio):
    """The winding bench in the real window, with nothing on its reel; closed at the end."""
    settings.person, settings.station = "OW", "reel"
    book = studio.book
    session = Session(book, By, lambda: book.ask(people), lambda: "no copy", lambda *_: None)
    window = MainWindow(settings, [p for p in PLACES if p.title == "Winding"], lambda: session)
    qtbot.addWidget(window)
    window.show()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    QTest.qWaitForWindowActive(window)
    at_work = AtWork(qtbot, window, studio)
    at_work.quiet()
    yield at_work
    window.close()


def cone(number):
    return numbered(Kind.CONE, number).text


def cards(reel):
    return reel.bench.cards


def big(reel):
    """Tie, turns and count, as they are read across the room."""
    card = cards(reel).cone
    return card.ties.tie, card.turns.accessibleName(), card.count.accessibleName()


def on_disc(studio, number):
    """What hangs on a disc now: {tie: count}, and its cones."""
    found = studio.book.ask(bundle_facts, studio.discs[number - 31], NOW)
    return found and ({part.tie: part.count for part in found.ties}, found.cones)


def groups(reel):
    """The keys of the cord, as they are read."""
    return [key.words() for key in cards(reel).cord.keys]


def today(reel):
    return [row.accessibleName() for row in cards(reel).today.rows]
