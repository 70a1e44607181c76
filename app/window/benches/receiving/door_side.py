"""At the side of the door: what is on hand, and what came in last."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import short_day
from app.lookups.deliveries import BaseOnHand, DeliveryRow
from app.window.benches.receiving.delivery import OPENING
from app.window.look.look import Gap
from app.window.parts.card import Card
from app.window.parts.thing_table import Head, ThingTable


class DoorSide(QWidget):
    """Two short tables."""

    def __init__(self) -> None:
        super().__init__()
        self.on_hand = ThingTable(
            ("base", Head("cones", right=True), Head("skeins", right=True)),
            "cones on hand", "No cones yet.", most_rows=8)
        self.last = ThingTable(
            ("day", "from", Head("cones", right=True), "base"),
            "deliveries that came in last", "Nothing came in yet.", most_rows=6)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        for title, table in (("On hand", self.on_hand), ("Came in last", self.last)):
            card = Card(title)
            card.add(table)
            column.addWidget(card)
        column.addStretch(1)

    def show_on_hand(self, bases: Sequence[BaseOnHand]) -> None:
        """Show the cones that were not wound to their end."""
        self.on_hand.show_rows(
            [(base.base, _cones(base), str(base.skeins)) for base in bases])

    def show_last(self, deliveries: Sequence[DeliveryRow]) -> None:
        """Show the newest deliveries."""
        self.last.show_rows(
            [(short_day(row.arrived), OPENING if row.opening_stock else row.supplier,
              str(row.cones), row.base) for row in deliveries])


def _cones(base: BaseOnHand) -> str:
    return f"{base.cones}, {base.begun} begun" if base.begun else str(base.cones)
