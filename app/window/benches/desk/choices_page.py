"""What a text may stand for: things to choose from, or a pasted list with a sentence each."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.lookups.things import Found
from app.scanning.resolve import Resolution
from app.window.benches.desk.desk_words import how_many
from app.window.benches.desk.thing_row import ThingRows
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


MOST = 500  # rows in sight: the page scrolls, not the list


class ChoicesPage(QWidget):
    """Nothing is chosen by itself; `chosen` gives the thing that a person chose."""

    chosen = Signal(object)  # Found

    def __init__(self) -> None:
        super().__init__()
        self.sentence, self.next_step = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.rows = ThingRows()
        self.listed = ThingTable(
            (Head("", right=True), Head("read", codes=True), Head("", swatch=True), "what it is"),
            "pasted codes", opens=True, most_rows=MOST,
        )
        self._found: list[Found | None] = []
        card = Card(in_hand=True)
        card.add(self.sentence, self.next_step, self.rows, self.listed)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(card)
        column.addStretch(1)
        self.rows.chosen.connect(self.chosen)
        self.listed.opened.connect(self._open)

    def show_choices(self, answer: Resolution) -> None:
        """Things of which one is meant."""
        self._say(answer.sentence, f"{answer.next_step} Its figure and Enter do it too.".strip())
        self.rows.show_things(answer.choices, keys=True)
        self.listed.hide()
        self.rows.show()

    def show_list(self, codes: Sequence[str], answers: Sequence[Resolution]) -> None:
        """Every code of a list with what it is, or why it is nothing."""
        self._found = [answer.found for answer in answers]
        found = sum(one is not None for one in self._found)
        left = len(codes) - found
        self._say(
            f"{how_many(len(codes), 'code')}: {found} in the book"
            + (f", {left} to look at." if left else "."),
            "A row opens what it found. Nothing was chosen where a code did not fit.",
        )
        self.listed.show_rows([
            (str(place), code, (answer.found.swatch or "") if answer.found else "",
             _told(answer))
            for place, (code, answer) in enumerate(zip(codes, answers, strict=True), 1)
        ])
        self.rows.hide()
        self.listed.show()

    def _say(self, sentence: str, next_step: str) -> None:
        self.sentence.setText(sentence)
        self.next_step.setText(next_step)
        self.next_step.setVisible(bool(next_step))

    def _open(self, row: int) -> None:
        found = self._found[row]
        if found is not None:
            self.chosen.emit(found)


def _told(answer: Resolution) -> str:
    """The sentence of one code of a list, and what is near it."""
    near = ", ".join(thing.shown for thing in answer.choices[:4])
    return f"{answer.sentence} Near it: {near}." if near else answer.sentence
