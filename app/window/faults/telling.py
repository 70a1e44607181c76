"""A fault is told, or yarn is seen good, at the bench where it is in hand."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from app.lookups.customers import OrderFound, order_numbered
from app.problems import NotFound, Refused
from app.scanning.resolve import Resolution, resolve
from app.window.bench import Bench
from app.window.faults.fault_card import FaultCard, Seen, Told
from app.work.photos import kind_of
from app.work.reporting import FaultIn, report_fault, seen_good


class Telling(QObject):
    """While the card of a fault is open, scanned tags and dropped photos go to it.

    `show` puts the card where the bench shows it, and takes it away again with None.
    """

    def __init__(self, bench: Bench, show: Callable[[FaultCard | None], None]) -> None:
        super().__init__(bench)
        self._bench, self._show = bench, show
        self._card: FaultCard | None = None

    @property
    def card(self) -> FaultCard | None:
        """The card that is open."""
        return self._card

    def report(self, seen: Seen | None) -> None:
        """Ask what is seen on it."""
        if seen is None:
            self._bench.around.trouble(NotFound(
                "Nothing is in hand that could have a fault; nothing was saved.",
                "Scan its tag first, or the code of its lot."))
            return
        card = FaultCard(seen)
        card.said.connect(self._told)
        card.left.connect(self.leave)
        self._turn_to(card)

    def good(self, seen: Seen | None) -> None:
        """What is in hand was looked at and is good."""
        if seen is None or not seen.skeins:
            self._bench.around.trouble(Refused(
                "No skein is in hand; nothing was saved.",
                "Scan the tag of each skein that was looked at: of a lot nobody sees them all."))
            return
        self._bench.do(seen_good, list(seen.skeins), seen.at, basis=seen.basis)

    def waits(self) -> bool:
        """Whether a fault is being told: that is answered before anything else is begun."""
        if self.card is not None:
            self._bench.around.trouble(Refused(
                "A fault is being told here; nothing was saved, and what is written stays.",
                "Report it with DONE, or leave it with F8; then go on."))
        return self.card is not None

    def leave(self) -> None:
        """The card goes; what was written on it is not kept."""
        self._turn_to(None)

    def scanned(self, code: str) -> bool:
        """Whether a scan goes to the open card: a tag that has the fault too."""
        if self.card is None:
            return False
        self._bench.ask(self._scanned, resolve, code, False)
        return True

    def take_picture(self, picture: bytes) -> bool:
        """Whether a photo goes to the open card; what cannot be kept is refused at once."""
        if self.card is None:
            return False
        try:
            kind_of(picture)
        except Refused as problem:
            self._bench.around.trouble(problem)
        else:
            self.card.add_picture(picture)
        return True

    def _turn_to(self, card: FaultCard | None) -> None:
        self._card = card
        self._show(card)

    def _scanned(self, told: Resolution) -> None:
        if self.card is not None and told.found is not None and told.found.kind == "skein":
            self.card.add_skein(told.found)
        else:
            self._bench.around.trouble(NotFound(
                told.sentence or "This is no tag of a skein.",
                "Scan the tag of a skein that has the fault, or save what is written."))

    def _told(self, told: Told) -> None:
        if told.order:
            self._bench.ask(lambda order: self._report(told, order), order_numbered, told.order)
        else:
            self._report(told, None)

    def _report(self, told: Told, order: OrderFound | None) -> None:
        card = self.card
        if card is None:
            return
        if told.order and order is None:
            card.order.complain("No order has this number: look again, or leave it empty.")
            return
        by_buyer = told.order and card.seen.at == "inspection"
        fault = FaultIn(
            told.fault, "customer" if by_buyer else card.seen.at, told.where_on, told.repeat_mm,
            told.words, order.customer if order else None,
            None if told.yarn else card.seen.lot, told.count)
        self._bench.do(report_fault, fault, told.yarn, basis=card.seen.basis,
                       pictures=tuple(card.pictures), token=card.token,
                       then=lambda _done: self._reported(card))

    def _reported(self, card: FaultCard) -> None:
        if self.card is card:
            self.leave()
