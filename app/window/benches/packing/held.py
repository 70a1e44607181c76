"""HOLD at the packing bench: why a skein stays here, whom to ask, and what may go instead."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from app.calculations.codes import shown
from app.calculations.moments import moment_words
from app.lookups.instead import Instead
from app.lookups.packing import TagScanned
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.hold_plate import HoldLine
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words

MOST = 3


class Held(Card):
    """The plate with the sentence beside it; `left` when it is put away."""

    left = Signal()

    def __init__(self, tag: TagScanned) -> None:
        super().__init__(in_hand=True)
        self.sentence = f"{shown(tag.mark)} may not leave. Nothing was taken: put it back."
        self.why = [f"{hold.on[:1].upper()}{hold.on[1:]}: {hold.why}. On hold since "
                    f"{moment_words(hold.since)}; ask {hold.ask}." for hold in tag.holds]
        self.instead = Words("Looking for what may go instead …", bold=True)
        leave = KeyButton("Go on", "F8")
        leave.clicked.connect(self.left)
        self.add(HoldLine(self.sentence, size=Size.LEAD), *map(Words, self.why),
                 self.instead, Actions(leave))

    def show_instead(self, found: Sequence[Instead]) -> None:
        """Other lots that have enough, nearest first, each with its number."""
        self.instead.setText(
            "Instead: " + "   ".join(one.words for one in found[:MOST]) if found
            else "No other lot that looks near enough lies free on a shelf.")
