"""A cord in one line: its disc, how many skeins of which ties, its base and cones."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout

from app.lookups.bundles import BundleFacts
from app.lookups.finishing import Expected
from app.window.look.look import Gap, Size
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.ties import Ties
from app.window.parts.words import SECOND, CodeWords, OneLine, Words

_PATCHES = 2  # as many as leave room for the cone


def how_many(expected: Expected) -> str:
    """'8', or '5 to 7' where a mixed cord was split."""
    least, most = expected.count, expected.most
    return str(least) if least == most else f"{least} to {most}"


class CordRow(QFrame):
    """A cord that was scanned; `out` when it is taken out again."""

    out = Signal()

    def __init__(self, cord: BundleFacts, out: str = "") -> None:
        super().__init__()
        self.cord = cord
        self.setProperty("ground", "paper")
        row = QHBoxLayout(self)
        row.setContentsMargins(Gap.LINE, Gap.SMALL, Gap.SMALL, Gap.SMALL)
        row.setSpacing(Gap.LINE)
        row.addWidget(Words("disc", ink=SECOND, wrap=False))
        row.addWidget(CodeWords(cord.number, Size.TITLE))
        row.addSpacing(Gap.LINE)
        for tie in cord.ties if len(cord.ties) <= _PATCHES else ():
            row.addWidget(Words(how_many(tie), Size.LEAD, bold=True, wrap=False))
            row.addWidget(Ties(tie.tie, Size.PLAIN), 0, Qt.AlignmentFlag.AlignVCenter)
        if len(cord.ties) > _PATCHES:
            ties = ", ".join(f"{how_many(tie)} {tie.tie}" for tie in cord.ties)
            row.addWidget(Words(ties, bold=True), 2)
        row.addSpacing(Gap.HAIR)
        row.addLayout(_beside(cord), 1)
        if cord.held:
            row.addWidget(HoldPlate(here=False))
        if out:
            key = KeyButton(out)
            key.setAccessibleName(f"{out}: disc {cord.number}")
            key.clicked.connect(self.out)
            row.addWidget(key)


def _beside(cord: BundleFacts) -> QVBoxLayout:
    words = QVBoxLayout()
    words.setSpacing(0)
    words.addWidget(OneLine(cord.base))
    words.addWidget(OneLine(" and ".join(cord.cones) or "cone not known", Size.SMALL, second=True))
    return words
