"""What waits for the table, and what was counted last."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import clock_words
from app.lookups.bundles import IN_POT, LIFTED, BundleFacts
from app.lookups.loads import WetWork
from app.lookups.piles import Pile
from app.window.look.look import Gap
from app.window.parts.card import Card
from app.window.parts.thing_table import Head, ThingTable

_SHOWN = 6


class Waiting(QWidget):
    """Two short tables; `chosen` gives the cord of a row that was opened."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.cords: list[BundleFacts] = []
        self._where: dict[int, str] = {}
        self.waiting = ThingTable(
            (Head("disc", codes=True), Head("lot", codes=True), Head("skeins", right=True), ""),
            "cords that wait to be counted",
            none="No dyed cord waits.",
            opens=True,
            most_rows=_SHOWN,
        )
        self.last = ThingTable(
            (Head("skeins", right=True), "ties", Head("lot", codes=True), "at"),
            "piles counted last",
            none="Nothing was counted yet.",
            most_rows=_SHOWN,
        )
        self.waiting.opened.connect(lambda row: self.chosen.emit(self.cords[row]))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        for title, table in (("Dyed, to be counted", self.waiting), ("Counted last", self.last)):
            card = Card(title)
            card.add(table)
            column.addWidget(card)
        column.addStretch(1)

    def show_cords(self, cords: Sequence[BundleFacts]) -> None:
        """Show the cords that were dyed, lifted ones first."""
        dyed = [cord for cord in cords if cord.stage in (LIFTED, IN_POT)]
        self.cords = sorted(dyed, key=lambda cord: cord.stage == IN_POT)
        self._show_cords()

    def show_work(self, work: WetWork) -> None:
        """Where the cords are that are wet still, or hang to dry."""
        self._where = {wet.cord.disc: place.where for place in work.places for wet in place.cords}
        self._show_cords()

    def _show_cords(self) -> None:
        self.waiting.show_rows(
            [
                (
                    cord.number,
                    cord.lot or "",
                    str(cord.count),
                    "in the pot" if cord.stage == IN_POT else self._where.get(cord.disc, ""),
                )
                for cord in self.cords
            ]
        )

    def show_piles(self, piles: Sequence[Pile]) -> None:
        """Show the piles that were counted last."""
        self.last.show_rows(
            [
                (str(pile.count), pile.ties, pile.lot or "not known", clock_words(pile.counted))
                for pile in piles
            ]
        )
