"""Nothing is in hand at the wash: what to scan, and what waits to be washed."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.moments import moment_words
from app.lookups.bundles import BundleFacts
from app.lookups.loads import GATHERED, WetCord
from app.window.bench import Around
from app.window.cords.hand import Hand
from app.window.look.icons import Icon
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.picture import Picture
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.work.dividing import skeins


class Nothing(Hand):
    """The sentence of the empty bench."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        card = Card(in_hand=True)
        words = QVBoxLayout()
        words.setSpacing(Gap.SMALL)
        words.addWidget(
            Words("Scan the place, then the discs that are in it.", Size.TITLE, bold=True)
        )
        words.addWidget(
            Words(
                "A place is a tub, a machine, the steamer or a rail. DONE closes the load: which "
                "cords shared one water tells later where a stain came from.",
                ink=SECOND,
            )
        )
        row = card.add_row(Picture(Icon.RAIL))
        row.addLayout(words, 1)
        row.setAlignment(words, Qt.AlignmentFlag.AlignTop)
        card.add_last(Words("Cords burst, or half a cord in another load:", ink=SECOND))
        card.add_last(Actions(*self.other_keys()))
        self.body.addWidget(card)


class Waiting(Card):
    """What was lifted from the pots, or tied on a cord again, and is in no load since."""

    chosen = Signal(object)  # BundleFacts

    def __init__(self) -> None:
        super().__init__("Waiting for the wash")
        self.cords: list[WetCord] = []
        self.table = ThingTable(
            (
                Head("", swatch=True),
                Head("disc", codes=True),
                Head("skeins", right=True),
                Head("lot", codes=True),
                "since",
            ),
            "cords that wait for the wash",
            none="Nothing waits: all that was lifted has gone on.",
            opens=True,
            most_rows=8,
        )
        self.table.opened.connect(lambda row: self.chosen.emit(self.cords[row].cord))
        self.again = Words(ink=SECOND)
        self.add(self.table, self.again)

    def show_cords(self, cords: Sequence[WetCord]) -> None:
        """Show them, the one that has waited longest first."""
        self.cords = [wet for wet in cords if wet.step != GATHERED]
        self.table.show_rows(
            [
                (
                    wet.cord.swatch or "",
                    wet.cord.number,
                    str(wet.cord.count),
                    wet.cord.lot or "",
                    moment_words(wet.since),
                )
                for wet in self.cords
            ]
        )
        gathered = [wet.cord for wet in cords if wet.step == GATHERED]
        self.again.setText(_again(gathered))
        self.again.setVisible(bool(gathered))


def _again(cords: Sequence[BundleFacts]) -> str:
    discs = ", ".join(f"{skeins(cord.count)} on disc {cord.number}" for cord in cords)
    return f"Tied on a cord once more, for a bath or a wash: {discs}."
