"""The ways to serve somebody who wants more, and what is said to one of them."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtWidgets import QWidget

from app.calculations.listing import listing
from app.lookups.reorder import Reorder
from app.lookups.reorder_ways import Does, Way
from app.window.benches.counter.asking import NumberedAsk
from app.window.benches.counter.words import pieces
from app.window.look.look import Size
from app.window.parts.card import Actions, SideBySide
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, BigNumber, Words
from app.window.shades.held_beside import held_beside

MOST_KEYS = 9
"""Ways with a digit of their own; the others are reached by Tab."""
STATED = ("Its lot is as stated: see its tag, or hold 2 m of the yarn beside it, before it is "
          "promised as the same.")
TAKEN, THINKS, DECLINED, ON_ORDER = "taken", "thinks it over", "declined", "on an order"
ON_A_SHELF = (Does.OPEN_KIT, Does.SHELVE, Does.END_PUT_BY)
"""What is done on a shelf: its plate answers too."""
_FROM = {Does.KEEP: "Same lot", Does.OPEN_KIT: "From a kit", Does.SHELVE: "From the table",
         Does.END_PUT_BY: "From a put-by", Does.NOT_HERE: "From a fair"}
"""Where one of the same lot is had."""


class WaysCard(NumberedAsk):
    """The ways in their order, each with its words and one key. Answers with the way."""

    wants = "Press the number of a way, or scan the COUNT plate with it."

    def __init__(self, shown: str, put_up: str, found: Reorder) -> None:
        wanted = pieces(found.wanted, put_up)
        super().__init__(f"{wanted} more, of {shown}", STATED if found.basis == "stated" else "")
        self._shown, self.found, self.free = shown, found, BigNumber()
        self.free.show_number(f"{found.free}", "left to sell", f"{wanted} wanted")
        self.need, self.fewest = Words(need_words(found), ink=SECOND), Words(
            fewest_words(found), bold=True)
        rows = [self._row(number, way) for number, way in enumerate(found.ways, 1)]
        for words in (self.need, self.fewest):
            if not words.text():
                words.hide()
        self.lay_out(self.free, self.need, self.fewest, *rows)

    def _row(self, number: int, way: Way) -> QWidget:
        words = (_FROM[way.does] if way.way == "same lot"
                 else f"{way.way[:1].upper()}{way.way[1:]}")
        key = KeyButton(words, str(number) if number <= MOST_KEYS else "")
        key.clicked.connect(lambda _=False: self.answered.emit((way,)))
        self.keys.append(key)
        said = Words(way.words)
        measured = any(one.difference is not None for one in self.found.ways)
        return SideBySide(held_beside(self._shown, way.difference, said) if measured else said,
                          Words(way.certainty, Size.SMALL, ink=SECOND), key,
                          shares=(5, 2, 2))


class SaidCard(NumberedAsk):
    """What the customer said to an offer. Answers with the word for it; taken is done at once.

    Where it is done on a shelf, a scanned plate says taken, and which shelf.
    """

    wants = "Press its number, or scan the COUNT plate with that number."

    def __init__(self, way: Way, does: str, order: str = "", aside: str = "") -> None:
        """`does` says what is done where it is taken, `order` the same by an order; `aside` what
        is to be known before, such as for whom it is put by."""
        super().__init__("What is the answer?", "It is kept with the offer.")
        self._on_a_shelf = way.does in ON_A_SHELF
        said = [(TAKEN, does), (THINKS, "Thinks it over"), (DECLINED, "Declined")]
        if order:
            said.append((ON_ORDER, order))
        self.keys = [KeyButton(words, str(number), strong=number == 1)
                     for number, (_, words) in enumerate(said, 1)]
        for key, (word, _) in zip(self.keys, said, strict=True):
            key.clicked.connect(partial(self._say, word))
        self.aside = Words(aside)
        if not aside:
            self.aside.hide()
        self.lay_out(Words(way.words, bold=True), self.aside, Actions(*self.keys))

    def shelf(self, place: int, words: str) -> bool:
        if self._on_a_shelf:
            self.answered.emit((TAKEN, place))
        return self._on_a_shelf

    def _say(self, said: str, _checked: bool = False) -> None:
        self.answered.emit((said,))


def does_words(way: Way, count: int, shelf: str, buyer: str, until: str) -> str:
    """What one key does where this way is taken: 'Put 2 by for Bo, until 5 Dec 2026'."""
    if way.does is Does.KEEP:
        return f"Put {count} by for {buyer}, until {until}" if buyer else f"Put {count} by for …"
    if way.does is Does.OPEN_KIT:
        return f"Open it: its skeins on {shelf}" if shelf else "Open it on a shelf …"
    if way.does is Does.SHELVE:
        return f"They are good: lay them on {shelf}" if shelf else "They are good: on a shelf …"
    if way.does is Does.END_PUT_BY:
        return "Given up: back on the shelf"
    return "Note it for the dyer" if way.does is Does.NOTE else "They want it so"


def need_words(found: Reorder) -> str:
    """'665 m with the allowance, 1.99 reckoned: it only just fits, so offer one more …'"""
    if found.need is None:
        return ""
    reckoned = f"{found.need.metres:,.0f} m with the allowance, {found.need.exact:.2f} reckoned"
    if found.only_just:
        return f"{reckoned}: it only just fits, so offer one more to be given back."
    return f"{reckoned}."


def fewest_words(found: Reorder) -> str:
    """The fewest lots that fill it, and which two of them are least alike."""
    fewest = found.fewest
    if fewest is None:
        return ""
    lots: Sequence[str] = fewest.lots
    said = f"The fewest lots for it: {listing(lots)}, {fewest.free} free"
    if fewest.worst is not None:
        worst = fewest.worst
        said += (f"; least alike are {worst.one} and {worst.other}, "
                 f"{worst.ciede2000:.2f} apart")
    return f"{said}." if fewest.closest else f"{said}; a closer set may be there."
