"""A shelf in hand: every tag that is scanned now lies there."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal

from app.exchange.shelf_cards import CardSheet, card_sheet, shelf_card
from app.lookups.shelves import ForShelf, ShelfNow, for_shelf, on_table_of, shelf_with
from app.lookups.told_faults import told_words
from app.problems import NotFound, Refused
from app.scanning.saying import void_words
from app.window.bench import Around, Bench
from app.window.benches.tagging import printing
from app.window.in_turn import InTurn
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.shelf_lots import ShelfLots
from app.window.parts.words import BigNumber, Words
from app.work.dividing import skeins
from app.work.moving import lay


class ShelfInHand(Bench):
    """A bench for one shelf; `left` when it is put away, `counting` when all of it is counted.

    `tied_on` are skeins that were tied on just before: they go there with the scan of the shelf.
    """

    left = Signal()
    counting = Signal()

    def __init__(self, around: Around, shelf: ShelfNow, tied_on: Sequence[int] = ()) -> None:
        super().__init__(around)
        self.shelf = shelf
        self._turn = InTurn(self)
        self.name, self.number = Words(shelf.words, Size.TITLE, bold=True), BigNumber()
        self.next = Words("Scan each tag that lies here now. DONE counts this shelf.",
                          Size.LEAD, bold=True)
        self.last, self.lots = Words(), ShelfLots()
        self.leave = KeyButton("Put away", "F8")
        self.count_key = KeyButton("Count this shelf", "F6")
        self.card_key = KeyButton("Print its card", "P")
        self.leave.clicked.connect(self.left)
        self.count_key.clicked.connect(self.done)
        self.card_key.clicked.connect(lambda: self.ask(self._print_card, card_sheet))
        card = Card(in_hand=True)
        head = card.add_row(self.name, self.number)
        head.setStretch(0, 1)
        card.add(self.next, self.last, self.lots)
        card.add_last(Actions(self.count_key, self.card_key, self.leave))
        self.body.addWidget(card)
        self._tell("")
        self._show(shelf)
        if tied_on:
            self._turn.ask(self._put, on_table_of, tied_on)

    def look(self) -> None:
        """Look up what lies there now."""
        self.ask(self._look_came, shelf_with, self.shelf.code)

    def take_tag(self, mark: str) -> None:
        """A tag was scanned: its skein lies here, or it is said why it cannot."""
        self._turn.ask(partial(self._tag_came, mark), for_shelf, mark)

    def done(self) -> None:
        """DONE: this shelf is to be counted."""
        self.counting.emit()

    def _print_card(self, on: CardSheet) -> None:
        shelf, wanted = self.shelf.id, printing.card_wanted(self, on)
        self.run(lambda session: printing.print_card(session, shelf_card, shelf, wanted, on.kept),
                 lambda done: printing.put_out_sheets(self, done.answer))

    def _tag_came(self, mark: str, tag: ForShelf | None) -> None:
        if tag is None:
            self._trouble(f"{mark} was never printed; nothing was moved.", "Scan it once more.")
        elif tag.found.void:
            self._trouble(void_words(tag.found), "Throw this tag away.")
        elif tag.found.kind == "tag":
            self._trouble(f"{tag.found.shown} hangs on no skein yet; nothing was moved.",
                          "Tie it on first: scan the disc of its pile.")
        elif (tag.state, tag.place) == ("shelf", self.shelf.id):
            self._tell(f"{tag.found.shown} lies here already: counted once.{_warned(tag)}")
        else:
            self._move([tag.found.id], f"{tag.found.shown} lies here now.{_warned(tag)}")

    def _put(self, rows: Sequence[int]) -> None:
        if rows:
            self._move(rows, f"{skeins(len(rows))} just tied on lie here now.".replace(
                "1 skein just tied on lie", "1 skein just tied on lies"))

    def _move(self, rows: Sequence[int], words: str) -> None:
        self.do(lay, list(rows), self.shelf.id,
                then=lambda _done: self._tell(words))

    def _trouble(self, what: str, next_step: str) -> None:
        self._tell("")
        self.around.trouble(Refused(what, next_step))

    def _look_came(self, shelf: ShelfNow | None) -> None:
        if shelf is None:
            self.around.trouble(NotFound(f"{self.shelf.words} is not in the book any more.",
                                         "Make its plate again at the Desk."))
            self.left.emit()
        else:
            self._show(shelf)

    def _tell(self, words: str) -> None:
        self.last.setText(words)
        self.last.setVisible(bool(words))

    def _show(self, shelf: ShelfNow) -> None:
        self.shelf = shelf
        one = "lies" if shelf.count == 1 else "lie"
        self.number.show_number(str(shelf.count), f"{one} here")
        self.lots.show_shelf(shelf)


def _warned(tag: ForShelf) -> str:
    """What was told of this skein, where nobody saw it good since."""
    return "".join(f" {told_words(one, 'it')}" for one in tag.told)
