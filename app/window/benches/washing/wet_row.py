"""A cord of a load in one line: its colour, disc, count and lot."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout

from app.lookups.bundles import BundleFacts
from app.lookups.together import Water
from app.window.look.look import Gap, Size
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import SECOND, CodeWords, OneLine, Words
from app.work.dividing import skeins

NOT_DYED = "not dyed yet"


class WetRow(QFrame):
    """A cord that was scanned; `out` when its key is pressed: it is taken out again."""

    out = Signal()

    def __init__(self, cord: BundleFacts, key: str = "Take out") -> None:
        super().__init__()
        self.cord = cord
        self.setProperty("ground", "paper")
        row = QHBoxLayout(self)
        row.setContentsMargins(Gap.SMALL, Gap.HAIR, Gap.SMALL, Gap.HAIR)
        row.setSpacing(Gap.LINE)
        none = "no swatch" if cord.lot else NOT_DYED
        row.addWidget(Swatch([Zone(cord.swatch)] if cord.swatch else (), none=none))
        row.addWidget(Words("disc", ink=SECOND, wrap=False))
        row.addWidget(CodeWords(cord.number, Size.TITLE))
        row.addSpacing(Gap.SMALL)
        row.addWidget(CodeWords(f"{cord.count:>2}", Size.TITLE))
        if cord.put_up != "skein":
            row.addWidget(Words(skeins(cord.count, cord.put_up).partition(" ")[2], wrap=False))
        row.addSpacing(Gap.SMALL)
        self.mark = Words("", bold=True)
        what = _what(cord)
        what.addWidget(self.mark)
        self.mark.hide()
        row.addLayout(what, 1)
        if cord.held:
            row.addWidget(HoldPlate(here=False))
        if key:
            out = KeyButton(key)
            out.setAccessibleName(f"{key}: disc {cord.number}")
            out.clicked.connect(self.out)
            row.addWidget(out)

    def show_mark(self, mark: str) -> None:
        """How deep its lot is, and whether it was seen to bleed: 'pale, 0.055 %'."""
        self.mark.setText(mark)
        self.mark.setVisible(bool(mark))


def _what(cord: BundleFacts) -> QVBoxLayout:
    words = QVBoxLayout()
    words.setSpacing(0)
    words.addWidget(CodeWords(cord.lot, Size.LEAD) if cord.lot else OneLine(NOT_DYED))
    words.addWidget(OneLine(cord.colourway or cord.base, Size.SMALL, second=True))
    return words


def mark_of(water: Water, cord: BundleFacts) -> str:
    """The marks of a cord: one, unless its rows are of lots that differ."""
    return " or ".join(dict.fromkeys(
        water.marks[row] for row in cord.rows if row in water.marks))
