"""The cards of the winding bench: which of them is seen at which moment."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.benches.winding.cone_card import ConeCard
from app.window.benches.winding.cord_card import CordCard, TodayCard
from app.window.benches.winding.count_card import CountCard
from app.window.benches.winding.end_card import EndCard
from app.window.benches.winding.fault_card import FaultCard
from app.window.benches.winding.join_card import JoinCard
from app.window.benches.winding.live_disc_card import LiveDiscCard
from app.window.benches.winding.reel import Reel
from app.window.benches.winding.start_card import StartCard
from app.window.benches.winding.thread_card import ThreadCard
from app.window.look.look import Gap
from app.window.parts.card import Card, SideBySide


class Cards(QWidget):
    """The cone above, below it the one card that asks; at the side the cord and today's cords."""

    def __init__(self) -> None:
        super().__init__()
        self.start, self.cone, self.count = StartCard(), ConeCard(), CountCard()
        self.join, self.threads, self.end = JoinCard(), ThreadCard(), EndCard()
        self.fault, self.live_disc = FaultCard(), LiveDiscCard()
        self.cord, self.today = CordCard(), TodayCard()
        self._asking: tuple[Card, ...] = (
            self.count, self.join, self.threads, self.end, self.fault, self.live_disc)
        self.asks: Card = self.count
        main = _column(self.start, self.cone, *self._asking)
        side = _column(self.cord, self.today)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(SideBySide(main, side, shares=(7, 3)))
        column.addStretch(1)

    def turn_to(self, card: Card) -> None:
        """This card asks now."""
        self.asks = card

    def show_reel(self, reel: Reel, disc: str) -> None:
        """Show what is on the reel; `disc` is the number of one that is at hand already."""
        group = reel.in_hand
        self.start.setVisible(group is None)
        self.cone.setVisible(group is not None)
        for card in self._asking:
            card.setVisible(group is not None and card is self.asks)
        self.cord.show_reel(reel)
        if group is not None:
            self.cone.show_group(reel, group)
            self.count.show_group(reel, group, disc)


def _column(*cards: Card) -> QWidget:
    widget = QWidget()
    column = QVBoxLayout(widget)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(Gap.PART)
    for card in cards:
        column.addWidget(card)
    column.addStretch(1)
    return widget
