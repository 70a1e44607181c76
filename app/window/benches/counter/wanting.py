"""More of the lot in hand: how many are wanted, then the ways to serve it, then what was said."""

from collections.abc import Sequence
from decimal import Decimal, InvalidOperation
from functools import partial

from PySide6.QtWidgets import QWidget

from app.lookups.reorder import Asked, Reorder
from app.lookups.reorder_ways import Way
from app.problems import BadInput
from app.window.benches.counter.asking import Ask, NumberedAsk
from app.window.benches.counter.words import listing, pieces
from app.window.look.look import Size
from app.window.parts.card import Actions, SideBySide
from app.window.parts.fields import CountField, Field
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, BigNumber, Words
from app.work.offering import ANSWERS

PERCENT = Decimal(100)
MOST_KEYS = 9
"""Ways with a digit of their own; the others are reached by Tab."""


class MoreCard(Ask):
    """How many more, or metres, or how much of the piece the skeins so far made."""

    def __init__(self, lot: int, shown: str, put_up: str) -> None:
        super().__init__(f"More of {shown}", "Fill in what the customer knows: a number, metres, "
                         "or what was used and how much of the piece it made.", "Show the ways")
        self._lot, self._put_up = lot, put_up
        self.how_many = CountField("How many more", "3")
        self.metres = Field("or metres", _number, "620")
        self.used = Field(f"or {put_up}s used so far", _number, "3")
        self.done = Field("for so much of the piece, %", _number, "62")
        self.lay_out(SideBySide(self.how_many, self.metres), SideBySide(self.used, self.done))

    def begin(self) -> None:
        self.how_many.line.setFocus()

    def count(self, number: int) -> bool:
        self.how_many.line.setText(str(number))
        self.save()
        return True

    def save(self) -> None:
        asked = self._asked()
        if asked is not None:
            self.answered.emit((asked,))

    def _asked(self) -> Asked | None:
        used, done = self.used.line.text().strip(), self.done.line.text().strip()
        if self.how_many.line.text().strip():
            count = self.how_many.value()
            return None if count is None else Asked(
                lot=self._lot, put_up=self._put_up, skeins=count)
        if self.metres.line.text().strip():
            metres = self.metres.value()
            return None if metres is None else Asked(
                lot=self._lot, put_up=self._put_up, metres=metres)
        if not (used or done):
            self.how_many.complain("Say how many are wanted, or one of the others.")
            return None
        return self._rest_of_a_piece()

    def _rest_of_a_piece(self) -> Asked | None:
        used, share = self.used.value(), self.done.value()
        if used is None or share is None:
            return None
        if share > PERCENT:
            self.done.complain("A piece is done at 100 %.")
            return None
        return Asked(lot=self._lot, put_up=self._put_up, used=used, done=share / PERCENT)


class WaysCard(NumberedAsk):
    """The ways in their order, each with its words and one key. Answers with the way."""

    wants = "Press the number of a way, or scan the COUNT plate with it."

    def __init__(self, shown: str, put_up: str, found: Reorder) -> None:
        wanted = pieces(found.wanted, put_up)
        super().__init__(f"{wanted} more, of {shown}", "")
        self.found, self.free = found, BigNumber()
        self.free.show_number(f"{found.free}", "left to sell", f"{wanted} wanted")
        self.need, self.fewest = Words(need_words(found), ink=SECOND), Words(
            fewest_words(found), bold=True)
        rows = [self._row(number, way) for number, way in enumerate(found.ways, 1)]
        for words in (self.need, self.fewest):
            words.setHidden(not words.text())
        self.lay_out(self.free, self.need, self.fewest, *rows)

    def _row(self, number: int, way: Way) -> QWidget:
        key = KeyButton(f"{way.way[:1].upper()}{way.way[1:]}",
                        str(number) if number <= MOST_KEYS else "")
        key.clicked.connect(lambda _=False: self.answered.emit((way,)))
        self.keys.append(key)
        return SideBySide(Words(way.words), Words(way.certainty, Size.SMALL, ink=SECOND), key,
                          shares=(5, 2, 2))


class SaidCard(NumberedAsk):
    """What the customer said to an offer. Answers with the word for it."""

    wants = "Press 1, 2 or 3, or scan the COUNT plate with that number."

    def __init__(self, way: Way) -> None:
        super().__init__("What is the answer?", "It is kept with the offer, and promises nothing.")
        self.keys = [KeyButton(f"{said[:1].upper()}{said[1:]}", str(number), strong=number == 1)
                     for number, said in enumerate(ANSWERS, 1)]
        for key, said in zip(self.keys, ANSWERS, strict=True):
            key.clicked.connect(partial(self._say, said))
        self.lay_out(Words(way.words, bold=True), Actions(*self.keys))

    def _say(self, said: str, _checked: bool = False) -> None:
        self.answered.emit((said,))


def need_words(found: Reorder) -> str:
    """'665 m with the allowance, 1.99 skeins: hardly anything is left of the last, …'"""
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


def _number(text: str) -> Decimal:
    try:
        number = Decimal(text.strip().replace(",", "."))
    except InvalidOperation:
        number = Decimal(0)
    if not (number.is_finite() and number > 0):
        raise BadInput(f"“{text.strip()}” is no number above nothing.")
    return number
