"""The receiving bench: cones come in by weight, or by the list that came with them."""

from collections.abc import Sequence
from pathlib import Path
from uuid import uuid4

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from app.calculations.codes import Kind, read
from app.exchange.list_file import see
from app.exchange.taking_in import take_in
from app.lookups.deliveries import (
    AtTheDoor,
    DeliveryRow,
    at_the_door,
    batches_of,
    last_deliveries,
    on_hand_by_base,
)
from app.lookups.door import BaseNow, ConeCard, bases_now, came_before, cone_cards, numbers_taken
from app.lookups.trails import trail_of
from app.problems import Refused
from app.window.bench import Around, Bench
from app.window.benches.receiving.before_the_book import BeforeTheBook
from app.window.benches.receiving.cards import Cards
from app.window.benches.receiving.delivery import Heading, InHand
from app.window.benches.receiving.hand import Hand
from app.window.list_look import look_at
from app.window.parts.action_plates import DONE
from app.window.session import Done
from app.work.bases import BaseWords, describe_base
from app.work.receiving import receive

_CONCERNED = frozenset(
    {"cone", "delivery", "base", "base_version", "supplier", "supplier_lot", "draw", "waste",
     "dye_lot", "colourway"}
)
_LISTS = "Lists (*.csv *.xlsx *.txt *.tsv);;All files (*)"


class ReceivingBench(Bench):
    """One card in hand, and at the side what is there."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setAccessibleName("receiving")
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.cards = Cards()
        self.hand: Hand = self.cards.start
        self._left: list[InHand] = []  # weighed in part, to be taken up again
        self._saved: InHand | None = None  # where the new cones came from, if by weight
        self._cones: Sequence[int] = ()
        self._bases: Sequence[BaseNow] = ()
        self._after_base: Hand = self.cards.start
        self.before = BeforeTheBook(
            self, self.cards.old_lots, self.cards.old_list, self._turn_to)
        self.body.addWidget(self.cards)
        self._connect()
        self.cards.turn_to(self.hand)

    def entered(self) -> None:
        """Look up what is there; keys belong to the card in hand."""
        self.look_again(_CONCERNED)
        self.hand.begin()

    def look_again(self, kinds: frozenset[str]) -> None:
        """What is on hand, what the fields offer, and whether new cones were taken back."""
        if not kinds & _CONCERNED:
            return
        self.ask(self.cards.side.show_on_hand, on_hand_by_base)
        self.ask(self._show_last, last_deliveries)
        self.ask(self._show_door, at_the_door)
        self.ask(self._show_bases, bases_now)
        self.ask(self.cards.weighing.show_taken, numbers_taken)
        self.before.look_again()
        if self._cones:
            self.ask(self._show_codes, cone_cards, self._cones)

    def take(self, code: str) -> bool:
        """The plate DONE, and while cones are weighed the card of a cone."""
        scanned = read(code)
        if code == DONE:
            self._done()
            return True
        return scanned.kind is Kind.CONE and self.hand.take_cone(scanned.number or 0)

    def press(self, key: str) -> bool:
        """A figure begins the next weight."""
        return super().press(key) or (key.isdigit() and self.hand.write(key))

    def take_file(self, path: Path) -> bool:
        """A list that was dropped: a delivery note, or old lots where those are in hand."""
        if self.before.takes_lists(self.hand):
            self.before.open_list(path)
        else:
            self.open_list(path)
        return True

    def open_list(self, path: Path) -> None:
        """A list is in hand now; a delivery that was being weighed is kept."""
        self._put_away()
        self._turn_to(self.cards.list)
        self.cards.list.open(path)

    def choose_list(self) -> None:
        """Ask for a file, in a window of its own that blocks nothing."""
        dialog = QFileDialog(self, "The list", "", _LISTS)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(lambda name: self.take_file(Path(name)))
        dialog.open()

    def _turn_to(self, hand: Hand) -> None:
        self.setFocus()  # what is hidden with the focus would hand it on to any widget
        self.hand = hand
        if hand is not self.cards.codes:
            self._cones = ()
            self.around.show_trail(())
            self.around.found((), lambda _finding, _answer: None)
        self.cards.start.show_left(self._left[-1] if self._left else None)
        self.cards.turn_to(hand)
        hand.begin()

    def _done(self) -> None:
        if self.hand is self.cards.list and not self.cards.list.take_in.isEnabled():
            self.around.trouble(
                Refused("This list cannot be taken in as it is; nothing was saved.",
                        "Put its rows right and read it again, or leave them out: F7."))
        else:
            self.hand.done()

    def _begin(self, heading: Heading) -> None:
        self._weigh(InHand(heading, self.around.session.now()))
        self.cards.start.clear()

    def _weigh(self, hand: InHand) -> None:
        said, weighing = hand.heading, self.cards.weighing
        weighing.weigh(hand)
        self._turn_to(weighing)
        self.ask(weighing.show_batches, batches_of, said.supplier)
        self.ask(weighing.show_before, came_before, said.note_no, said.base.name)

    def _put_away(self) -> bool:
        """Cones that were weighed and not taken in are kept; False while one is on the scales."""
        weighing = self.cards.weighing
        if self.hand is weighing and weighing.hand is not None:
            if weighing.on_the_scales and not weighing.add_cone():
                return False
            if weighing.hand.cones:
                self._left.append(weighing.hand)
        return True

    def _leave(self) -> None:
        if self._put_away():
            self._turn_to(self.cards.start)

    def _take_up(self) -> None:
        if self._left:
            self._weigh(self._left.pop())

    def _take_in(self) -> None:
        hand = self.cards.weighing.hand
        if hand is not None:
            self.do(receive, hand.delivery(), token=hand.token,
                    then=lambda done: self._took_in(done, hand))

    def _take_in_list(self, leave_out: bool) -> None:
        seen = self.cards.list.seen
        if seen is not None and seen.arrival is not None:
            self.do(take_in, seen.arrival, leave_out, token=self.cards.list.token,
                    then=lambda done: self._took_in(done, None))

    def _took_in(self, done: Done[list[int]], hand: InHand | None) -> None:
        self._turn_to(self.cards.codes)
        self._saved, self._cones = hand, done.answer
        self.ask(self._show_codes, cone_cards, self._cones)

    def _show_codes(self, cones: Sequence[ConeCard]) -> None:
        """The codes; where they were taken back, what was weighed comes back."""
        if self.hand is not self.cards.codes:
            return
        if cones:
            self.cards.codes.show_cones(cones)
            if len(cones) == 1:
                self.ask(self.around.show_trail, trail_of, cones[0].code)
        elif self._saved is not None:
            self._saved.token = uuid4().hex
            self._weigh(self._saved)
        else:
            self.open_list(self.cards.list.path)

    def _look_at_list(self) -> None:
        card = self.cards.list
        path, said, now = card.path, card.said, self.around.session.now()
        session = self.around.session
        look_at(self, card, lambda: session.ask(see, path, said, now))

    def _show_door(self, door: AtTheDoor) -> None:
        self.cards.start.show_door(door)
        self.cards.list.supplier.offer(door.suppliers)

    def _show_last(self, deliveries: Sequence[DeliveryRow]) -> None:
        self.cards.side.show_last(deliveries)
        self.cards.start.show_last(deliveries)

    def _show_bases(self, bases: Sequence[BaseNow]) -> None:
        """Without a base nothing can come in: the first one is described here."""
        self._bases = bases
        self.cards.start.show_bases(bases)
        if not bases and self.hand is self.cards.start:
            self._ask_base("")
        elif bases and self.hand is self.cards.base and self.cards.base.first:
            self._turn_to(self._after_base)

    def _ask_base(self, name: str) -> None:
        self._after_base = self.hand
        self.cards.base.ask(name, first=not self._bases)
        self._turn_to(self.cards.base)

    def _describe(self, words: BaseWords) -> None:
        self.do(describe_base, words, then=lambda _done: self._described(words.name))

    def _described(self, name: str) -> None:
        self.cards.start.base.line.setText(name)
        self._after_this_base()

    def _after_this_base(self) -> None:
        self._turn_to(self._after_base)
        if self.hand is self.cards.list:
            self._look_at_list()

    def _connect(self) -> None:
        cards = self.cards
        cards.start.begun.connect(self._begin)
        cards.start.taken_up.connect(self._take_up)
        cards.weighing.complete.connect(self._take_in)
        cards.weighing.left.connect(self._leave)
        cards.list.complete.connect(self._take_in_list)
        cards.list.look_wanted.connect(self._look_at_list)
        cards.base.described.connect(self._describe)
        cards.base.left.connect(self._after_this_base)
        cards.start.old_lots.clicked.connect(self.before.begin)
        for wants in (cards.start, cards.list, cards.old_lots):
            wants.file_wanted.connect(self.choose_list)
        for card in (cards.start, cards.list):
            card.base_wanted.connect(self._ask_base)
        for going in (cards.list.left, cards.codes.left, cards.old_lots.left):
            going.connect(lambda: self._turn_to(cards.start))
