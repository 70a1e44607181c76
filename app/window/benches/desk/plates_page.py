"""Discs and plates: made, and put on paper to be cut; and the scanner check."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.codes import Kind
from app.lookups.plates import PlatesMade
from app.problems import BadInput
from app.window.benches.desk.desk_words import kind_words, plates_words
from app.window.benches.desk.scanner_check import ScannerCheck
from app.window.benches.desk.scanners_card import ScannersCard
from app.window.look.look import Gap
from app.window.parts.amounts import read_count
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words

KINDS = (Kind.DISC, Kind.POT, Kind.RAIL, Kind.SHELF, Kind.REEL, Kind.BOARD, Kind.STEAMER,
         Kind.VESSEL)
MOST = 200
_FIRST_COUNT = {Kind.DISC: 20}


class PlatesPage(QWidget):
    """`made` gives kind, numbers and words; `paper` the kind to be put on paper again."""

    made = Signal(object, object, str)  # Kind, range, words
    paper = Signal(object)  # Kind; None for actions and benches

    def __init__(self) -> None:
        super().__init__()
        self.kind = Kind.DISC
        self._there: dict[Kind, PlatesMade] = {}
        self._rows: list[Kind] = []
        self.kinds = {kind: KeyButton(kind_words(kind).capitalize()) for kind in KINDS}
        self.first = Field("First number", _number)
        self.count = Field("How many", _how_many)
        self.words = TextField("What it is called, if anything", "heater side")
        self.make_key = KeyButton("Make them", strong=True)
        self.actions_key = KeyButton("Action and bench plates as paper")
        self.check, self.scanners = ScannerCheck(), ScannersCard()
        self.table = ThingTable(("kind", "numbers", Head("made", right=True)), "plates made",
                                "No disc or plate was made yet.", opens=True, most_rows=6)
        self._lay_out()
        for kind, key in self.kinds.items():
            key.setCheckable(True)
            key.clicked.connect(partial(self.choose, kind))
        self.make_key.clicked.connect(self._make)
        self.words.line.returnPressed.connect(self._make)
        self.table.opened.connect(lambda row: self.paper.emit(self._rows[row]))
        self.actions_key.clicked.connect(lambda: self.paper.emit(None))
        self.choose(Kind.DISC)

    def show_plates(self, plates: Sequence[PlatesMade]) -> None:
        """Show what was made, and offer the next free number."""
        self._there = {one.kind: one for one in plates}
        self._rows = list(self._there)
        self.table.show_rows([
            (plates_words(one.kind).capitalize(), one.runs, str(len(one.numbers)))
            for one in plates
        ])
        self.choose(self.kind)

    def choose(self, kind: Kind) -> None:
        """Make plates of this kind."""
        self.kind = kind
        for other, key in self.kinds.items():
            key.setChecked(other is kind)
        there = self._there.get(kind)
        self.first.line.setText(str(there.next_number if there else 1))
        self.count.line.setText(str(_FIRST_COUNT.get(kind, 1)))
        self.words.setVisible(kind is not Kind.DISC)
        self.make_key.say(f"Make {plates_words(kind)}")

    def _make(self) -> None:
        first, count, words = self.first.value(), self.count.value(), self.words.value()
        if first is not None and count is not None and words is not None:
            named = "" if self.kind is Kind.DISC else words
            self.made.emit(self.kind, range(first, first + count), named)

    def _lay_out(self) -> None:
        make, there = Card("Make discs and plates", in_hand=True), Card("Made so far")
        numbers = QHBoxLayout()
        numbers.setSpacing(Gap.PART)
        numbers.addWidget(self.first)
        numbers.addWidget(self.count)
        make.add(Actions(*self.kinds.values()), numbers, self.words, Actions(self.make_key))
        there.add(self.table, Words("A row puts them on paper again.", ink=SECOND))
        there.add_last(Actions(self.actions_key))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(SideBySide(make, there, shares=(1, 1)))
        column.addWidget(SideBySide(self.check, self.scanners, shares=(1, 1)))
        column.addStretch(1)


def _number(text: str) -> int:
    number = read_count(text)
    if not 1 <= number <= 99_999:
        raise BadInput(f"{number} is no number for a plate.", "Write one from 1 to 99999.")
    return number


def _how_many(text: str) -> int:
    count = read_count(text)
    if not 1 <= count <= MOST:
        raise BadInput(f"{count} plates at once cannot be made.", f"Make 1 to {MOST} at a time.")
    return count
