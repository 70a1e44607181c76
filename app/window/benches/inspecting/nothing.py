"""Nothing is at the window: what to scan, and which lots wait for a verdict."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import day_words
from app.lookups.lot_lines import LotLine
from app.window.look.icons import Icon
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.picture import Picture
from app.window.parts.row_button import RowButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, CodeWords, OneLine, Words


class Nothing(QWidget):
    """`chosen` gives the code of a lot that waits."""

    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[WaitingRow] = []
        self.list_key = KeyButton("Readings from a file", "F11")
        words = QVBoxLayout()
        words.setSpacing(Gap.SMALL)
        words.addWidget(Words("Dry, rested, by daylight: against the standard.", Size.TITLE,
                              bold=True))
        words.addWidget(Words("Scan the disc of a dry cord, a tag, or type a lot's code. Hold it "
                              "against the standard, not against the last lot: small steps add "
                              "up.", ink=SECOND))
        words.addWidget(Words("A file of the instrument: drop it here, CSV, XLSX or CGATS text.",
                              ink=SECOND))
        words.addWidget(Actions(self.list_key))
        card = Card(in_hand=True)
        card.add_row(Picture(Icon.CARD)).addLayout(words, 1)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(0)
        self._none = Words("No lot out of the pot waits for a verdict.", ink=SECOND)
        waiting = Card("Waiting for a verdict")
        waiting.add(self._none, self._rows)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(card)
        column.addWidget(waiting)
        column.addStretch(1)

    def show_waiting(self, lines: Sequence[LotLine]) -> None:
        """The lots that came out of the pot first come first."""
        take_down(self._rows)
        self.rows = [WaitingRow(line) for line in lines]
        for row in self.rows:
            row.clicked.connect(lambda _=False, code=row.line.code: self.chosen.emit(code))
            self._rows.addWidget(row)
        self._none.setVisible(not lines)


class WaitingRow(RowButton):
    """A lot that waits, as a key."""

    def __init__(self, line: LotLine) -> None:
        super().__init__()
        self.line = line
        dyed = f"dyed {day_words(line.dyed)}" if line.dyed else "from before the book"
        self.setAccessibleName(f"{line.shown}, {line.colourway}, {line.base}, {dyed}")
        self.row.setContentsMargins(0, Gap.SMALL, Gap.LINE, Gap.SMALL)
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(CodeWords(line.shown))
        words.addWidget(OneLine(f"{line.colourway}, {line.base}, {dyed}"))
        self.row.addWidget(Swatch([Zone(line.swatch)] if line.swatch else (), none="no swatch"))
        self.row.addLayout(words, 1)
