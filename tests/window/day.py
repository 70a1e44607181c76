"""Someone who goes from bench to bench in the real window, and reads what is shown."""

from collections import Counter
from time import perf_counter

from PySide6.QtWidgets import QLabel, QWidget

from app.calculations.codes import Kind, numbered, shown
from app.documents.proof import read_back
from app.documents.stocks import stock
from app.work.studio import choose
from tests.window.benches.at_work import DONE, AtWork, disc, open_window, plate, pot


class Day(AtWork):
    """Someone who goes from bench to bench and reads what is shown."""

    def __init__(self, qtbot, window, studio):
        super().__init__(qtbot, window, studio)
        self.hands, self.seconds = Counter(), 0.0

    def scan(self, *codes):
        self.hands["scans"] += len(codes)
        self._timed(super().scan, *codes)

    def press(self, *keys):
        self.hands["keys"] += len(keys)
        self._timed(super().press, *keys)

    def _timed(self, act, *args):
        """`seconds` is from the first pulse of a scan or key until nothing is going on."""
        began = perf_counter()
        act(*args)
        self.seconds += perf_counter() - began

    def enter(self, number):
        """A bench is entered by the plate on its wall."""
        self.scan(numbered(Kind.BENCH, number).text)

    def sees(self, *words):
        """All these words stand on the open bench, or hang on the trail."""
        def all_there():
            seen = self.on_screen()
            assert [one for one in words if one not in seen] == [], seen

        self._qtbot.waitUntil(all_there, timeout=10_000)

    def on_screen(self):
        """All words that can be seen on the open bench and the trail, a line each."""
        floor = self.window.floor
        found = [
            widget.text() if isinstance(widget, QLabel) else widget.accessibleName()
            for root in (floor.trail, floor.bench()) for widget in root.findChildren(QWidget)
            if widget.isVisible()
        ]
        return "\n".join(dict.fromkeys(filter(None, found))).replace("\N{NO-BREAK SPACE}", " ")


def open_day(qtbot, settings, studio, monkeypatch):
    """The window on a book with a base, a colourway, discs and pots, and no cone yet."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    opened = []
    monkeypatch.setattr("app.window.handing_out.open_paper", opened.append)
    settings.person, settings.station = "OW", "bench"
    for day in open_window(Day, qtbot, settings, studio.book, studio=studio):
        day.opened = opened
        yield day


def receive_one_cone(day):
    """At the door: whose it is, gross, the empty centre, the spinner's batch."""
    for words in ("Aske Mill", "2241", "Tarn", "1520", "64"):
        day.type(words)
        day.press("Enter")
    day.sees("Cone 1 holds 1,456 g net.")
    day.type("A-203")
    day.press("Enter")
    day.scan(DONE)
    assert day.said == "took in 1 cone of Tarnfield 4-ply, note 2241"
    day.sees("C·0001·7")


def wind_six(day):
    day.enter(2)
    day.scan("C00017")
    day.sees("red ties", "275", "13 skeins + 337 m · 5,700 m left")
    day.scan(plate(6))
    day.sees("This cord: 6 skeins", "7 skeins + 337 m · 3,225 m left")
    day.scan(disc(31))
    assert day.said == "wound 6 skeins of C·0001·7, red ties, on disc 031"
    day.sees("Today: 6 skeins on 1 disc", "cone C·0001·7, 6 skeins, in hand")


def dye(day):
    """The pot, its disc, a colourway: the lot's code is born. Answers the code as it is shown."""
    day.enter(4)
    day.scan(pot(1), disc(31))
    day.sees("6 skeins in 1 bundle")
    day.type("slu")
    day.press("Enter")
    day.scan(DONE)
    code, _, made = day.said.partition(": ")
    assert made == "6 skeins of Sluice Keeper's Glove in pot 1"
    day.sees(f"dye lot {code}, 6 skeins, in hand")
    day.scan(pot(1), pot(1))
    assert day.said == "lifted pot 1"
    return code


def count(day):
    day.enter(6)
    day.scan(disc(31))
    day.sees("red ties: 6 due, not counted yet")
    day.scan(plate(6), DONE)
    assert day.said == "counted 6 skeins: 6 red"
    day.sees("6 counted: one pile. Now trim and twist.", "pile 6 counted, none missing")


def tag(day, code):
    """Six tags are printed and tied on, one scan each; the marks that were read off the paper."""
    day.enter(7)
    day.scan(disc(31))
    day.sees(code, "6 counted, 0 tied on, 0 to tie on, 6 to print, 0 void")
    day.press("P")
    day._qtbot.waitUntil(lambda: bool(day.opened))
    day.quiet()
    assert day.said == f"printed 6 tags for {code}"
    day.sees("6 counted, 0 tied on, 6 to tie on, 0 to print, 0 void")
    dpi = max(stock(name).dpi for name in ("swing-85x55", "roll-62x40"))
    marks = [found.code for page in read_back(day.opened[0].read_bytes(), dpi) for found in page]
    assert len(set(marks)) == 6
    for tied, mark in enumerate(marks, 1):
        day.scan(mark)
        assert day.said == f"tied {shown(mark)} on"
        if tied < 6:
            day.sees(f"6 counted, {tied} tied on, {6 - tied} to tie on, 0 to print, 0 void")
    return marks
