"""A pasted list: every code with its place, and what it is or why it is nothing."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.scanning.resolve import Resolution
from app.window.benches.desk.thing_row import SWATCH, ThingRow
from app.window.look.look import Gap, Size, look
from app.window.parts.words import SECOND, CodeWords, Words

MOST = 120


class ListedRow(QWidget):
    """One code of the list; found, it is a key that opens the thing."""

    def __init__(self, place: int, code: str, answer: Resolution) -> None:
        super().__init__()
        self.sentence = _told(answer)
        self.key = None if answer.found is None else ThingRow(answer.found)
        number = Words(f"{place}", Size.SMALL, ink=SECOND, wrap=False)
        number.setMinimumWidth(look().grid(28))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.SMALL)
        row.addWidget(number, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.key or _nothing(code, self.sentence), 1)


class ListedRows(QWidget):
    """The whole list in its order; `chosen` gives the thing whose row was pressed."""

    chosen = Signal(object)  # Found

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[ListedRow] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.HAIR)

    def show_list(self, codes: Sequence[str], answers: Sequence[Resolution]) -> None:
        """Show another list; of a very long one, its beginning."""
        for old in self.rows:
            self._column.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.rows = [
            ListedRow(place, code, answer)
            for place, (code, answer) in enumerate(zip(codes, answers, strict=True), 1)
            if place <= MOST
        ]
        for row in self.rows:
            self._column.addWidget(row)
            if row.key is not None:
                thing = row.key.thing
                row.key.clicked.connect(lambda _=False, thing=thing: self.chosen.emit(thing))


def _nothing(code: str, sentence: str) -> QWidget:
    words = QVBoxLayout()
    words.setSpacing(0)
    words.addWidget(CodeWords(code))
    words.addWidget(Words(sentence))
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(SWATCH.width() + Gap.LINE, Gap.SMALL, Gap.LINE, Gap.SMALL)
    row.addLayout(words)
    return holder


def _told(answer: Resolution) -> str:
    """The sentence of one code, and what is near it where it is nothing."""
    near = ", ".join(thing.shown for thing in answer.choices[:4])
    if answer.found is None and near:
        return f"{answer.sentence} Near it: {near}."
    return answer.sentence
