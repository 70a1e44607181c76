"""What the desk writes of faults: a report of what is in hand, and what was seen good."""

from app.scanning.how_known import BASIS_OF
from app.window.bench import Bench
from app.window.benches.desk.matching import Asking
from app.window.faults.fault_card import FaultCard, Seen
from app.window.faults.telling import Telling


class Reporting(Telling):
    """The card of a fault stands under the name of the thing in hand."""

    def __init__(self, bench: Bench, hand: Asking) -> None:
        super().__init__(bench, self._in_hand)
        self._hand = hand
        name = hand.page.name
        name.fault_key.clicked.connect(self.begin)
        name.good_key.clicked.connect(self.all_good)

    @property
    def card(self) -> FaultCard | None:
        """The card that is open; another question may have come in its place."""
        return self._card if self._hand.page.why is self._card else None

    def begin(self) -> None:
        """A fault on the thing in hand."""
        if not self.waits():
            self.report(self._seen())

    def all_good(self) -> None:
        """The skein in hand is good."""
        if not self.waits():
            self.good(self._seen())

    def _seen(self) -> Seen | None:
        thing = self._hand.thing
        if thing is None or thing.found.kind not in ("skein", "lot"):
            return None
        found = thing.found
        if found.kind == "skein":
            return Seen(found.shown, "inspection", {found.id: found.shown},
                        basis=BASIS_OF[self._hand.came])
        return Seen(found.shown, "inspection", lot=found.id)

    def _in_hand(self, card: FaultCard | None) -> None:
        if card is None:
            self._hand.answered()
        else:
            self._hand.page.ask_why(card)
