"""A cord of a load in one line: its colour, disc, count and lot."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout

from app.lookups.bundles import BundleFacts
from app.window.look.look import Gap, Size
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import SECOND, CodeWords, OneLine, Words
from app.work.dividing import skeins

NOT_DYED = "not dyed yet"


class WetRow(QFrame):
    """A cord that was scanned; `out` when it is taken out again."""

    out = Signal()

    def __init__(self, cord: BundleFacts) -> None:
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
        row.addLayout(_what(cord), 1)
        if cord.held:
            row.addWidget(HoldPlate(here=False))
        out = KeyButton("Take out")
        out.setAccessibleName(f"Take out: disc {cord.number}")
        out.clicked.connect(self.out)
        row.addWidget(out)


def _what(cord: BundleFacts) -> QVBoxLayout:
    words = QVBoxLayout()
    words.setSpacing(0)
    words.addWidget(CodeWords(cord.lot, Size.LEAD) if cord.lot else OneLine(NOT_DYED))
    words.addWidget(OneLine(cord.colourway or cord.base, Size.SMALL, second=True))
    return words
