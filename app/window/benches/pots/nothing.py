"""Nothing is in hand: what to scan, and the cords that wait for a bath."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout

from app.lookups.bundles import WOUND, BundleFacts, bundles_now
from app.lookups.now import NOW
from app.lookups.reel import DiscNow
from app.window.bench import Around
from app.window.benches.pots.filling import Filling
from app.window.cords.cord_row import how_many
from app.window.cords.hand import Hand
from app.window.look.icons import Icon
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.picture import Picture
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


class Nothing(Hand):
    """The sentence of the empty bench, with the cords that were wound and not dyed."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.cords: list[BundleFacts] = []
        self.waiting = ThingTable(
            (Head("disc", codes=True), Head("skeins", right=True), "ties", "base"),
            "cords that wait for a bath",
            none="No cord waits: all that was wound is dyed.",
            opens=True,
            most_rows=8,
        )
        self.waiting.opened.connect(self._open)
        waiting = Card("Wound, waiting for a bath")
        waiting.add(self.waiting)
        self.body.addWidget(SideBySide(self._prompt(), waiting, shares=(1, 1)))
        self.look()

    def look(self) -> None:
        """Look up the cords that wait."""
        self.ask(self._show, bundles_now, NOW)

    def _show(self, cords: Sequence[BundleFacts]) -> None:
        self.cords = [cord for cord in cords if cord.stage == WOUND]
        self.waiting.show_rows([_row(cord) for cord in self.cords])

    def _open(self, row: int) -> None:
        cord = self.cords[row]
        filling = Filling(self.around, None)
        self.over.emit(filling)
        filling.take_disc(DiscNow(cord.disc, cord.number, cord))

    def _prompt(self) -> Card:
        card = Card(in_hand=True)
        words = QVBoxLayout()
        words.setSpacing(Gap.SMALL)
        words.addWidget(Words("Scan the pot, then the discs that go in.", Size.TITLE, bold=True))
        words.addWidget(
            Words("For trays scan the board, its discs, and at the end the steamer.", ink=SECOND)
        )
        row = card.add_row(Picture(Icon.POT))
        row.addLayout(words, 1)
        row.setAlignment(words, Qt.AlignmentFlag.AlignTop)
        card.add_last(Words("Cords cut, or skeins of one cord in two pots:", ink=SECOND))
        card.add_last(Actions(*self.other_keys()))
        return card


def _row(cord: BundleFacts) -> tuple[str, str, str, str]:
    ties = ", ".join(f"{how_many(tie)} {tie.tie}" for tie in cord.ties)
    return cord.number, str(cord.count), ties, cord.base
