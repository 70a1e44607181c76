"""Pictures every bench in telling states, at both text sizes: python -m tests.window.pictures DIR

The studio is the small one of the tests, on the morning after its week: cords wait, a pot is full,
a pile has no tags yet.
"""

import os
import shutil
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
from app.lookups.certainty import PARTLY  # noqa: E402
from app.lookups.destinations import destinations  # noqa: E402
from app.lookups.discs import yarn_on_disc  # noqa: E402
from app.lookups.finishing import expected_by_tie  # noqa: E402
from app.lookups.pots import pots_now, recipes  # noqa: E402
from app.lookups.reel import on_reel  # noqa: E402
from app.lookups.things import by_code, of_lot  # noqa: E402
from app.store.book import Book  # noqa: E402
from app.store.deed import By  # noqa: E402
from app.window.look.look import look  # noqa: E402
from app.window.main_window import MainWindow  # noqa: E402
from app.window.places import PLACES, Place  # noqa: E402
from app.window.posing import open_window, quiet, save, show_in  # noqa: E402
from app.work.bundling import make_plates  # noqa: E402
from app.work.dyeing import BathIn, into_bath, lift  # noqa: E402
from app.work.finishing import finish  # noqa: E402
from app.work.loading import into_load  # noqa: E402
from app.work.winding import Drawn, Wound, wind  # noqa: E402
from tests.makers import Clock  # noqa: E402
from tests.small import live_small  # noqa: E402
from tests.window.inspecting_poses import BY_THE_WINDOW  # noqa: E402
from tests.window.reading_poses import READ_BACK  # noqa: E402
from tests.window.shop_day import stock_the_shop  # noqa: E402
from tests.window.tag_poses import TAGS_AND_PRINTERS  # noqa: E402
from tests.window.tag_table_poses import AT_THE_TAG_TABLE  # noqa: E402
from tests.window.weighing_poses import AT_THE_BALANCE, open_the_jars  # noqa: E402

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

    def scan_tags(self, lot: str, count: int) -> None:
        """Scan so many tagged skeins of a lot."""
        ask = self.window.session.ask
        tags = ask(of_lot, ask(by_code, lot).id)
        self.scan(*[tag.code for tag in tags if tag.kind == "skein"][:count])

    def gather(self, lot: str, count: int) -> None:
        """Skeins of a lot go back on a cord, with a disc that hangs on nothing at this text."""
        self.scan_tags(lot, count)
        self.press("C")
        self.scan(disc(52 + round(look().text)))

    def write_order(self) -> None:
        """An order by telephone is written; it is not placed yet."""
        self.press("F4")
        self.fill("", "Dag Berg", "")
        self.press("Return")
        self.fill("Ferry Ledger, Tarnfield 4-ply", "3", "")
        self.press("Return")
        self.fill("a pattern book", "1", "")

    def find_streaks(self, lot: str) -> None:
        """Two skeins of a lot have a streak."""
        for number in (1, 2):
            self.scan_tags(lot, number)
            self.press("F")
            self.scan(count(1), DONE)
        self.press("F1")

    def paste(self, codes: list[str]) -> None:
        """Paste a list."""
        self.window.reception.pasted(codes)
        quiet(self.window)

    def press(self, *keys: str) -> None:
        """Press keys of the bench: a letter, F5, or Alt+E."""
        QTest.qWaitForWindowActive(self.window)
        for key in keys:
            *alt, name = key.split("+")
            named = name if len(key) == 1 else getattr(Qt.Key, f"Key_{name}")
            held = Qt.KeyboardModifier.AltModifier if alt else Qt.KeyboardModifier.NoModifier
            QTest.keyClick(self.window.windowHandle(), named, held)
            QTest.qWait(80)  # so long a key may be the beginning of a scan
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


def shelf(number: int) -> str:
    """The code on a shelf's plate."""
    return numbered(Kind.SHELF, number).text


def pot(number: int) -> str:
    """The code on a pot's plate."""
    return numbered(Kind.POT, number).text


def count(number: int) -> str:
    """The plate COUNT with this number."""
    return numbered(Kind.ACTION, 10 + number).text


def vessel(number: int) -> str:
    """The code on a tub's or machine's plate."""
    return numbered(Kind.VESSEL, number).text


def rail(number: int) -> str:
    """The code on a rail's plate."""
    return numbered(Kind.RAIL, number).text


DONE, MIXED, SPLIT, HOLD = (numbered(Kind.ACTION, n).text for n in (1, 3, 5, 4))


class NextMorning:
    """What the studio did on the morning after its week."""

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
        self._wash()
        open_the_jars(self.book)

    def _wash(self) -> None:
        """One cord soaks, two hang on a rail, one was washed and is in the machine still."""
        ws = By("WS", "wash")
        for number, words in ((1, "soak tub"), (2, "machine")):
            self.book.do(make_plates, Kind.VESSEL, [number], words, by=ws)
        for on, number, colourway in ((40, 141, "Wet Thatch Tuesday"), (41, 125, "Seventh Buoy"),
                                      (42, 126, "Plum Stone in a Pocket")):
            self._wind(on, (number, 6)), self._dye(colourway, 3, on)
            self.book.do(lift, self.book.ask(pots_now)[-1].bath, by=ws)
        self._load("soak", vessel(1), 46), self._load("wash", vessel(2), 40, 41, 42)
        self._load("spin", vessel(2), 40, 41), self._load("rail", rail(2), 40, 41)

    def _load(self, step: str, place: str, *discs: int) -> None:
        ids = [self._id(disc(number)) for number in discs]
        self.book.do(into_load, step, discs=ids, plate=self._id(place), by=By("WS", "wash"))

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
       "Weighing": ("DA", "balance"), "Wash & dry": ("WS", "wash"), "Finishing": ("TW", "table"),
       "Inspecting": ("DA", "window"),
       "Tagging": ("LP", "tag table"), "Packing": ("LP", "packing"),
       "Counter": ("SK", "till"), "Desk": ("OW", "desk")}
POSES = (
    Pose("receiving-empty", "Receiving"),
    Pose("receiving", "Receiving", lambda it: (
        it.fill("Aske Mill", "2307", "Tarnfield 4-ply"), it.press("Return"),
        it.fill("1580", "64"))),
    Pose("old-lots", "Receiving", lambda it: (
        it.press("F9"), it.fill("Tarnfield 4-ply", "skein"), it.press("Return"),
        it.fill("OLD 77", "Ferry Ledger", "4"), it.press("Return"),
        it.fill("M-12", "Lock House Door", "9"))),
    Pose("winding-empty", "Winding"),
    Pose("winding", "Winding", lambda it: it.scan(cone(123), count(6))),
    *(Pose(name, "Weighing", done) for name, done in AT_THE_BALANCE.items()),
    Pose("pots-empty", "Pots & trays"),
    Pose("pots", "Pots & trays", lambda it: it.scan(pot(1), disc(46), disc(47))),
    Pose("late-asked", "Pots & trays", lambda it: it.press("F12")),
    Pose("late", "Pots & trays", lambda it: (
        it.press("F12", "Return"), it.scan(pot(1), disc(46)))),
    Pose("pots-lot", "Pots & trays", lambda it: it.scan(pot(2))),
    Pose("washing", "Wash & dry"),
    Pose("washing-load", "Wash & dry", lambda it: it.scan(vessel(2), disc(50), disc(42))),
    Pose("washing-rail", "Wash & dry", lambda it: it.scan(rail(1), disc(42))),
    Pose("washing-split", "Wash & dry", lambda it: it.scan(
        vessel(2), disc(50), SPLIT, disc(50), count(5))),
    *(Pose(name, "Inspecting", done) for name, done in BY_THE_WINDOW.items()),
    Pose("finishing-empty", "Finishing"),
    Pose("finishing", "Finishing", lambda it: it.scan(disc(50))),
    Pose("finishing-skeins", "Finishing", lambda it: it.scan_tags("2615YX1", 6)),
    Pose("finishing-minis", "Finishing", lambda it: (
        it.scan_tags("2615YX1", 1), it.press("M"), it.fill("5", "0.6"))),
    Pose("finishing-seconds", "Finishing", lambda it: (
        it.scan_tags("2615YX1", 2), it.press("S"))),
    Pose("finishing-gathered", "Finishing", lambda it: it.gather("2615WW4", 2)),
    *(Pose(name, "Tagging", done) for name, done in AT_THE_TAG_TABLE.items()),
    Pose("packing-empty", "Packing"),
    Pose("packing-writing", "Packing", lambda it: it.write_order()),
    Pose("packing-order", "Packing", lambda it: (it.write_order(), it.press("F5"))),
    Pose("counter-empty", "Counter"),
    Pose("counter-lot", "Counter", lambda it: it.scan("2615YX1")),
    Pose("counter-fits", "Counter", lambda it: it.ask("26")),
    *(Pose(name, bench, done) for name, (bench, done) in READ_BACK.items()),
    Pose("counter-basket", "Counter", lambda it: (
        it.scan_tags("2615R6F", 2), it.scan_tags("2615YX1", 1))),
    Pose("counter-keep", "Counter", lambda it: (it.scan("2615YX1"), it.press("F3"))),
    Pose("counter-more", "Counter", lambda it: (it.scan("2615YX1"), it.press("F11"))),
    Pose("counter-ways", "Counter", lambda it: it.scan("2615YX1", count(6))),
    Pose("counter-said", "Counter", lambda it: (it.scan("2615YX1", count(6)), it.press("1"))),
    Pose("counter-offered", "Counter", lambda it: (
        it.scan("2615YX1", count(6)), it.press("2", "3", "3", "2"))),
    Pose("counter-buyer", "Counter", lambda it: it.ask("tallow")),
    Pose("counter-hold", "Counter", lambda it: it.scan_tags("2615X1R", 1)),
    Pose("desk-empty", "Desk"),
    Pose("desk-cone", "Desk", lambda it: it.scan(cone(114))),
    Pose("desk-choices", "Desk", lambda it: it.ask("2615")),
    Pose("desk-list", "Desk", lambda it: it.paste(
        ["2615M20", "2615X1R", "2615H72", "4006381333931", cone(114), "2615R6F"])),
    Pose("desk-lot", "Desk", lambda it: it.scan("2615YX1")),
    Pose("desk-skein", "Desk", lambda it: it.scan_skein(122, PARTLY)),
    Pose("desk-slip", "Desk", lambda it: it.ask("2615M2F")),
    Pose("desk-hold", "Desk", lambda it: (it.scan(cone(116)), it.scan(HOLD))),
    Pose("desk-fault", "Desk", lambda it: (it.scan_tags("2615YX1", 1), it.press("F"))),
    Pose("desk-suspects", "Desk", lambda it: it.find_streaks("2615YX1")),
    Pose("desk-recall", "Desk", lambda it: (it.scan(cone(114)), it.press("R"))),
    Pose("desk-trail", "Desk", lambda it: (it.scan(cone(114)), it.press("T", "Right"))),
    Pose("desk-trail-words", "Desk", lambda it: (it.scan("2615YX1"), it.press("T", "W"))),
    Pose("desk-holds", "Desk", lambda it: it.press("F4")),
    Pose("desk-book", "Desk", lambda it: it.press("F5", "F9")),
    Pose("desk-people", "Desk", lambda it: it.press("F6")),
    Pose("desk-plates", "Desk", lambda it: it.press("F7")),
    Pose("desk-shop", "Desk", lambda it: it.press("F11")),
    *(Pose(name, "Desk", done) for name, done in TAGS_AND_PRINTERS.items()),
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
    """The small studio's book, one morning later."""
    path = folder / "quernlow-dyeyard.book"
    live_small(path)
    book = Book(path, Clock(NEXT_MORNING))
    try:
        NextMorning(book).happen()
    finally:
        book.close()
    return path


def shop(book: Path) -> Path:
    """A copy of this book with stock on the shelves and customers served."""
    path = book.with_name("shop.book")
    shutil.copy(book, path)
    stocked = Book(path, Clock(NEXT_MORNING))
    try:
        stock_the_shop(stocked)
    finally:
        stocked.close()
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
        books = {"Counter": shop(book)}
        for text, tail in TEXTS.items():
            for pose in POSES:
                if pose.bench in titles and pose.name.startswith(wanted):
                    with the_window(
                            books.get(pose.bench, book), text, places, pose.bench) as window:
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
