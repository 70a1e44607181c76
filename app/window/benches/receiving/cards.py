"""The cards of the door: which of them is in hand, and at the side what is there."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.benches.receiving.base_card import BaseCard
from app.window.benches.receiving.codes_card import CodesCard
from app.window.benches.receiving.door_side import DoorSide
from app.window.benches.receiving.hand import Hand
from app.window.benches.receiving.list_card import ListCard
from app.window.benches.receiving.old_list_card import OldListCard
from app.window.benches.receiving.old_lots_card import OldLotsCard
from app.window.benches.receiving.start_card import StartCard
from app.window.benches.receiving.weighing_card import WeighingCard
from app.window.parts.card import SideBySide


class Cards(QWidget):
    """One card at a time, and the side."""

    def __init__(self) -> None:
        super().__init__()
        self.start, self.weighing, self.codes = StartCard(), WeighingCard(), CodesCard()
        self.list, self.base, self.side = ListCard(), BaseCard(), DoorSide()
        self.old_lots, self.old_list = OldLotsCard(), OldListCard()
        self._hands: tuple[Hand, ...] = (
            self.start, self.weighing, self.codes, self.list, self.base, self.old_lots,
            self.old_list)
        table = QWidget()
        column = QVBoxLayout(table)
        column.setContentsMargins(0, 0, 0, 0)
        for hand in self._hands:
            column.addWidget(hand)
        column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(SideBySide(table, self.side, shares=(7, 4)))
        whole.addStretch(1)

    def turn_to(self, hand: Hand) -> None:
        """This card is in hand now."""
        for one in self._hands:
            one.setVisible(one is hand)
