"""What may be in hand at the door: one card at a time."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QScrollArea, QWidget

from app.window.look.look import look
from app.window.parts.card import Card

_ROUND = 96  # pixels in sight above and below what has the focus, at a text factor of 1


def go_to(widget: QWidget, sight: QWidget | None = None) -> None:
    """Give it the focus, and bring it, or something else, into sight when all has its place."""
    widget.setFocus()
    QTimer.singleShot(0, widget, lambda: _bring_into_sight(sight or widget))


def _bring_into_sight(widget: QWidget) -> None:
    parent = widget.parentWidget()
    while parent is not None and not isinstance(parent, QScrollArea):
        parent = parent.parentWidget()
    if parent is not None:
        parent.verticalScrollBar().setValue(0)
        parent.ensureWidgetVisible(widget, 0, look().grid(_ROUND))


class Hand(Card):
    """The card that asks now."""

    def __init__(self, *, in_hand: bool = True) -> None:
        super().__init__(in_hand=in_hand)

    def begin(self) -> None:
        """Keys belong to this card now."""

    def done(self) -> None:
        """The plate DONE."""

    def take_cone(self, number: int) -> bool:
        """The card of a cone was scanned; True if this card has a use for it."""
        return False

    def write(self, key: str) -> bool:
        """A figure came while no field had the focus; True if it is written somewhere."""
        return False
