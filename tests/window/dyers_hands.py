"""A dyer's hands for a morning: a scanner, one key, and a balance that types."""

from collections import Counter, defaultdict
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from time import monotonic

from PySide6.QtCore import QCoreApplication, Qt, QThread
from PySide6.QtTest import QTest

from app.calculations.codes import Kind, numbered
from app.lookups.things import by_code
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.jars import JarIn, open_jar, supplier_lot
from app.work.loading import into_load
from app.work.readings import room
from app.work.recipes import ComponentIn, RecipeIn, StepIn, write_recipe
from app.work.stocks import StockIn, make_stock
from app.work.studio import choose
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing
from app.work.winding import Drawn, Wound, wind
from tests.window.day import Day
from tests.window.hands import pause, send

MORNING = datetime(2026, 4, 7, 7, 30, tzinfo=UTC)
JARS = ("B1 turquoise", "Y1 lemon", "K1 black", "N1 navy", "R1 cool pink", "Y2 golden")
STEPS = (StepIn("heat up", 850, 46), StepIn("second acid, 6 g"))
ACID = ComponentIn("citric acid", "owf", 20_000, "assistant")
DEEP_MM, PALE_MM = 401_333, 400_000  # a skein of 100.33 g, six of them 602 g; a skein of 100 g


class MorningClock:
    """A second passes at every look; a test says when an hour has gone by."""

    def __init__(self):
        self.now = MORNING - timedelta(hours=14)

    def __call__(self):
        self.now += timedelta(seconds=1)
        return self.now


def thing(kind, number):
    """The code on a plate."""
    return numbered(kind, number).text


class Evening:
    """What stood ready the evening before: jars, two recipes, pots of 20 L, eight cords in soak.

    Discs 031 to 034 wear 602 g each for Sluice Keeper's Glove, 035 to 038 200 g for Paper Ticket.
    """

    def __init__(self, studio):
        self.studio = studio
        studio.book.clock = studio.clock = MorningClock()
        studio.do(choose, {"name": "Quernlow Dyeyard", "balance step": "0.001"})
        for kind, numbers, words in (
                (Kind.POT, [3, 4, 5, 6], "20 L"), (Kind.VESSEL, [1], "soak tub"),
                (Kind.VESSEL, [11, 12, 13], "wash basin"), (Kind.RAIL, [1, 2], ""),
                (Kind.VESSEL, [21], "bottle")):
            studio.do(make_plates, kind, numbers, words)
        cones = studio.cones(9)
        lot = studio.do(supplier_lot, 1, "p")
        self.fills = [studio.do(open_jar, JarIn(number, dye, ((lot, 500_000),), 1000))
                      for number, dye in enumerate(JARS, 1)]
        self._recipes()
        self._stock()
        self._cords(cones)
        studio.clock.now = MORNING
        self._yesterday_on_the_rail(cones[8])

    def _recipes(self):
        dyes = [ComponentIn(name, "owf", amount) for name, amount in
                (("B1 turquoise", 8_500), ("Y1 lemon", 2_200), ("K1 black", 1_000))]
        pale = [ComponentIn(name, "owf", amount) for name, amount in
                (("R1 cool pink", 450), ("Y2 golden", 200))]
        self.studio.do(name_colourway, "Paper Ticket", "#E0B7A4")
        for colourway, components in ((1, (*dyes, ACID)), (2, pale)):
            self.studio.do(write_recipe, RecipeIn(
                colourway, tuple(components), liquor_tenths=200, steps=STEPS))

    def _stock(self):
        """A litre of 0.1 % golden stands in bottle 21."""
        weighing = self.studio.do(begin_weighing, WeighingIn("stock"))
        line = self.studio.do(begin_line, LineIn(weighing, fill=self.fills[5]))
        self.studio.do(take_weight, line, 1_000)
        self.studio.do(make_stock, StockIn(weighing, 1000, self._plate(Kind.VESSEL, 21)))

    def _cords(self, cones):
        discs = self.studio.discs[:8]
        for place, disc in enumerate(discs):
            count, mm = (6, DEEP_MM) if place < 4 else (2, PALE_MM)
            self.studio.do(wind, [Wound((Drawn(cones[place], count * mm),), count, "skein",
                                        "red")], disc)
        self.studio.do(into_load, "soak", discs=discs, plate=self._plate(Kind.VESSEL, 1))

    def _yesterday_on_the_rail(self, cone):
        """Five skeins hang on rail 2 in a room of 20 °C and 50 %, read this morning."""
        hung = self.studio.wind(cone, 5, "blue", self.studio.discs[8])
        load = self.studio.do(into_load, "rail", yarn=[hung], plate=self._plate(Kind.RAIL, 2))
        self.studio.do(room, load, 200, 500)

    def _plate(self, kind, number):
        return self.studio.book.ask(by_code, thing(kind, number)).id


class Morning(Day):
    """Counts what the hands do for each lot at each place; the balance types by itself."""

    def __init__(self, qtbot, window, studio, pictures=None):
        super().__init__(qtbot, window, studio)
        self._pictures = pictures
        self.per_lot = defaultdict(Counter)
        self.readings = 0

    @contextmanager
    def working(self, place, *lots):
        """All that is scanned and pressed meanwhile is for these lots, at this place."""
        before = self.hands.copy()
        yield
        for lot in lots:
            for what, count in (self.hands - before).items():
                self.per_lot[place, lot][what] += count / len(lots)

    def goes_on(self, earlier):
        """The same hands as before the power failed."""
        self.per_lot, self.hands, self.readings = earlier.per_lot, earlier.hands, earlier.readings
        self.seconds = earlier.seconds

    def scan(self, *codes):
        """One trigger after the other; a key that types nothing says that a code is whole."""
        for code in codes:
            self.hands["scans"] += 1
            self._timed(self._types, code)

    def press(self, *keys):
        """The one key."""
        assert set(keys) == {"Enter"}
        self.hands["keys"] += len(keys)
        for _ in keys:
            QTest.keyClick(self.window.windowHandle(), Qt.Key.Key_Return)
            self._timed(self.quiet)

    def weighs(self, text):
        """The balance types its reading and Enter, with all the digits that it shows."""
        self.readings += 1
        self._timed(self._types, text)

    def _types(self, text):
        with self._qtbot.waitSignal(self.window.head.scan_line.scanned):
            send(self.window, text + "\r", 5)
            QTest.keyClick(self.window.windowHandle(), Qt.Key.Key_ScrollLock)
        for _ in range(3):
            pause()
        self.quiet()

    def quiet(self):
        """Wait until nothing is going on, and look every millisecond."""
        calm, patience = 0, monotonic() + 20
        while calm < 3:
            QCoreApplication.processEvents()
            calm = 0 if self.window.background.jobs() else calm + 1
            assert monotonic() < patience, "something goes on and on"
            if not calm:
                QThread.msleep(1)

    def on_bench(self, *names):
        """What is drawn at bench size: parts of the card at the balance."""
        return tuple(getattr(self.bench.hand.cup, name).accessibleName() for name in names)

    def picture(self, name):
        """For the eye, where somebody asked for pictures."""
        if self._pictures is not None:
            self.window.grab().save(str(self._pictures / f"{name}.png"))
