"""The order in hand: a tag that is scanned goes to the line it fits, or says why to none."""

from collections.abc import Mapping, Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QApplication

from app.calculations.codes import shown
from app.lookups.instead import Instead, instead_of
from app.lookups.offers import Offer
from app.lookups.orders import LineNow, OrderNow
from app.lookups.packing import Shelf, TagScanned, order_to_pack
from app.lookups.two_lots import unsettled
from app.problems import NotFound, Refused
from app.window.bench import Around, Bench
from app.window.benches.packing.fitting import lines_for, obstacle, why_none, why_not_sent
from app.window.benches.packing.held import Held
from app.window.benches.packing.order_card import OrderCard
from app.window.benches.packing.question import TakeOut, WhichLine
from app.window.parts.findings import Finding
from app.window.session import Done
from app.work.offering import AGREED, agree_line
from app.work.packing import (
    call_rest_off,
    pack,
    send_parcel,
    take_out,
)

_DONE_ABOUT_IT = {f"{how[:1].upper()}{how[1:]}": how for how in AGREED}

Now = tuple[OrderNow | None, Mapping[int, Sequence[Offer]]]


class OrderInHand(Bench):
    """A bench for one order; `left` when it is put away, or when its parcel left."""

    left = Signal()

    def __init__(self, around: Around, order: int) -> None:
        super().__init__(around)
        self.id = order
        self._from_two_lots: dict[int, str] = {}  # by line, until it is said what was done
        self._others: tuple[str, ...] = ()
        self.card = OrderCard()
        self.body.addWidget(self.card)
        self.card.sent.connect(self.send)
        self.card.called_off.connect(self._call_off)
        self.card.left.connect(self.left)
        self.look()

    @property
    def order(self) -> OrderNow | None:
        """As it is shown."""
        return self.card.order

    def look(self) -> None:
        """Look the order up again."""
        self.ask(self._show, order_to_pack, self.id)

    def takes_shelf(self) -> bool:
        """Whether a skein waits to be put back on a shelf."""
        return isinstance(self.card.aside, TakeOut)

    def put_on(self, shelf: Shelf | None) -> None:
        """The plate of a shelf was scanned: what is asked about goes there."""
        if isinstance(self.card.aside, TakeOut) and shelf is not None:
            self._take_out(self.card.aside.tag, shelf.id)

    def choose(self, number: int) -> None:
        """A COUNT plate: one of the lines that are asked about, or what was done about two lots."""
        if isinstance(self.card.aside, WhichLine):
            self.card.aside.choose(number)
        elif self.card.aside is None and self._from_two_lots and number <= len(AGREED):
            self._agree(next(iter(self._from_two_lots)), AGREED[number - 1])

    def done(self) -> None:
        """DONE: what is asked is answered with yes; else the parcel leaves, if all is taken."""
        if isinstance(self.card.aside, TakeOut) and self.card.aside.out.isVisible():
            self.card.aside.out.click()
        elif self.card.aside is None and self.order is not None and self.card.send.isEnabled():
            self.send()
        elif self.card.aside is None and self.order is not None:
            self.around.trouble(why_not_sent(self.order))
        else:
            self._ask_no_more()

    def send(self) -> None:
        """The parcel leaves; what is not taken stays open."""
        if self.order is not None and self._is_settled(self.order):
            self.do(send_parcel, self.order.number, then=lambda _done: self._sent())

    def _call_off(self) -> None:
        if self.order is None or not self._is_settled(self.order):
            return
        if self.order.taken:
            self.do(send_parcel, self.order.number, True, then=lambda _done: self._sent())
        else:
            self.do(call_rest_off, self.order.number, then=lambda _done: self._sent())

    def _is_settled(self, order: OrderNow) -> bool:
        """Nothing leaves while a line from several lots was not answered for."""
        if self._from_two_lots:
            self.around.trouble(Refused(
                f"Order {order.number} was not sent: a line of it is from several lots.",
                "Say what was done about it: scan COUNT 1 where the customer agreed, COUNT 2 "
                "where a rows card is put in."))
        return not self._from_two_lots

    def _sent(self) -> None:
        self._from_two_lots.clear()
        self.left.emit()

    def _show(self, now: Now) -> None:
        order, offered = now
        if order is None:
            self.left.emit()
            return
        self.card.show_order(order, offered)
        self.ask(self._show_unsettled, unsettled, [line.id for line in order.lines])

    def _show_unsettled(self, asked: Mapping[int, str]) -> None:
        if dict(asked) != self._from_two_lots:
            self._from_two_lots = dict(asked)
            self._show_findings()

    def tag_came(self, mark: str, came: tuple[TagScanned | None, OrderNow | None]) -> None:
        """A tag was scanned."""
        tag, order = came
        self._ask_no_more()
        if tag is None or order is None:
            self.around.trouble(NotFound(f"{shown(mark)} was never printed; nothing was taken.",
                                         "Scan it once more, or take another."))
            return
        problem = obstacle(tag, order, self.around.session.now())
        if problem is not None:
            self.around.trouble(problem)
        elif tag.order == order.id and tag.state == "taken":
            self._ask_out(tag, order)
        elif tag.holds:
            self._refuse_held(tag, order)
        else:
            self._find_line(tag, order)

    def _find_line(self, tag: TagScanned, order: OrderNow) -> None:
        fitting = lines_for(tag, order)
        if not fitting:
            self.around.trouble(why_none(tag, order))
        elif len(fitting) == 1 and fitting[0].is_read:
            self._pack(tag, fitting[0].id)
        else:
            which = WhichLine(tag, fitting)
            which.chosen.connect(partial(self._pack, tag))
            self._ask(which)

    def _refuse_held(self, tag: TagScanned, order: OrderNow) -> None:
        QApplication.beep()
        held = Held(tag)
        self._ask(held)
        open_lines: Sequence[LineNow] = lines_for(tag, order)
        wanted = open_lines[0].open if open_lines else 1

        def show(found: Sequence[Instead]) -> None:
            if self.card.aside is held:
                held.show_instead(found)

        self.ask(show, instead_of, tag.lot, wanted, tag.put_up)

    def _ask_out(self, tag: TagScanned, order: OrderNow) -> None:
        out = TakeOut(tag, order.number)
        out.chosen.connect(partial(self._take_out, tag))
        self._ask(out)

    def _ask(self, card: Held | WhichLine | TakeOut) -> None:
        card.left.connect(self._ask_no_more)
        self.card.ask(card)

    def _ask_no_more(self) -> None:
        self.card.ask(None)

    def _pack(self, tag: TagScanned, line: int) -> None:
        self._ask_no_more()
        if tag.yarn is not None:
            self.do(pack, line, tag.yarn, then=partial(self._packed, line))

    def _packed(self, line: int, done: Done[str]) -> None:
        if done.answer:
            self._from_two_lots[line] = done.answer
        self._others = tuple(found for found in done.findings if found != done.answer)
        self._show_findings()

    def _show_findings(self) -> None:
        """What is still to be answered, and what was just found."""
        asked = [Finding(sentence, tuple(_DONE_ABOUT_IT))
                 for sentence in self._from_two_lots.values()]
        self.around.found([*asked, *map(Finding, self._others)], self._answered)

    def _answered(self, finding: Finding, answer: str) -> None:
        line = next((line for line, sentence in self._from_two_lots.items()
                     if sentence == finding.sentence), None)
        if line is not None:
            self._agree(line, _DONE_ABOUT_IT[answer])

    def _agree(self, line: int, how: str) -> None:
        self._from_two_lots.pop(line, None)
        self._others = ()
        self.do(agree_line, line, how, then=lambda _done: self._show_findings())

    def _take_out(self, tag: TagScanned, shelf: int) -> None:
        self._ask_no_more()
        if tag.yarn is not None:
            self.do(take_out, tag.yarn, shelf)
