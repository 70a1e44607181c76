"""What is in hand at the packing bench, and above it what is asked about it."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.look.look import Gap
from app.window.parts.card import Actions, Card
from app.window.parts.sight import to_top


class AskedAbove(QWidget):
    """A card with its keys at its foot, which wait while something else is asked first."""

    def __init__(self, keys: Actions) -> None:
        super().__init__()
        self.aside: Card | None = None
        self.card, self.keys = Card(in_hand=True), keys
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.PART)
        self._column.addWidget(self.card)
        self.card.add_last(keys)

    def ask(self, card: Card | None) -> None:
        """Ask or say something first, or take it away."""
        if self.aside is not None:
            self.aside.hide()
            self.aside.deleteLater()
        self.aside = card
        self.keys.setVisible(card is None)
        if card is not None:
            self._column.insertWidget(0, card)
            to_top(card)
