"""What may be in hand at the door: one card at a time."""

from app.calculations.codes import Kind, numbered
from app.window.parts.card import Card

DONE = numbered(Kind.ACTION, 1).text


class Hand(Card):
    """The card that asks now."""

    def __init__(self) -> None:
        super().__init__(in_hand=True)

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
