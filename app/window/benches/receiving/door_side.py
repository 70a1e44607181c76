"""At the side of the door: what is on hand, and what came in last."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import short_day
from app.lookups.deliveries import BaseOnHand, DeliveryRow
from app.window.benches.receiving.delivery import OPENING
from app.window.benches.receiving.door_words import cones
from app.window.look.look import Gap
from app.window.parts.card import Card
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, OneLine, Words


class DoorSide(QWidget):
    """Two short lists."""

    def __init__(self) -> None:
        super().__init__()
        self.on_hand = Entries("On hand", "No cones yet.")
        self.last = Entries("Came in last", "Nothing came in yet.")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(self.on_hand)
        column.addWidget(self.last)
        column.addStretch(1)

    def show_on_hand(self, bases: Sequence[BaseOnHand]) -> None:
        """Show the cones that were not wound to their end."""
        self.on_hand.show_entries([(base.base, _on_hand(base)) for base in bases])

    def show_last(self, deliveries: Sequence[DeliveryRow]) -> None:
        """Show the newest deliveries."""
        self.last.show_entries(
            [(f"{cones(row.cones)} of {row.base}", _came(row)) for row in deliveries])


class Entries(Card):
    """A title, and for each entry two lines that give way before they widen the card."""

    def __init__(self, title: str, none: str) -> None:
        super().__init__(title)
        self.entries: list[tuple[str, str]] = []
        self._none = Words(none, ink=SECOND)
        self._lines = QVBoxLayout()
        self._lines.setSpacing(Gap.LINE)
        self.add(self._none, self._lines)

    def show_entries(self, entries: Sequence[tuple[str, str]]) -> None:
        """Replace all entries."""
        take_down(self._lines)
        self.entries = list(entries)
        for first, second in entries:
            self._lines.addWidget(_Entry(first, second))
        self._none.setVisible(not entries)


class _Entry(QWidget):
    def __init__(self, first: str, second: str) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(OneLine(first, bold=True))
        column.addWidget(OneLine(second, second=True))


def _on_hand(base: BaseOnHand) -> str:
    begun = f", {base.begun} begun" if base.begun else ""
    skeins = "1 skein" if base.skeins == 1 else f"{base.skeins} skeins"
    return f"{cones(base.cones)}{begun}: {skeins}"


def _came(row: DeliveryRow) -> str:
    note = OPENING if row.opening_stock else f"note {row.note_no}"
    return f"{short_day(row.arrived)}, {row.supplier}, {note}"
