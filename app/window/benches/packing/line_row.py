"""One line of the order in hand: what is wanted, how much of it is taken, where more of it lies."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.lookups.offers import Offer
from app.lookups.orders import LineNow
from app.window.benches.packing.packing_words import offer_words, state_words, taken_words
from app.window.look.look import Gap, Size
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import SECOND, Words


class LineRow(QWidget):
    """The swatch, the words, and the count that decides."""

    def __init__(self, line: LineNow, offered: Sequence[Offer]) -> None:
        super().__init__()
        self.line = line
        self.count = Words(f"{line.filled} of {line.wanted}", Size.TITLE, bold=True, wrap=False)
        self.state = Words(state_words(line), ink=SECOND, wrap=False)
        promised = f" · promised {shown(line.lot_code)}" if line.lot_code else ""
        self.name = Words(f"{line.name}{promised}", Size.LEAD, bold=True)
        self.said = Words(f"Ordered as “{line.what}”.", ink=SECOND)
        self.taken = Words(self._taken())
        self.offers = Words(offer_words(line, offered))
        self.setAccessibleName(f"{line.name}: {line.filled} of {line.wanted}")
        self._lay_out(Swatch((Zone(line.swatch),) if line.swatch else (), line.name,
                             none="no swatch"))
        self.said.setVisible(line.is_read and line.what != line.name)
        self.taken.setVisible(bool(line.skeins))
        self.offers.setVisible(bool(line.open))

    def _taken(self) -> str:
        words = taken_words(self.line)
        if len(self.line.lots) < 2:
            return words
        return f"From {len(self.line.lots)} lots. {words}"

    def _lay_out(self, swatch: Swatch) -> None:
        middle = QVBoxLayout()
        middle.setSpacing(Gap.HAIR)
        for words in (self.name, self.said, self.taken, self.offers):
            middle.addWidget(words)
        middle.addStretch(1)
        right = QVBoxLayout()
        right.setSpacing(0)
        for words in (self.count, self.state):
            words.setAlignment(Qt.AlignmentFlag.AlignRight)
            right.addWidget(words)
        right.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.PART)
        row.addWidget(swatch, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(middle, 1)
        row.addLayout(right)
