"""Skeins without a tag, while a lot or a lost skein is in hand: what is of it, and what may be."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.moments import day_words
from app.calculations.units import grams
from app.lookups.untagged import Gap, OfLot, Untagged
from app.window.benches.desk.desk_words import how_many
from app.window.look.look import Gap as Space
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words

_WANTS = ("Scan any tag of this lot at Tagging, print one more for an extra skein, and scan that "
          "there: it is asked whether it goes on this one.")


class TaglessCard(Card):
    """`missing`, `waiting` and `one_of` give the find and the room that the lot has for it."""

    missing = Signal(object, object)  # Untagged, Gap
    waiting = Signal(object, object)
    one_of = Signal(object, object)

    def __init__(self) -> None:
        super().__init__("Without a tag")
        self.keys: list[KeyButton] = []
        self._skein = False
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Space.SMALL)
        self.add(self._rows)
        self.hide()

    def show_tagless(self, told: OfLot | None, *, skein: bool = False) -> None:
        """Show what wears no tag and is of another lot, or may be; or is this very skein."""
        self._skein = skein
        take_down(self._rows)
        self.keys = []
        self.setVisible(told is not None and bool(told.wanting or told.may_be))
        if told is None:
            return
        for one in told.wanting:
            self._rows.addWidget(Words(f"{_said(one)} It is of this lot and wants a tag.",
                                       bold=True))
        if told.wanting:
            self._rows.addWidget(Words(_WANTS, ink=SECOND))
        for find, gap in told.may_be:
            self._rows.addWidget(Words(f"{_said(find)} Its lot is not known.", bold=True))
            self._rows.addWidget(Actions(*self._offers(find, gap)))

    def _offers(self, find: Untagged, gap: Gap) -> list[KeyButton]:
        offers = []
        if gap.missing is not None:
            offers.append(self._key(
                f"It was missing at the count: {how_many(gap.short, find.put_up)}",
                partial(self.missing.emit, find, gap)))
        if gap.waiting is not None:
            offers.append(self._key("It was counted here and never got its tag",
                                    partial(self.waiting.emit, find, gap)))
        if gap.tagged:
            offers.append(self._key(
                f"It is one of its {len(gap.tagged)} with tags" if len(gap.tagged) > 1
                else "It is this one, its tag was lost" if self._skein
                else "It is its one with a tag", partial(self.one_of.emit, find, gap)))
        return offers

    def _key(self, words: str, pressed: "partial[None]") -> KeyButton:
        key = KeyButton(words)
        key.clicked.connect(pressed)
        self.keys.append(key)
        return key


def _said(one: Untagged) -> str:
    return (f"1 {one.put_up} of {one.base} without a tag, {grams(one.mg):.1f} g, "
            f"found {day_words(one.since)}.")
