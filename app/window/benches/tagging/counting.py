"""A shelf is counted: what was met by scanner, held against the book, and put right by one key."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import Signal

from app.exchange.tracing import STATE_WORDS
from app.lookups.shelves import ForShelf, ShelfNow, for_shelf
from app.lookups.stocktakes import Count, OneMet, stocktake
from app.problems import Refused
from app.scanning.saying import void_words
from app.window.bench import Around, Bench
from app.window.in_turn import InTurn
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import BigNumber, Words
from app.work.dividing import skeins
from app.work.stocktaking import begin_stocktake, met, put_right


class Counting(Bench):
    """A bench for one count of one shelf; `left` when it is put away."""

    left = Signal()

    def __init__(self, around: Around, shelf: ShelfNow) -> None:
        super().__init__(around)
        self.shelf = shelf
        self.number: int | None = None
        self.count: Count | None = None
        self._turn = InTurn(self)
        self.name, self.met = Words(f"Counting {shelf.words}", Size.TITLE, bold=True), BigNumber()
        self.next = Words("Scan every tag that lies here, then DONE.", Size.LEAD, bold=True)
        self.last, self.sums = Words(), Words("", Size.LEAD, bold=True)
        self.table = ThingTable((Head("tag", codes=True), "what the book says"), "what differs")
        self.why = TextField("Why it differs", "then Enter",
                             "Say what was found: the entry keeps it.")
        self.done_key = KeyButton("Done: compare with the book", "F9", strong=True)
        self.right_key = KeyButton("Put the book right", "F10", strong=True)
        self.leave = KeyButton("Put away", "F8")
        card = Card(in_hand=True)
        card.add_row(self.name, self.met).setStretch(0, 1)
        card.add(self.next, self.last, self.sums, self.table, self.why)
        card.add_last(Actions(self.done_key, self.right_key, self.leave))
        self.body.addWidget(card)
        for widget in (self.sums, self.table, self.why, self.right_key):
            widget.hide()
        self.done_key.clicked.connect(self.compare)
        self.right_key.clicked.connect(self._put_right)
        self.why.line.returnPressed.connect(self._put_right)
        self.leave.clicked.connect(self.left)
        self.do(begin_stocktake, shelf.id, then=lambda done: self._begun(done.answer))

    def look(self) -> None:
        """The count as it stands now."""
        if self.number is not None:
            self.ask(self._show, stocktake, self.number)

    def take_tag(self, mark: str) -> None:
        """A tag was scanned: it lies here."""
        self._turn.ask(lambda tag: self._tag_came(mark, tag), for_shelf, mark)

    def compare(self) -> None:
        """All is scanned: what is right, elsewhere, missing."""
        if self.number is not None:
            self._turn.ask(self._compared, stocktake, self.number)

    def _compared(self, count: Count | None) -> None:
        self._show(count)
        if count is None:
            return
        self.sums.setText(_sums(count))
        self.table.show_rows([
            *((one.mark or "", _elsewhere(one)) for one in count.elsewhere),
            *((one.mark or "", "The book has it here; nobody met it.") for one in count.missing)])
        moves = bool(count.missing) or any(not one.with_a_buyer for one in count.elsewhere)
        self.sums.show()
        self.table.setVisible(not count.fits)
        self.why.setVisible(moves)
        self.right_key.setVisible(moves)
        self.done_key.setVisible(not moves)  # it comes back with the next tag
        self.next.setText("The shelf is as the book says." if count.fits else
                          _what_now(count, moves=moves))
        if moves:
            self.why.line.setFocus()

    def _begun(self, number: Any) -> None:
        self.number = number
        self.look()

    def _tag_came(self, mark: str, tag: ForShelf | None) -> None:
        if self.number is None:
            return
        if tag is None:
            self.around.trouble(Refused(f"{mark} was never printed; it was not counted.",
                                        "Scan it once more."))
        elif tag.found.void:
            self.around.trouble(Refused(void_words(tag.found), "Throw this tag away, and lay the "
                                        "skein aside for the owner."))
        elif tag.found.kind == "tag":
            self.around.trouble(Refused(f"{tag.found.shown} hangs on no skein by the book; it was "
                                        "not counted.", "Lay it aside for the tag table."))
        else:
            self.done_key.show()
            words = f"{tag.found.shown} is counted."
            self.do(met, self.number, [tag.found.id], then=lambda _done: self.last.setText(words))

    def _put_right(self) -> None:
        why = self.why.value()
        if why and self.number is not None:
            self.do(put_right, self.number, why, then=lambda _done: self._is_right())

    def _is_right(self) -> None:
        self.why.clear()
        for widget in (self.why, self.right_key):
            widget.hide()
        self.next.setText("The book is put right.")
        self.table.hide()
        self.sums.hide()

    def _show(self, count: Count | None) -> None:
        if count is None:
            self.left.emit()
            return
        self.count = count
        here = len(count.right) + len(count.elsewhere)
        self.met.show_number(str(here), "scanned", f"the book has {_booked(count)} here")


def _what_now(count: Count, *, moves: bool) -> str:
    if not moves:
        return "Show these to the owner: the book has them sold."
    if any(one.with_a_buyer for one in count.elsewhere):
        return "What is sold stays as it is: ask the owner. All else can be put right."
    if not count.right and not count.elsewhere:
        return "Nothing was scanned. Scan what lies here; or is the shelf empty, and why?"
    return "Look once more and scan what you find; else say why, and the book is put right."


def _booked(count: Count) -> int:
    return len(count.right) + len(count.missing)


def _sums(count: Count) -> str:
    sold = sum(one.with_a_buyer for one in count.elsewhere)
    parts: Sequence[tuple[int, str]] = (
        (len(count.right), "right"), (len(count.elsewhere) - sold, "elsewhere by the book"),
        (sold, "sold by the book, yet here"), (len(count.missing), "missing"))
    return ", ".join(f"{skeins(number)} {words}" for number, words in parts if number) or (
        "Nothing lies here, and nothing should.")


def _elsewhere(one: OneMet) -> str:
    if one.with_a_buyer:
        return "Sold by the book, yet it lies here."
    state = STATE_WORDS.get(one.state, one.state)
    return f"The book has it {state}{f': {one.place}' if one.place else ''}."
