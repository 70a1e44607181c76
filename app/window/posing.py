"""The real window posed for a picture: opened on a book, a bench or a thing in sight, at rest."""

from collections.abc import Callable, Sequence
from datetime import timedelta
from pathlib import Path
from time import monotonic

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QThread
from PySide6.QtWidgets import QApplication

from app.lookups.holds import live_holds
from app.lookups.recent import entries
from app.lookups.things import by_name
from app.problems import Refused
from app.store.book import Book
from app.window.computer_settings import ComputerSettings
from app.window.main_window import MainWindow
from app.window.places import PLACES, Place
from app.window.session import Session, open_session

PATIENCE_S = 60.0


def open_window(
    book: Path,
    folder: Path,
    size: tuple[int, int],
    text: float,
    places: Sequence[Place] = PLACES,
    who: tuple[str, str] = ("", "desk"),
) -> MainWindow:
    """The window on a book, open and quiet; who wrote last in it has signed on, if no other.

    The settings of this picture lie in the folder; `who` gives initials and station.
    """
    session = open_session(book)
    _stop_the_clock(session)
    settings = ComputerSettings(folder / "computer.ini")
    settings.text = text
    last = next((entry.person for entry in session.ask(entries, 1)), "")
    settings.person, settings.station = who[0] or last, who[1]
    window = MainWindow(settings, places, lambda: session)
    window.resize(*size)
    window.show()
    wait_until(lambda: window.floor.bench() is not None)
    quiet(window)
    return window


def show_in(window: MainWindow, show: str = "") -> None:
    """Open a bench by its title, or what a code or name stands for at the desk."""
    places = window.floor.places
    titled = next((place for place in places if place.title.casefold() == show.casefold()), None)
    window.floor.open_place(titled or next(place for place in places if place.finds))
    quiet(window)
    if titled is None and window.session is not None:
        wanted = show or _telling(window.session)
        window.head.scan_line.setText(wanted)
        if wanted:
            window.reception.asked(wanted)
    quiet(window)


def save(window: MainWindow, png: Path) -> None:
    """Save what the window shows now."""
    quiet(window)
    if not window.grab().save(str(png), "PNG"):
        raise Refused(f"{png} cannot be written; no picture was made.", "Say another place.")


def quiet(window: MainWindow) -> None:
    """Wait until nothing is going on behind the window and all is laid out.

    What a card needs goes up to the bench one widget a round: it takes as many as it takes.
    """
    for _ in range(3):
        wait_until(lambda: window.background.jobs() == 0)
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        wait_until(lambda: not QEventLoop().processEvents())


def wait_until(done: Callable[[], bool]) -> None:
    """Let the window go on until this is so; refused where it never comes to be."""
    end = monotonic() + PATIENCE_S
    while not done():
        if monotonic() > end:
            raise Refused("The window did not come to rest; no picture was made.")
        QApplication.processEvents()
        QThread.msleep(2)  # leaves the processor to what is waited for


def _stop_the_clock(session: Session) -> None:
    """A picture shows the book as it was left: a few minutes after its last entry."""
    last = next((entry.written for entry in session.ask(entries, 1)), None)
    if last is not None and isinstance(session.book, Book):
        at = last + timedelta(minutes=5)
        session.book.clock = lambda: at


def _telling(session: Session) -> str:
    """What is worth a picture: what is on hold, else the newest lot."""
    held = (hold.code for hold in session.ask(live_holds) if hold.code)
    newest = (lot.code for lot in session.ask(by_name, "", 1))
    return next(iter((*held, *newest)), "")
