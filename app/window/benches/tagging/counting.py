"""A shelf is counted: what was met by scanner, held against the book, and put right by one scan."""

from enum import Enum
from typing import Any

from PySide6.QtCore import Signal

from app.lookups.shelves import ForShelf, ShelfNow, for_shelf
from app.lookups.stocktakes import Count, stocktake
from app.problems import Refused
from app.scanning.saying import void_words
from app.window.bench import Around, Bench
from app.window.benches.tagging import count_words as words
from app.window.in_turn import InTurn
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import to_top
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.why_card import WhyCard, in_place_of
from app.window.parts.words import SECOND, BigNumber, Words
from app.work.stocktaking import begin_stocktake, met, put_right


class Step(Enum):
    """How far a count is."""

    SCANNING = "tags are scanned"
    DOUBTED = "so few were met: is it the whole shelf?"
    ASKED = "it differs: why?"
    OVER = "nothing is left to put right"


class Counting(Bench):
    """A bench for one count of one shelf; `left` when it is put away."""

    left = Signal()

    def __init__(self, around: Around, shelf: ShelfNow) -> None:
        super().__init__(around)
        self.shelf = shelf
        self.number: int | None = None
        self.step = Step.SCANNING
        self.why: WhyCard | None = None
        self._typed = ""  # a reason that was begun stays while more tags are scanned
        self._is_right = self._was_compared = False
        self._turn = InTurn(self)
        self.name, self.met = Words(f"Counting {shelf.words}", Size.TITLE, bold=True), BigNumber()
        self.next, self.hint = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.last, self.sums = Words(), Words("", bold=True)
        self.table = ThingTable((Head("tag", codes=True), "what the book says"), "what differs")
        self.done_key = KeyButton("", "F9", strong=True)
        self.leave = KeyButton("Put away", "F8")
        card = Card(in_hand=True)
        card.add_row(self.name, self.met).setStretch(0, 1)
        card.add(self.next, self.hint, self.last, self.sums)
        card.add_last(Actions(self.done_key, self.leave))
        self.differing = Card()
        self.differing.add(self.table)
        for one in (card, self.differing):
            self.body.addWidget(one)
        self.done_key.clicked.connect(self.done)
        self.leave.clicked.connect(self.left)
        self._tell("")
        self._scan_on()
        self.do(begin_stocktake, shelf.id, then=lambda done: self._begun(done.answer))

    def look(self) -> None:
        """The count as it stands now."""
        if self.number is not None:
            self.ask(self._show, stocktake, self.number)

    def take_tag(self, mark: str) -> None:
        """A tag was scanned: it lies here."""
        self._turn.ask(lambda tag: self._tag_came(mark, tag), for_shelf, mark)

    def done(self) -> None:
        """DONE: compared with the book, a doubt answered, a reason given, or put away."""
        if self.why is not None:
            self.why.save()
        elif self.step is Step.OVER:
            self.left.emit()
        elif self.number is not None:
            self._turn.ask(self._compared, stocktake, self.number)

    def choose(self, number: int) -> None:
        """A figure or COUNT plate: the reason with this number."""
        if self.why is not None:
            self.why.choose(number)

    def _begun(self, number: Any) -> None:
        self.number = number
        self.look()

    def _tag_came(self, mark: str, tag: ForShelf | None) -> None:
        if self.number is None:
            return
        if tag is None:
            self._trouble(f"{mark} was never printed; it was not counted.", "Scan it once more.")
        elif tag.found.void:
            self._trouble(void_words(tag.found), "Throw this tag away, and lay the skein aside for "
                          "the owner.")
        elif tag.found.kind == "tag":
            self._trouble(f"{tag.found.shown} hangs on no skein by the book; it was not counted.",
                          "Lay it aside for the tag table.")
        else:
            self._scan_on()
            said = f"{tag.found.shown} is counted."
            self.do(met, self.number, [tag.found.id], then=lambda _done: self._tell(said))

    def _scan_on(self) -> None:
        """Tags are wanted; what was asked before is asked again with the next DONE."""
        self.step, self._is_right = Step.SCANNING, False
        self._ask_why(None)
        self._say_next(words.SCAN, "")
        self.done_key.say("Done: compare with the book")

    def _compared(self, count: Count | None) -> None:
        """Doubted where few were met; else asked why it differs, or over."""
        self._tell("")
        self._was_compared = True
        if count is None:
            self.left.emit()
        elif count.is_doubtful and self.step is not Step.DOUBTED:
            self.step = Step.DOUBTED
            self._say_next(words.doubt(count), words.ALL_OF_IT)
            self.done_key.say("Yes, all of it is counted")
        elif count.missing or count.to_move:
            self.step = Step.ASKED
            self._say_next(words.differs(count), "")
            self._ask_why(WhyCard(words.why_differs(count)))
        else:
            self.step = Step.OVER
            self.done_key.hide()
        self._show(count)

    def _ask_why(self, card: WhyCard | None) -> None:
        """The question between the count and what differs, or none."""
        if self.why is not None:
            self._typed = self.why.field.line.text()
        if card is not None:
            card.field.line.setText(self._typed)
            card.said.connect(self._put_right)
            card.left.connect(self._scan_on)
        for key in (self.done_key, self.leave):
            key.setHidden(card is not None)  # DONE and F8 are the question's now
        in_place_of(self.body, 1, self.why, card)
        self.why = card

    def _put_right(self, why: str) -> None:
        self.do(put_right, self.number, why, then=lambda _done: self._book_followed())

    def _book_followed(self) -> None:
        self._scan_on()
        self._typed, self._is_right = "", True
        self.done()

    def _show(self, count: Count | None) -> None:
        if count is None:
            self.left.emit()
            return
        if self.step is Step.OVER:
            if count.missing or count.to_move:  # what was put right was taken back
                self._scan_on()
            else:
                self._say_next(words.is_over(count, put_right=self._is_right),
                               words.after(count))
        here = len(count.right) + len(count.elsewhere)
        self.met.show_number(str(here), "scanned", f"the book has {count.booked} here")
        self.sums.setText(words.sums(count))
        self.sums.setVisible(self._was_compared)
        self.table.show_rows(words.rows(count))
        self.differing.setVisible(self._was_compared and not count.fits)

    def _trouble(self, what: str, next_step: str) -> None:
        self._tell("")
        self.around.trouble(Refused(what, next_step))

    def _tell(self, said: str) -> None:
        self.last.setText(said)
        self.last.setVisible(bool(said))

    def _say_next(self, sentence: str, hint: str) -> None:
        self.next.setText(sentence)
        self.hint.setText(hint)
        self.hint.setVisible(bool(hint))
        to_top(self)
