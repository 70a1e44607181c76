"""Two small benches with made-up rows, as a bench is written."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout

from app.calculations.codes import Kind, read
from app.window.bench import Around, Bench
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.count_pad import CountPad
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.tie_patch import TiePatch
from app.window.parts.words import SECOND, BigNumber, CodeWords, Digits, Words
from tests.window.stops import Station

TRAIL = (
    Station("delivery", "14 Mar", "24 cones"),
    Station("cones", "2 cones", "6 + 6"),
    Station("disc", "044", "12 skeins", "one of a pool", "one of 2, 6 + 6"),
    Station("dye lot", "26·15·R6F", "12 skeins", here=True, link="2615R6F"),
    Station("wash", "W-231", "with 1 lot"),
    Station("pile", "12 counted", "none missing"),
    Station("tags", "12 of 12", "tied on"),
    Station("now", "7 sold", "5 elsewhere"),
)
BUYERS = (
    ("R. Osk", "2", "18 Apr", "1187", ""),
    ("walk-in", "1", "20 Apr", "–", "not known to us"),
    ("H. Tallow", "3", "2 May", "1214", "asked for more"),
    ("B. Treddle", "1", "9 May", "1230", ""),
)


def put_by(deed, lot):
    """Put one skein of a lot by."""
    return f"put by 1 skein of {read(lot).grouped} for R. Osk, 10:42", ()


def buyers_of(connection, lot):
    """Who has skeins of a lot."""
    return BUYERS


class LotBench(Bench):
    """One lot at the counter: what is left, what else would do, who has the others."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.lot = ""
        self.buyers = ThingTable(
            ("customer", Head("skeins", right=True), "sold", Head("order", right=True), "note"),
            "who has the others",
            none="Nobody yet: all of it is here.",
        )
        self.put_by = KeyButton("Put by for R. Osk", "F5", strong=True)
        self.put_by.clicked.connect(lambda: self.do(put_by, self.lot))
        self.sell = KeyButton("Sell", "F6")
        self.sell.refuse("1 left, 2 wanted: open the kit.")
        others = Card("Who has the others")
        others.add(self.buyers)
        self.body.addWidget(SideBySide(self._in_hand(), self._needs(), shares=(4, 3)))
        self.body.addWidget(others)
        self.body.addStretch(1)

    def take(self, code: str) -> bool:
        """A lot is shown here; anything else is not for the counter."""
        if read(code).kind is not Kind.LOT:
            return False
        self.lot = code
        self.around.show_trail(TRAIL)
        self.ask(self.buyers.show_rows, buyers_of, code)
        return True

    def entered(self) -> None:
        self.take("2615R6F")

    def _in_hand(self) -> Card:
        card = Card()
        words = QVBoxLayout()
        words.setSpacing(Gap.SMALL)
        for widget in (
            Words("Sluice Keeper's Glove", Size.TITLE, bold=True),
            Words("Tarnfield 4-ply · 100 % wool", ink=SECOND),
            BigNumber("1", "skein left to sell", "388 m · shelf 3, window side"),
            Words(
                "3 on the shelf: 1 put by until Friday for R. Osk, "
                "1 in an unsold kit (Stair-Rail Cowl), 1 free."
            ),
            Words("measured 16 April, 4 readings, D65", Size.SMALL, ink=SECOND),
        ):
            words.addWidget(widget)
        words.addStretch(1)
        swatch = Swatch([Zone("#1B856E")], "Sluice Keeper's Glove", QSize(152, 232))
        row = card.add_row(swatch)
        row.setAlignment(swatch, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        return card

    def _needs(self) -> Card:
        card = Card()
        title = Words("She needs 2 skeins", Size.LEAD, bold=True, wrap=False)
        card.add_row(title, Words("713 m, and only just", ink=SECOND))
        grid = QGridLayout()
        grid.setHorizontalSpacing(Gap.LINE)
        grid.setVerticalSpacing(Gap.HAIR)
        offers = (
            ("#1A846D", "2606H3W", "looks the same", "4 left"),
            ("#2A8870", "2608XKM", "looks the same", "2 left"),
            ("", "2612F5F", "only as a second colour", "5 left"),
        )
        for row, (colour, lot, verdict, left) in enumerate(offers):
            grid.addWidget(Swatch([Zone(colour)] if colour else [], lot), row, 0)
            beside = QVBoxLayout()
            beside.setSpacing(0)
            beside.addWidget(CodeWords(read(lot).grouped))
            beside.addWidget(Words(verdict, ink=SECOND))
            grid.addLayout(beside, row, 1)
            grid.addWidget(Words(left, wrap=False), row, 2)
        grid.setColumnStretch(1, 1)
        card.add(grid)
        card.add_last(Actions(self.put_by, self.sell))
        return card


class ReelBench(Bench):
    """A bench to be read from the reel: the tie colour, the turns, the count."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        tie = Card("Tie with")
        tie.add(TiePatch("yellow", "#E8B500"))
        tie.add(Words("cone C·0114·F · 1 516 g left", ink=SECOND))
        turns = Card("Turns", in_hand=True)
        turns.add(Digits("275", 160))
        turns.add(Words("1.50 m reel · 13 skeins and 255 m", ink=SECOND))
        count = Card("How many did you tie?")
        self.pad = CountPad("skeins")
        count.add(self.pad)
        done = KeyButton("Bundle done", "Enter", strong=True)
        more = KeyButton("Cone finished", "F6"), KeyButton("Fault on cone", "F7")
        count.add(Actions(done, *more))
        self.body.addWidget(SideBySide(tie, turns))
        self.body.addWidget(count)
        self.body.addStretch(1)
