"""The lot in hand: its colour, what it is, how many are left to sell, and where the rest are."""

from collections.abc import Sequence
from datetime import datetime

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from app.lookups.counter import AtCounter, Tagged
from app.lookups.lot_lines import LotLine
from app.window.benches.counter.words import (
    age_words,
    faults_words,
    hold_words,
    left_words,
    offers_words,
    price_words,
    promised_words,
    rest_words,
    skein_words,
)
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, stacked
from app.window.parts.hold_plate import HoldLine
from app.window.parts.key_button import KeyButton
from app.window.parts.offer_rows import Offer, OfferRows
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, BigNumber, CodeWords, Words

SWATCH = QSize(152, 288)
NONE_LEFT = "None of it is left to sell."


class LotCard(Card):
    """One lot, and if a tag was scanned, this very skein of it."""

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("lot in hand")
        self.code, self.name = CodeWords(size=Size.TITLE), Words("", Size.LEAD, bold=True)
        self.base, self.left = Words(ink=SECOND), BigNumber()
        self.rest, self.promised, self.offers = Words(), Words(), Words()
        self.price, self.skein, self.note = Words(ink=SECOND), Words(bold=True), Words(bold=True)
        self.faults = Words(bold=True)
        self.put_by_key = KeyButton("Put by", "F3")
        self.promise_key = KeyButton("Promise", "F4")
        self.more_key = KeyButton("Wants more", "F11")
        self.back_key = KeyButton("It came back", "F10", strong=True)
        self.fault_key = KeyButton("A fault", "F1")
        self.good_key = KeyButton("Seen good", "F9")
        self.holds: list[HoldLine] = []
        self._swatch, self._holds = QVBoxLayout(), QVBoxLayout()
        self._swatch.setSpacing(Gap.HAIR)
        words = QVBoxLayout()
        words.setSpacing(Gap.SMALL)
        for part in (self.code, self.name, self.base, self.note, self.skein, self.faults,
                     self.left, self.rest, self.promised, self.price):
            words.addWidget(part)
        words.insertLayout(3, self._holds)
        words.addStretch(1)
        row = QHBoxLayout()
        row.setSpacing(Gap.CARD)
        row.addLayout(self._swatch)
        row.addLayout(words, 1)
        self.add(row)
        keys = Actions(self.put_by_key, self.promise_key, self.more_key,
                       self.back_key, self.fault_key, self.good_key)
        self.add_last(stacked(keys, self.offers))  # the keys stay in sight in large text

    def show_lot(self, lot: AtCounter, skein: Tagged | None, note: str, now: datetime) -> None:
        """Show another lot, or the same as it is now."""
        line = lot.line
        self.code.show_code(line.shown)
        self.name.setText(line.colourway)
        self.base.setText(f"{line.base} · {age_words(line.dyed, now)}")
        self.left.show_number(*left_words(lot))
        _say(self.rest, rest_words(lot, now))
        _say(self.promised, promised_words(lot))
        _say(self.offers, offers_words(lot))
        _say(self.price, price_words(lot))
        _say(self.skein, skein_words(skein, now) if skein else "")
        _say(self.faults, faults_words(skein) if skein else "")
        _say(self.note, note)
        self._show_swatch(line)
        self._show_holds(lot, skein)
        for key in (self.put_by_key, self.promise_key):
            if lot.left.count:
                key.allow()
            else:
                key.refuse(NONE_LEFT)
        self.back_key.setVisible(skein is not None and skein.state == "sent")
        self.good_key.setVisible(skein is not None)

    def _show_swatch(self, line: LotLine) -> None:
        take_down(self._swatch)
        zones = [Zone(line.swatch)] if line.swatch else []
        self._swatch.addWidget(Swatch(zones, line.colourway, SWATCH, "no swatch chosen"), 0,
                               Qt.AlignmentFlag.AlignTop)
        if line.swatch:
            by_eye = Words("by eye, not measured", Size.SMALL, ink=SECOND)
            by_eye.setMaximumWidth(SWATCH.width())
            self._swatch.addWidget(by_eye)
        self._swatch.addStretch(1)

    def _show_holds(self, lot: AtCounter, skein: Tagged | None) -> None:
        take_down(self._holds)
        self.holds = [HoldLine(hold_words(hold), here=hold.source == ("lot", lot.line.lot))
                      for hold in lot.holds_in_sight(skein)]
        for line in self.holds:
            self._holds.addWidget(line)


class NextLookCard(Card):
    """Lots near by their making: nothing is said of their shade, it has to be looked at."""

    def __init__(self) -> None:
        super().__init__("The next look")
        self.setAccessibleName("sister lots")
        self.rows = OfferRows()
        self.add(Words("Dyed on the same day by the same recipe, in another pot. Look at both in "
                       "daylight. The arrow down and Enter open one.", ink=SECOND), self.rows)

    def show_sisters(self, sisters: Sequence[Offer]) -> None:
        """Show other lots; none hides the card."""
        self.rows.show_offers(sisters)
        self.setVisible(bool(sisters))


def _say(words: Words, text: str) -> None:
    words.setText(text)
    words.setVisible(bool(text))
