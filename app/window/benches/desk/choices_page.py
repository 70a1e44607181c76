"""What a text may stand for: things to choose from, or a pasted list with a sentence each."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.scanning.resolve import Resolution
from app.window.benches.desk.desk_words import how_many
from app.window.benches.desk.listed import MOST, ListedRows
from app.window.benches.desk.thing_row import ThingRows
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.words import SECOND, Words


class ChoicesPage(QWidget):
    """Nothing is chosen by itself; `chosen` gives the thing that a person chose."""

    chosen = Signal(object)  # Found

    def __init__(self) -> None:
        super().__init__()
        self.sentence, self.next_step = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.rows = ThingRows()
        self.listed = ListedRows()
        card = Card(in_hand=True)
        card.add(self.sentence, self.next_step, self.rows, self.listed)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(card)
        column.addStretch(1)
        self.rows.chosen.connect(self.chosen)
        self.listed.chosen.connect(self.chosen)

    def show_choices(self, answer: Resolution) -> None:
        """Things of which one is meant."""
        self._say(answer.sentence, f"{answer.next_step} Its figure and Enter do it too.".strip())
        self.rows.show_things(answer.choices, keys=True)
        self.listed.hide()
        self.rows.show()

    def show_list(self, codes: Sequence[str], answers: Sequence[Resolution]) -> None:
        """Every code of a list with what it is, or why it is nothing."""
        found = sum(answer.found is not None for answer in answers)
        left = len(codes) - found
        self._say(
            f"{how_many(len(codes), 'code')}: {found} in the book"
            + (f", {left} to look at." if left else "."),
            "A row opens what it found. Nothing was chosen where a code did not fit."
            + (f" The first {MOST} are shown." if len(codes) > MOST else ""),
        )
        self.listed.show_list(codes, answers)
        self.rows.hide()
        self.listed.show()

    def _say(self, sentence: str, next_step: str) -> None:
        self.sentence.setText(sentence)
        self.next_step.setText(next_step)
        self.next_step.setVisible(bool(next_step))
