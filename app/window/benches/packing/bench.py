"""The packing bench: an order by its number, its skeins by their tags, and the parcel leaves."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from app.calculations.codes import Kind, read, shown
from app.exchange.orders_file import number_of_order
from app.lookups.customers import OrderFound, order_numbered
from app.lookups.kits import KitNow, bag_scanned
from app.lookups.order_words import studio_names
from app.lookups.orders import OrderNow, sent_since
from app.lookups.packing import (
    TagScanned,
    orders_to_pack,
    scanned_for,
    shelf_with,
    tag_scanned,
)
from app.problems import NotFound, Refused
from app.scanning.resolve import Resolution, resolve
from app.scanning.saying import quoted
from app.window.bench import Around, Bench
from app.window.benches.packing.file_card import FileCard
from app.window.benches.packing.hand_card import HandCard
from app.window.benches.packing.in_hand import OrderInHand
from app.window.benches.packing.kit_making import KitMaking
from app.window.benches.packing.order_file import OrderFile
from app.window.benches.packing.waiting import Waiting
from app.window.in_turn import InTurn
from app.window.parts.action_plates import COUNTS, DONE
from app.window.parts.findings import Finding
from app.window.session import Done
from app.work.ordering import HandOrder, order_by_hand

_CONCERNED = frozenset({"customer_order", "order_line", "whereabouts", "tag", "tag_on", "hold",
                        "clear", "yarn", "personal", "kit", "kit_pattern"})
_STEPS = {int(Qt.Key.Key_Down): 1, int(Qt.Key.Key_Up): -1}
_FEW = 4  # numbers that are named at once
_NO_ORDER = "Scan the order's number first, or choose it from the list."


class PackingBench(Bench):
    """The orders that wait, or one in hand, or a file, or one being written; or the kits."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setAccessibleName("packing")
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.turn = InTurn(self)
        self.waiting, self.file, self.hand = Waiting(), FileCard(), HandCard()
        self.in_hand: OrderInHand | None = None
        self.kits: KitMaking | None = None
        self._order_file = OrderFile(self, self.file, self.to_the_list)
        self.shown: QWidget = self.waiting
        for card in (self.waiting, self.file, self.hand):
            self.body.addWidget(card)
            card.setVisible(card is self.waiting)
        self.body.addStretch(1)
        self._connect()

    def entered(self) -> None:
        """Look at what waits; keys belong to the bench now."""
        self.setFocus()
        self.look_again(_CONCERNED)

    def look_again(self, kinds: frozenset[str]) -> None:
        """Look again at the orders, and at the one in hand."""
        if not kinds & _CONCERNED:
            return
        if self.in_hand is not None:
            self.in_hand.look()
        elif self.kits is not None:
            self.kits.look()
        elif self.shown is self.waiting:
            midnight = self.around.session.now().astimezone().replace(
                hour=0, minute=0, second=0, microsecond=0)
            self.ask(self.waiting.show_orders, orders_to_pack)
            self.ask(self.waiting.show_sent, sent_since, midnight)

    def take(self, code: str) -> bool:
        """Tags; shelves where a skein is put back; DONE, COUNT; a number that looks like a lot."""
        kind = read(code).kind
        if kind is Kind.SKEIN:
            self.turn.then(partial(self._tag, code))
        elif kind is Kind.LOT:
            self.turn.ask(partial(self._number_or_lot, code), order_numbered, code)
        elif kind is Kind.SHELF:
            return self._shelf(code)
        elif kind is Kind.KIT:
            self.turn.ask(self._kit_came, bag_scanned, code)
        elif code == DONE:
            self.turn.then(self._done)
        elif code in COUNTS:
            self.turn.then(lambda: self._count(COUNTS[code]))
        else:
            return False
        return True

    def _shelf(self, code: str) -> bool:
        """A shelf's plate: where a skein is put back, or a kit's bag is opened."""
        if self.in_hand is not None and self.in_hand.takes_shelf():
            self.turn.ask(self.in_hand.put_on, shelf_with, code)
        elif self.kits is not None and self.kits.takes_shelf():
            self.turn.ask(self.kits.shelf_came, shelf_with, code)
        else:
            return False
        return True

    def take_other(self, text: str) -> bool:
        """The number of an order, as it stands on its slip; or a tag from before the book."""
        number = number_of_order(text)
        self.turn.ask(partial(self._number_came, text, False), order_numbered, number)
        return True

    def take_again(self, code: str) -> bool:
        """The trigger bounced: the tag counts once."""
        self.say(f"{shown(code)} was scanned twice: it counts once")
        return True

    def seek(self, words: str) -> bool:
        """An order by its number or its name, a tag by its mark."""
        named = () if any(map(str.isdigit, words)) else self.waiting.named(words)
        if len(named) == 1:
            self.open_order(named[0].id)
        elif named:
            self._which_of(words, named)
        else:
            self.turn.ask(partial(self._number_came, words, True), order_numbered,
                          number_of_order(words))
        return True

    def _which_of(self, words: str, named: Sequence[OrderNow]) -> None:
        """Several wait for somebody of this name: the oldest is marked, none is chosen."""
        self.to_the_list()
        self.waiting.turn_to(named[0])
        numbers = ", ".join(one.number for one in named[:_FEW])
        more = f" and {len(named) - _FEW} more" if len(named) > _FEW else ""
        self.around.trouble(Refused(
            f"{len(named)} orders wait for {quoted(words)}: {numbers}{more}.",
            "Type the number of one, or choose it with ↑ ↓ and Enter."))

    def take_file(self, path: Path) -> bool:
        """The web shop's file was dropped."""
        self._show(self.file)
        self.file.open(path)
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.shown is self.waiting and event.key() in _STEPS:
            self.waiting.walk(_STEPS[event.key()])
        else:
            super().keyPressEvent(event)

    def open_order(self, order: int) -> None:
        """This order is in hand now."""
        if self.kits is not None and self.kits.comes_first():
            return
        self.around.found((), lambda _finding, _answer: None)
        self._put_order_away()
        self.in_hand = OrderInHand(self.around, order)
        self.in_hand.left.connect(self.to_the_list)
        self.body.insertWidget(0, self.in_hand)
        self._show(self.in_hand)

    def open_kits(self) -> KitMaking:
        """The patterns of kits."""
        if self.kits is None:
            self._put_order_away()
            self.kits = KitMaking(self.around)
            self.kits.left.connect(self.to_the_list)
            self.body.insertWidget(0, self.kits)
            self._show(self.kits)
        return self.kits

    def to_the_list(self) -> None:
        """Nothing is in hand."""
        self._put_order_away()
        self._show(self.waiting)
        self.look_again(_CONCERNED)

    def _show(self, card: QWidget) -> None:
        self.setFocus()
        if card not in (self.in_hand, self.kits):
            self._put_order_away()
        self.shown = card
        for one in (self.waiting, self.file, self.hand):
            one.setVisible(one is card)

    def _put_order_away(self) -> None:
        for one in (self.in_hand, self.kits):
            if one is not None:
                one.hide()
                one.deleteLater()
        self.in_hand, self.kits = None, None

    def _kit_came(self, kit: KitNow | None) -> None:
        if self.in_hand is not None:
            self.around.trouble(Refused("A kit is sold whole, at the Counter.",
                                        "For an order, take its skeins by their tags."))
        elif kit is None:
            self.around.trouble(NotFound("No kit has this code.", "Scan the bag once more."))
        else:
            self.open_kits().kit_came(kit)

    def _tag(self, mark: str) -> None:
        if self.kits is not None:
            self.turn.ask(partial(self.kits.tag_came, mark), tag_scanned, mark)
        elif self.in_hand is None:
            self.turn.ask(partial(self._tag_alone, mark), tag_scanned, mark)
        else:
            self.turn.ask(partial(self._tag_came, mark, self.in_hand), scanned_for, mark,
                          self.in_hand.id)

    def _tag_came(
        self, mark: str, hand: OrderInHand, came: tuple[TagScanned | None, OrderNow | None]
    ) -> None:
        if hand is self.in_hand:
            hand.tag_came(mark, came)

    def _tag_alone(self, mark: str, tag: TagScanned | None) -> None:
        """No order is in hand: a skein that is in a parcel opens its order."""
        if tag is not None and tag.state == "taken" and tag.order is not None:
            self.say(f"{shown(mark)} is in this parcel")
            self.open_order(tag.order)
        else:
            self.around.trouble(Refused("No order is in hand; nothing was taken.", _NO_ORDER))

    def _number_or_lot(self, code: str, found: OrderFound | None) -> None:
        if found is not None:
            self.open_order(found.id)
        else:
            self.around.trouble(Refused(f"{shown(code)} is a lot; nothing was taken.",
                                        "Scan the tags of its skeins one by one."))

    def _number_came(self, text: str, typed: bool, found: OrderFound | None) -> None:
        if found is not None:
            self.open_order(found.id)
        else:
            self.turn.ask(partial(self._resolved, text), resolve, text, typed,
                          frozenset({"skein"}))

    def _resolved(self, text: str, answer: Resolution) -> None:
        if answer.found is not None and answer.found.kind == "skein" and not answer.choices:
            self._tag(answer.found.code)
        else:
            called = "" if any(map(str.isdigit, text)) else ", and none waits for anybody so called"
            self.around.trouble(NotFound(
                f"No order {text.strip()[:40]} is in the book{called}.",
                "Look at its slip, or bring the web shop's newest file: F3 in the list."))

    def _done(self) -> None:
        if self.in_hand is not None:
            self.in_hand.done()
        elif self.kits is not None:
            self.kits.done()
        elif self.shown is self.file and self.file.take_in.isVisible():
            self.file.done()
        elif self.shown is self.hand:
            self.hand.done()
        else:
            self.around.trouble(Refused("No order is in hand; nothing was sent.", _NO_ORDER))

    def _count(self, number: int) -> None:
        if self.in_hand is not None:
            self.in_hand.choose(number)
        elif self.kits is not None:
            self.kits.choose(number)
        elif self.shown is self.waiting:
            self.open_kits()  # the way there for who has only a scanner

    def _write(self) -> None:
        self._show(self.hand)
        self.ask(self.hand.know, studio_names)
        self.hand.begin()

    def _place(self, order: HandOrder) -> None:
        self.do(order_by_hand, order, token=self.hand.token,
                then=self._placed)

    def _placed(self, done: Done[int]) -> None:
        self.hand.forget()
        self.open_order(done.answer)
        self.around.found([Finding(found) for found in done.findings],
                          lambda _finding, _answer: None)

    def _connect(self) -> None:
        self.waiting.chosen.connect(self.open_order)
        self.waiting.by_hand.connect(self._write)
        self.waiting.kits_wanted.connect(self.open_kits)
        self.hand.placed.connect(self._place)
        self.hand.left.connect(self.hand.forget)
        for wanting in (self.waiting.file_wanted, self.file.file_wanted):
            wanting.connect(lambda: self._order_file.choose(self.take_file))
        for going in (self.file.left, self.hand.left):
            going.connect(self.to_the_list)
