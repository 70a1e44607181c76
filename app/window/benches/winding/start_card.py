"""Nothing on the reel yet: which cones there are."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from app.calculations.codes import shown
from app.lookups.deliveries import ConeOnHand
from app.window.benches.winding.winding_words import long
from app.window.look.look import Size
from app.window.parts.card import Card
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


class StartCard(Card):
    """Says what to scan, and lists the cones on hand for hands without a scanner."""

    chosen = Signal(str)  # code of a cone

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self._codes: list[str] = []
        self.cones = ThingTable(
            (
                Head("cone", codes=True),
                "base",
                "batch",
                Head("skeins left", right=True),
                Head("metres left", right=True),
                "ties",
            ),
            "cones on hand",
            "There are no cones: receive some first.",
            most_rows=9,
        )
        self.add(
            Words("Scan the cone on the reel", Size.TITLE, bold=True),
            Words("or choose one of the cones on hand, the part cones first.", ink=SECOND),
            self.cones,
        )
        self.cones.opened.connect(lambda row: self.chosen.emit(self._codes[row]))

    def show_cones(self, cones: Sequence[ConeOnHand]) -> None:
        """Show the cones that were not wound to their end."""
        ordered = sorted(cones, key=lambda cone: not cone.begun)
        self._codes = [cone.code for cone in ordered]
        self.cones.show_rows(
            [
                (
                    shown(cone.code),
                    cone.base,
                    cone.batch or "not stated",
                    str(cone.skeins),
                    long(cone.left_mm),
                    cone.tie or "–",
                )
                for cone in ordered
            ]
        )
