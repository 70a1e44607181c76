"""Where to: what became of the thing in hand, in states that add up, and skein by skein."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from app.exchange.tracing import STATE_WORDS
from app.lookups.destinations import Destination
from app.window.benches.desk.desk_words import grams_alike, how_many, skein_words
from app.window.benches.desk.looking import InHand
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.take_down import take_down
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


class WhereTo(Card):
    """States with skeins and grams and their sum; below it the list, of which a row opens."""

    opened = Signal(str)

    def __init__(self) -> None:
        super().__init__("Where to")
        self._sums = QGridLayout()
        self._sums.setHorizontalSpacing(Gap.LINE)
        self._sums.setVerticalSpacing(Gap.HAIR)
        self._sums.setColumnStretch(1, 1)
        self.lines: list[tuple[str, ...]] = []
        self._none = Words(ink=SECOND)
        self.of_cone = ThingTable(
            (Head("skein", codes=True), "is", "comes from it", "hold"), "skeins of the cone",
            opens=True, most_rows=24,
        )
        self.of_lot = ThingTable(
            (Head("skein", codes=True), "is", "hold"), "skeins", opens=True, most_rows=24,
        )
        self._marks: list[str] = []
        self.add(self._sums, self._none, self.of_cone, self.of_lot)
        for table in (self.of_cone, self.of_lot):
            table.opened.connect(self._open)

    def show_thing(self, thing: InHand) -> None:
        """Show what became of another thing."""
        self._show_sums(thing)
        rows = thing.there.rows if thing.there and thing.found.kind != "skein" else ()
        rows = tuple(sorted(rows, key=lambda row: row.mark is None))
        self._marks = [row.mark or "" for row in rows]
        of_cone = thing.found.kind == "cone"
        self.of_cone.show_rows([_cells(row) for row in rows if of_cone])
        self.of_lot.show_rows([_cells(row)[:2] + _cells(row)[3:] for row in rows if not of_cone])
        self.of_cone.setVisible(bool(rows) and of_cone)
        self.of_lot.setVisible(bool(rows) and not of_cone)
        self._none.setText("" if self.lines else _nothing(thing))
        self._none.setVisible(not self.lines)

    def _show_sums(self, thing: InHand) -> None:
        one = thing.traced
        states = [*one.now, *([one.together] if one.together and len(one.now) > 1 else [])]
        weights = grams_alike(state.mg for state in states)
        self.lines = [
            (state.counted, "together" if state is one.together else state.words, weight)
            for state, weight in zip(states, weights, strict=True)
        ]
        take_down(self._sums)
        right = Qt.AlignmentFlag.AlignRight
        for row, (counted, words, weight) in enumerate(self.lines):
            last = len(self.lines) > 1 and row == len(self.lines) - 1
            if last:
                self._sums.addWidget(_Rule(), 2 * row, 0, 1, 3)
            for column, text in enumerate((counted, words, weight)):
                bold = last or column == 0
                cell = Words(text, Size.LEAD if column == 0 else Size.PLAIN, bold=bold,
                             wrap=column == 1)
                side = Qt.AlignmentFlag.AlignLeft if column == 1 else right
                side |= Qt.AlignmentFlag.AlignVCenter
                self._sums.addWidget(cell, 2 * row + 1, column, side)

    def _open(self, row: int) -> None:
        if self._marks[row]:
            self.opened.emit(self._marks[row])


class _Rule(QWidget):
    """The line over a sum."""

    def __init__(self) -> None:
        super().__init__()
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setStyleSheet("background: palette(mid)")
        self.setFixedHeight(1)


def _cells(row: Destination) -> tuple[str, ...]:
    state = STATE_WORDS.get(row.state, row.state)
    what = row.mark or how_many(row.count, row.put_up)
    return what, state, skein_words(row.link), "HOLD" if row.held else ""


def _nothing(thing: InHand) -> str:
    kind = thing.found.kind
    if kind == "cone":
        return "Nothing was wound from it yet."
    if kind == "disc":
        return "It hangs on nothing now."
    if kind == "jar":
        return "What was dyed from it: press T for its trail, or scan it at Weighing."
    return "The book knows of no yarn of it."
