"""Piles to choose from: all that wait, or those that one disc or lot stands for."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.codes import shown
from app.lookups.tag_table import PileToTag
from app.window.look.icons import Icon
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.picture import Picture
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words

_ASK = "Scan the disc of a pile."
_HOW = ("Or scan a lot code, tap a pile, or press its figure. A shelf, to lay skeins there or to "
        "count it.")


class PilesCard(Card):
    """Each pile with its figure; `chosen` gives its number in the book.

    `day_ends` when the tags in hand are to be counted.
    """

    chosen = Signal(int)
    day_ends = Signal()

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.piles: Sequence[PileToTag] = ()
        self.asks, self._how = Words(_ASK, Size.TITLE, bold=True), Words(_HOW, ink=SECOND)
        self.table = ThingTable(
            (
                "",
                Head("disc", codes=True),
                Head("lot", codes=True),
                Head("", swatch=True),
                "ties",
                Head("skeins", right=True),
                Head("to print", right=True),
                Head("without a tag", right=True),
                "colourway",
            ),
            "piles that wait for tags",
            none="No pile waits: every skein that was counted wears its tag.",
            opens=True,
            most_rows=9,
        )
        self.table.opened.connect(self._open)
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        words.addWidget(self.asks)
        words.addWidget(self._how)
        words.addStretch(1)
        row = self.add_row(Picture(Icon.TAG))
        row.addLayout(words, 1)
        self.add(self.table)
        self.day = KeyButton("End of the day: tags in hand", "F6")
        self.day.clicked.connect(self.day_ends)
        self.add_last(Actions(self.day))

    def show_piles(self, piles: Sequence[PileToTag], ask: str = "") -> None:
        """Show these piles, and ask which one is meant."""
        self.piles = piles
        self.asks.setText(ask or _ASK)
        self._how.setText("Tap it, press its figure, or scan COUNT." if ask else _HOW)
        self.table.show_rows([_row(n, pile) for n, pile in enumerate(piles, 1)])

    def choose(self, number: int) -> bool:
        """The pile with this figure; False if there is none."""
        if not 0 < number <= len(self.piles):
            return False
        self._open(number - 1)
        return True

    def _open(self, row: int) -> None:
        self.chosen.emit(self.piles[row].facts.id)


def _row(number: int, pile: PileToTag) -> tuple[str, ...]:
    facts = pile.facts
    return (
        str(number),
        facts.disc or "–",
        shown(facts.lot) if facts.lot else "not known",
        facts.swatch or "",
        pile.ties,
        str(facts.counted),
        str(facts.to_print),
        str(facts.left),
        facts.colourway or "not known",
    )
