"""What the desk writes of faults: a report of what is in hand, and what was seen good."""

from typing import Any

from app.lookups.customers import OrderFound, order_numbered
from app.problems import NotFound
from app.scanning.resolve import Resolution, resolve
from app.window.bench import Bench
from app.window.benches.desk.fault_card import FaultCard, Told
from app.window.benches.desk.matching import Asking
from app.work.photos import keep_photo
from app.work.reporting import FaultIn, report_fault, seen_good


class Reporting:
    """While the card of a fault is open, scanned tags and dropped photos go to it."""

    def __init__(self, bench: Bench, hand: Asking) -> None:
        self._bench, self._hand = bench, hand
        name = hand.page.name
        name.fault_key.clicked.connect(self._begin)
        name.good_key.clicked.connect(self._seen_good)

    @property
    def card(self) -> FaultCard | None:
        """The card that is open, if it is one of a fault."""
        asked = self._hand.page.why
        return asked if isinstance(asked, FaultCard) else None

    def takes(self, code: str) -> bool:
        """Whether a scan goes to the open card."""
        if self.card is None:
            return False
        self._bench.ask(self._scanned, resolve, code, False)
        return True

    def take_picture(self, picture: bytes) -> bool:
        """Whether a photo goes to the open card."""
        card = self.card
        if card is not None:
            card.add_picture(picture)
        return card is not None

    def _begin(self) -> None:
        thing = self._hand.thing
        if thing is not None:
            card = FaultCard(thing.found)
            card.said.connect(self._told)
            card.left.connect(self._hand.answered)
            self._hand.page.ask_why(card)

    def _seen_good(self) -> None:
        if self._hand.thing is not None:
            self._bench.do(seen_good, [self._hand.thing.found.id], "inspection")

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
        customer = order.customer if order else None
        stated = None if told.yarn else card.thing.id
        fault = FaultIn(told.fault, "customer" if told.order else "inspection", told.where_on,
                        told.repeat_mm, told.words, customer, stated, told.count)
        self._bench.do(report_fault, fault, told.yarn,
                       then=lambda done: self._reported(done.answer, card))

    def _reported(self, report: Any, card: FaultCard) -> None:
        for picture in card.pictures:
            self._bench.do(keep_photo, report, picture)
        if self.card is card:
            self._hand.answered()
