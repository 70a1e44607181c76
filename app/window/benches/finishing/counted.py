"""A cord that was counted: its piles, and the disc that stays with them."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from app.lookups.bundles import BundleFacts
from app.lookups.piles import Pile
from app.window.benches.finishing.cord_head import CordHead
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.ties import Ties
from app.window.parts.words import SECOND, Digits, Words


class Counted(Card):
    """So many piles by their ties; what is done with them next."""

    left = Signal()

    def __init__(self, cord: BundleFacts, piles: Sequence[Pile]) -> None:
        super().__init__(in_hand=True)
        self.piles = piles
        self.headline = Words(_headline(piles), Size.TITLE, bold=True)
        self.card = Words(_card(cord.number, len(piles)), ink=SECOND)
        self.add(CordHead(cord), self.headline)
        self.add(Actions(*(_PileLine(pile) for pile in piles)))
        self.add(self.card)
        self.fault = KeyButton("A fault", "F1")
        leave = KeyButton("Put away", "F8")
        leave.clicked.connect(self.left)
        self.add_last(Actions(leave, self.fault))


def _headline(piles: Sequence[Pile]) -> str:
    total = sum(pile.count for pile in piles)
    if len(piles) == 1:
        return f"{total} counted: one pile. Now trim and twist."
    return f"{total} counted: {len(piles)} piles. Keep them apart, then trim and twist."


def _card(disc: str, piles: int) -> str:
    on = "the pile as its" if piles == 1 else "the piles as their"
    return f"Disc {disc} stays on {on} card until the last tag is tied on."


class _PileLine(QWidget):
    """'8' and its tie, side by side."""

    def __init__(self, pile: Pile) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, Gap.BLOCK, 0)
        row.setSpacing(Gap.LINE)
        middle = Qt.AlignmentFlag.AlignVCenter
        row.addWidget(Digits(str(pile.count)), 0, middle)
        row.addWidget(Ties(pile.ties, Size.LEAD), 0, middle)
        if not pile.lot:
            row.addWidget(Words("lot and cone not known", bold=True, wrap=False), 0, middle)
