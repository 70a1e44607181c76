"""Pictures every bench in telling states, at both text sizes: python -m tests.window.pictures DIR

The studio is the demo's, on the morning after its days: cords wait, a pot is full, a pile has no
tags yet.
"""

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import Qt  # noqa: E402
from PySide6.QtTest import QTest  # noqa: E402
from PySide6.QtWidgets import QApplication, QLineEdit  # noqa: E402

from app.calculations.codes import Kind, numbered  # noqa: E402
from app.demo import live  # noqa: E402
from app.lookups.certainty import PARTLY  # noqa: E402
from app.lookups.destinations import destinations  # noqa: E402
from app.lookups.discs import yarn_on_disc  # noqa: E402
from app.lookups.finishing import expected_by_tie  # noqa: E402
from app.lookups.pots import pots_now, recipes  # noqa: E402
from app.lookups.reel import on_reel  # noqa: E402
from app.lookups.things import by_code  # noqa: E402
from app.store.book import Book  # noqa: E402
from app.store.deed import By  # noqa: E402
from app.window.main_window import MainWindow  # noqa: E402
from app.window.places import PLACES, Place  # noqa: E402
from app.window.posing import open_window, quiet, save, show_in  # noqa: E402
from app.work.dyeing import BathIn, into_bath, lift  # noqa: E402
from app.work.finishing import finish  # noqa: E402
from app.work.winding import Drawn, Wound, wind  # noqa: E402
from tests.makers import Clock  # noqa: E402

NEXT_MORNING = datetime(2026, 4, 14, 7, tzinfo=UTC)
SIZE, TEXTS = (1280, 800), {1.0: "", 2.0: "-200"}


@dataclass(frozen=True, slots=True)
class Pose:
    """One picture: its name, the bench, and what is done there before it is taken."""

    name: str
    bench: str
    done: Callable[["Hands"], None] = lambda _hands: None


class Hands:
    """Someone before the window, with a scanner."""

    def __init__(self, window: MainWindow) -> None:
        self.window = window

    def scan(self, *codes: str) -> None:
        """Scan one after the other."""
        for code in codes:
            self.window.head.scan_line.setText(code)
            self.window.reception.scanned(code)
            quiet(self.window)

    def ask(self, words: str) -> None:
        """Type it into the scan line."""
        self.window.head.scan_line.setText(words)
        self.window.reception.asked(words)
        quiet(self.window)

    def scan_skein(self, number: int, word: str) -> None:
        """Scan a tagged skein that comes from a cone in this way: known, partly, one of a pool."""
        ask = self.window.session.ask
        below = ask(destinations, "cone", ask(by_code, cone(number)).id)
        self.scan(next(row.mark for row in below.rows if row.mark and row.link.word == word))

    def paste(self, codes: list[str]) -> None:
        """Paste a list."""
        self.window.reception.pasted(codes)
        quiet(self.window)

    def press(self, *keys: str) -> None:
        """Press keys of the bench: a letter, or F5."""
        QTest.qWaitForWindowActive(self.window)
        for key in keys:
            named = key if len(key) == 1 else getattr(Qt.Key, f"Key_{key}")
            QTest.keyClick(self.window.windowHandle(), named)
            quiet(self.window)

    def fill(self, *texts: str) -> None:
        """Write into the fields of the bench that can be seen, from the first on."""
        bench = self.window.floor.bench()
        lines = [line for line in bench.findChildren(QLineEdit) if line.isVisible()]
        for line, text in zip(lines, texts, strict=False):
            line.setFocus()
            line.setText(text)
            line.textEdited.emit(text)
            line.editingFinished.emit()
        quiet(self.window)


def cone(number: int) -> str:
    """The code on a cone's card."""
    return numbered(Kind.CONE, number).text


def disc(number: int) -> str:
    """The code on a disc."""
    return numbered(Kind.DISC, number).text


def pot(number: int) -> str:
    """The code on a pot's plate."""
    return numbered(Kind.POT, number).text


def count(number: int) -> str:
    """The plate COUNT with this number."""
    return numbered(Kind.ACTION, 10 + number).text


DONE, MIXED, SPLIT, HOLD = (numbered(Kind.ACTION, n).text for n in (1, 3, 5, 4))


class NextMorning:
    """What the studio did on the morning after the demo's days."""

    def __init__(self, book: Book) -> None:
        self.book, self.random = book, Random(4)

    def happen(self) -> None:
        """Cords are wound, two baths are on, a cord of two cones is dry, a pile is counted."""
        self._wind(46, (120, 8)), self._wind(47, (119, 6)), self._wind(48, (139, 5))
        self._wind(49, (117, 7)), self._wind(51, (140, 6))
        self._dye("Nettle Cellar", 2, 49), self._dye("Brickyard Cat", 4, 51)
        self._wind(50, (118, 8), (123, 6)), self._wind(52, (124, 12))
        self._dye("Ferry Ledger", 3, 50), self._dye("Sluice Keeper’s Glove", 5, 52)
        for full in self.book.ask(pots_now):
            if full.pot in ("003", "005"):
                self.book.do(lift, full.bath, by=By("WS", "pots"))
        (tie,) = self.book.ask(expected_by_tie, self._on(52))
        self.book.do(finish, self._on(52), {tie.tie: 12}, by=By("TW", "finishing"))

    def _wind(self, on: int, *cones: tuple[int, int]) -> None:
        groups = []
        for number, skeins in cones:
            reel = self.book.ask(on_reel, cone(number), self.book.clock(),
                                 [group.tie for group in groups])
            drawn = Drawn(reel.facts.id, skeins * reel.form("skein").mm)
            groups.append(Wound((drawn,), skeins, "skein", reel.tie))
        self.book.do(wind, groups, self._id(disc(on)), by=By("WN", "winding"))

    def _dye(self, colourway: str, number: int, on: int) -> None:
        yarn = tuple(self._on(on))
        version = next(one.version for one in self.book.ask(recipes) if one.colourway == colourway)
        bath = BathIn(yarn, version, self._id(pot(number)))
        self.book.do(into_bath, bath, self.random, by=By("DA", "pots"))

    def _on(self, number: int) -> list[int]:
        return self.book.ask(yarn_on_disc, self._id(disc(number)), self.book.clock())

    def _id(self, code: str) -> int:
        return self.book.ask(by_code, code).id


WHO = {"Receiving": ("AD", "door"), "Winding": ("WN", "reel"), "Pots & trays": ("DA", "pots"),
       "Finishing": ("TW", "table"), "Tagging": ("LP", "tag table"), "Desk": ("OW", "desk")}
POSES = (
    Pose("receiving-empty", "Receiving"),
    Pose("receiving", "Receiving", lambda it: (
        it.fill("Aske Mill", "2307", "Tarnfield 4-ply"), it.press("Return"),
        it.fill("1580", "64"))),
    Pose("winding-empty", "Winding"),
    Pose("winding", "Winding", lambda it: it.scan(cone(123), count(6))),
    Pose("pots-empty", "Pots & trays"),
    Pose("pots", "Pots & trays", lambda it: it.scan(pot(1), disc(46), disc(47))),
    Pose("pots-lot", "Pots & trays", lambda it: it.scan(pot(2))),
    Pose("finishing-empty", "Finishing"),
    Pose("finishing", "Finishing", lambda it: it.scan(disc(50))),
    Pose("tagging-empty", "Tagging"),
    Pose("tagging", "Tagging", lambda it: it.scan(disc(52))),
    Pose("desk-empty", "Desk"),
    Pose("desk-cone", "Desk", lambda it: it.scan(cone(114))),
    Pose("desk-choices", "Desk", lambda it: it.ask("2615")),
    Pose("desk-list", "Desk", lambda it: it.paste(
        ["2615M20", "2615X1R", "2615H72", "4006381333931", cone(114), "2615R6F"])),
    Pose("desk-lot", "Desk", lambda it: it.scan("2615YX1")),
    Pose("desk-skein", "Desk", lambda it: it.scan_skein(122, PARTLY)),
    Pose("desk-slip", "Desk", lambda it: it.ask("2615M2F")),
    Pose("desk-hold", "Desk", lambda it: (it.scan(cone(116)), it.scan(HOLD))),
    Pose("desk-holds", "Desk", lambda it: it.press("F4")),
    Pose("desk-book", "Desk", lambda it: it.press("F5", "F9")),
    Pose("desk-people", "Desk", lambda it: it.press("F6")),
    Pose("desk-plates", "Desk", lambda it: it.press("F7")),
)


def benches() -> tuple[list[Place], list[str]]:
    """The benches that are there, and the titles of those that are still to come."""
    there = [place for place in PLACES if _is_there(place)]
    return there, [place.title for place in PLACES if place not in there]


def _is_there(place: Place) -> bool:
    try:
        return place.bench_class() is not None
    except (ImportError, AttributeError):
        return False


def studio(folder: Path) -> Path:
    """The demo's book, one morning later."""
    path = folder / "quernlow-dyeyard.book"
    live(path)
    book = Book(path, Clock(NEXT_MORNING))
    try:
        NextMorning(book).happen()
    finally:
        book.close()
    return path


@contextmanager
def the_window(book: Path, text: float, places: list[Place], bench: str) -> Iterator[MainWindow]:
    """The window on the book at a text size with one bench in front, closed afterwards."""
    with TemporaryDirectory() as settings:
        window = open_window(book, Path(settings), SIZE, text, places, WHO[bench])
        try:
            show_in(window, bench)
            yield window
        finally:
            window.close()


def pictures(folder: Path, wanted: str = "") -> list[str]:
    """Draw all poses whose name begins so; the names of what was drawn."""
    folder.mkdir(parents=True, exist_ok=True)
    places, missing = benches()
    titles, drawn = {place.title for place in places}, []
    with TemporaryDirectory() as made:
        book = studio(Path(made))
        for text, tail in TEXTS.items():
            for pose in POSES:
                if pose.bench in titles and pose.name.startswith(wanted):
                    with the_window(book, text, places, pose.bench) as window:
                        pose.done(Hands(window))
                        save(window, folder / f"{pose.name}{tail}.png")
                    drawn.append(f"{pose.name}{tail}.png")
    for title in missing:
        print(f"{title} is still to come: no picture of it.")  # noqa: T201
    return drawn


def main(folder: Path, wanted: str = "") -> None:
    """Draw, and say what was drawn."""
    QApplication.instance() or QApplication([])
    drawn = pictures(folder, wanted)
    print(f"{len(drawn)} pictures in {folder}: {', '.join(drawn)}")  # noqa: T201


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "pictures"), *sys.argv[2:3])
