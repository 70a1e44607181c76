"""The card of a fault in front of a whole bench, with the plates FAULT and SEEN GOOD."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from app.window.bench import Bench
from app.window.faults.fault_card import FaultCard, Seen
from app.window.faults.telling import Telling
from app.window.in_turn import InTurn
from app.window.parts.action_plates import COUNTS, DONE, FAULT, GOOD, HOLD
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import to_top


class FaultsAtHand:
    """`seen` answers what is in hand when it is asked; all else of the bench waits behind the card.
    """

    def __init__(
        self, bench: Bench, turn: InTurn, seen: Callable[[], Seen | None],
        fault_key: KeyButton | None = None, good_key: KeyButton | None = None,
    ) -> None:
        self._bench, self._turn, self._seen = bench, turn, seen
        self.telling = Telling(bench, self._show)
        self._behind: list[QWidget] = []
        self._front: FaultCard | None = None
        if fault_key is not None:
            fault_key.clicked.connect(self.report)
        if good_key is not None:
            good_key.clicked.connect(self.good)

    def report(self) -> None:
        """A fault on what is in hand."""
        self.telling.report(self._seen())

    def good(self) -> None:
        """What is in hand is good."""
        self.telling.good(self._seen())

    def takes(self, code: str) -> bool:
        """Whether a scan is for the open card, or is one of the two plates."""
        card = self.telling.card
        if card is None:
            if code not in (FAULT, GOOD):
                return False
            self._turn.then(self.report if code == FAULT else self.good)
        elif code == DONE:
            self._turn.then(card.save)
        elif code in COUNTS:
            card.choose(COUNTS[code])
        elif code in (FAULT, GOOD, HOLD):
            self.telling.waits()
        else:
            self.telling.scanned(code)
        return True

    def takes_picture(self, picture: bytes) -> bool:
        """Whether a photo is for the open card."""
        return self.telling.take_picture(picture)

    def _show(self, card: FaultCard | None) -> None:
        body = self._bench.body
        old, self._front = self._front, card
        if old is not None:
            body.removeWidget(old)
            old.hide()
            old.deleteLater()
        if card is not None and old is None:
            items = (body.itemAt(n) for n in range(body.count()))
            here = (item.widget() for item in items if item is not None)
            self._behind = [one for one in here if one is not None and not one.isHidden()]
        for one in self._behind:
            if isValid(one):
                one.setVisible(card is None)
        if card is None:
            self._behind = []
            self._bench.setFocus()
            return
        body.insertWidget(0, card)
        card.show()
        card.setFocus()
        to_top(card)
