"""The dyer's and the washer's day in pictures: pots at their steps, boards, bottles, a wash.

python -m tests.window.dyer_poses DIR draws them, each at both text sizes.
"""

import sys
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from PySide6.QtWidgets import QApplication

from app.calculations.codes import Kind, numbered
from app.lookups.discs import yarn_on_disc
from app.lookups.loads import wet_work
from app.lookups.now import NOW
from app.lookups.recipes import recipe_then
from app.lookups.things import by_code
from app.store.book import Book
from app.store.deed import By
from app.window.posing import save
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, lift, name_colourway
from app.work.loading import into_load
from app.work.painting import into_steamer, lay_on_board
from app.work.readings import bleed, read_bath, room, step_done
from app.work.recipes import ComponentIn, RecipeIn, StepIn, ZoneIn, write_recipe
from app.work.stocks import fill_bottles
from app.work.winding import Drawn, Wound, wind
from tests.makers import Clock
from tests.window.pictures import NEXT_MORNING, TEXTS, Hands, benches, studio, the_window

_STEPS = (StepIn("heat up, 1.2 °C a minute", 850, 46), StepIn("second acid, 6 g"),
          StepIn("hold", 850, 40))
_ZONES = (ZoneIn("A", 450, 60, "pale blue", "#9FC4CF"), ZoneIn("B", 350, 45, "teal", "#1B856E"),
          ZoneIn("C", 80, 30, "speckle", "#22242B"), ZoneIn("D", 120, 12, "gold", "#C79A2B"))
_POURED = tuple(ComponentIn(name, "bottle", amount, zone=zone) for name, amount, zone in (
    ("B1 turquoise", 5_000, "A"), ("B1 turquoise", 10_000, "B"), ("K1 black", 2_500, "C"),
    ("Y2 golden", 20_000, "D")))
_MM = 412_500


class DyeDay:
    """Discs 60 to 66: a pot of 20 L at its second step, a run in the steamer, boards, a wash."""

    def __init__(self, book: Book) -> None:
        self.book, self.random = book, Random(9)

    def live(self) -> None:
        """All of it, on the morning of the pictures."""
        self._do(make_plates, Kind.DISC, range(60, 70))
        self._do(make_plates, Kind.BOARD, [1, 2, 3])
        self._do(make_plates, Kind.STEAMER, [1])
        self._do(make_plates, Kind.POT, [17], "20 L")
        for on, cone, count in ((60, 130, 6), (61, 131, 4), (62, 132, 4), (63, 133, 4),
                                (64, 134, 6), (65, 135, 6), (66, 136, 9)):
            self._wind(on, cone, count)
        self._pots()
        self._trays()
        self._wash()

    def _pots(self) -> None:
        dyes = (ComponentIn("B2 mid blue", "owf", 5_500), ComponentIn("N1 navy", "owf", 4_000))
        self.solid = self._recipe("Quay at Six", "#3A4C74", dyes, liquor_tenths=200, steps=_STEPS)
        bath = self._dye(60, self.solid, 17)
        first = self.book.ask(recipe_then, self.solid).steps[0].id
        self._do(read_bath, bath, ph_centi=650, decidegrees=300)
        self._do(step_done, bath, first)
        self._do(step_done, bath, first + 1)

    def _trays(self) -> None:
        zoned = self._recipe("Half-Tide Steps", "#6FA3A8", _POURED, look="zones", zones=_ZONES)
        bottles = self._do(fill_bottles, zoned)
        self._do(lay_on_board, self._id(board(1)), self._on(61), bottles)
        self._do(into_steamer, [self._id(board(1))], self._id(steamer(1)), self.random)
        self._do(lay_on_board, self._id(board(2)), self._on(62), bottles)

    def _wash(self) -> None:
        pale = (ComponentIn("B1 turquoise", "owf", 400), ComponentIn("B2 mid blue", "owf", 150))
        red = (ComponentIn("R2 scarlet", "owf", 14_000), ComponentIn("R1 cool pink", "owf", 3_000))
        for on, name, swatch, dyes in ((64, "Whey and Water", "#A9C9CE", pale),
                                       (65, "Buoy Paint", "#A8321F", red)):
            self._do(lift, self._dye(on, self._recipe(name, swatch, dyes), 18))
        red_load = self._do(into_load, "wash", yarn=self._on(65), plate=self._id(vessel(2)))
        self._do(bleed, red_load, 2)
        hung = next(one.load for one in self._rails())
        self._do(room, hung, 180, 600)

    def _rails(self):
        return [wet for place in self.book.ask(wet_work, NOW).places for wet in place.cords
                if wet.step == "rail"]

    def _recipe(self, name, swatch, components, **more):
        version = self._do(name_colourway, name, swatch)
        colourway = self.book.ask(recipe_then, version).colourway
        return self._do(write_recipe, RecipeIn(colourway, components, **more))

    def _wind(self, on, cone, count):
        drawn = Drawn(self._id(numbered(Kind.CONE, cone).text), count * _MM)
        self._do(wind, [Wound((drawn,), count, "skein", "green")], self._id(disc(on)))

    def _dye(self, on, version, pot):
        plate = self.book.ask(by_code, numbered(Kind.POT, pot).text)
        bath_in = BathIn(tuple(self._on(on)), version, plate.id if plate else None)
        return self._do(into_bath, bath_in, self.random)["bath"]

    def _on(self, number):
        return self.book.ask(yarn_on_disc, self._id(disc(number)), self.book.clock())

    def _id(self, code):
        return self.book.ask(by_code, code).id

    def _do(self, work, *args, **more):
        return self.book.do(work, *args, by=By("DA", "pots"), **more).answer


def disc(number):
    return numbered(Kind.DISC, number).text


def board(number):
    return numbered(Kind.BOARD, number).text


def steamer(number):
    return numbered(Kind.STEAMER, number).text


def vessel(number):
    return numbered(Kind.VESSEL, number).text


def _pot(number):
    return numbered(Kind.POT, number).text


def _count(number):
    return numbered(Kind.ACTION, 10 + number).text


POSES = (
    ("dyer-pots", "Pots & trays", lambda it: None),
    ("dyer-too-much", "Pots & trays", lambda it: (
        it.scan(_pot(17), disc(63), disc(66)), it.press("q", "u", "Return"))),
    ("dyer-lot", "Pots & trays", lambda it: it.scan(_pot(17))),
    ("dyer-adding", "Pots & trays", lambda it: (it.scan(_pot(17)), it.press("F6"))),
    ("trays-board", "Pots & trays", lambda it: it.scan(board(3), disc(63), _count(1))),
    ("trays-again", "Pots & trays", lambda it: (
        it.scan(board(3), disc(63), _count(1)), it.press("A"))),
    ("trays-steamer", "Pots & trays", lambda it: it.scan(steamer(1))),
    ("trays-steam", "Pots & trays", lambda it: it.scan(steamer(1), numbered(Kind.ACTION, 1).text)),
    ("wash-apart", "Wash & dry", lambda it: it.scan(vessel(2), disc(64))),
    ("wash-rinse", "Wash & dry", lambda it: (it.scan(vessel(2)), it.press("Return", "3", "Return",
                                                                          "3"))),
    ("wash-rails", "Wash & dry", lambda it: None),
    ("bottles", "Weighing", lambda it: it.press(
        *"800", "Return", *"half", "Return", "Return", "F9")),
)
"""(name, bench, what is done before the picture)."""


def main(folder: Path, wanted: str = "") -> None:
    """Draw all poses whose name begins so."""
    QApplication.instance() or QApplication([])
    folder.mkdir(parents=True, exist_ok=True)
    places, _ = benches()
    with TemporaryDirectory() as made:
        path = studio(Path(made))
        book = Book(path, Clock(NEXT_MORNING.replace(hour=8)))
        DyeDay(book).live()
        book.close()
        for text, tail in TEXTS.items():
            for name, bench, done in POSES:
                if name.startswith(wanted):
                    with the_window(path, text, places, bench) as window:
                        done(Hands(window))
                        save(window, folder / f"{name}{tail}.png")


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "pictures"), *sys.argv[2:3])
