"""A tagged skein in one line: its mark, what it is, where the book has it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout

from app.calculations.codes import shown
from app.lookups.finished import FinishedSkein
from app.window.look.look import Gap, Size
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import CodeWords, OneLine
from app.work.moving import WORDS


class SkeinRow(QFrame):
    """A skein that was scanned; `out` when it is laid back."""

    out = Signal()

    def __init__(self, skein: FinishedSkein) -> None:
        super().__init__()
        self.skein = skein
        self.setProperty("ground", "paper")
        row = QHBoxLayout(self)
        row.setContentsMargins(Gap.SMALL, Gap.HAIR, Gap.SMALL, Gap.HAIR)
        row.setSpacing(Gap.LINE)
        zones = [Zone(skein.swatch)] if skein.swatch else ()
        row.addWidget(Swatch(zones, none="no swatch"))
        row.addWidget(CodeWords(shown(skein.mark), Size.LEAD))
        row.addWidget(OneLine(told_of(skein), second=True), 1)
        if skein.held:
            row.addWidget(HoldPlate(here=False))
        out = KeyButton("Lay back")
        out.setAccessibleName(f"Lay back: {shown(skein.mark)}")
        out.clicked.connect(self.out)
        row.addWidget(out)


def told_of(skein: FinishedSkein) -> str:
    """'skein, on the table', and why it is a second if it is one."""
    where = WORDS.get(skein.state, "")
    second = f"second: {skein.second}" if skein.second else ""
    return ", ".join(filter(None, (skein.put_up, where, second)))
