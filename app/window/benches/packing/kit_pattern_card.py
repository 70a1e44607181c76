"""One kit in hand: how many are possible, what is short, and the bag that is being filled."""

from datetime import datetime

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.lookups.kit_patterns import KitsNow, PlaceNow
from app.window.benches.packing.asked_above import AskedAbove
from app.window.benches.packing.kit_filling import Bag
from app.window.benches.packing.kit_words import (
    bag_place_words,
    place_words,
    possible_words,
    short_words,
    stand_in_words,
)
from app.window.look.look import Gap, Size, look
from app.window.parts.card import Actions, SideBySide
from app.window.parts.fields import CountField
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, BigNumber, Words


class PatternCard(AskedAbove):
    """`asked` gives how many kits are wanted; `closed` comes when the bag is to be closed."""

    asked = Signal(int)
    closed = Signal()
    emptied = Signal()
    last_out = Signal()
    anew = Signal()
    label = Signal()
    other_stock = Signal()
    left = Signal()

    def __init__(self) -> None:
        self.close_key = KeyButton("Close the bag", "Enter", strong=True)
        self.label_key = KeyButton("Its label again", "F5")
        self.out_key = KeyButton("Take the last one out", "F6")
        self.empty_key = KeyButton("Empty the bag", "F7")
        self.leave_key = KeyButton("Leave it", "F8")
        self.stock_key = KeyButton("Other stock", "F9")
        self.anew_key = KeyButton("Change the pattern", "F4")
        super().__init__(Actions(self.close_key, self.out_key, self.empty_key, self.label_key,
                                 self.stock_key, self.anew_key, self.leave_key))
        self.rows: list[PlaceRow] = []
        self.number, self.name = BigNumber(size=Size.HUGE), Words("", Size.LEAD, bold=True)
        self.wanted = CountField("Kits wanted", "12")
        self.short, self.stand_ins = Words(bold=True), Words()
        self.stock = Words(ink=SECOND)
        for key, signal in ((self.close_key, self.closed), (self.label_key, self.label),
                            (self.out_key, self.last_out), (self.empty_key, self.emptied),
                            (self.leave_key, self.left), (self.stock_key, self.other_stock),
                            (self.anew_key, self.anew)):
            key.clicked.connect(signal)
        self.wanted.line.returnPressed.connect(self._ask)
        self._lay_out()

    def show_kits(self, found: KitsNow, bag: Bag, now: datetime) -> None:
        """What the shelves allow now, and the bag as far as it is filled."""
        self.name.setText(found.pattern.name)
        self.number.show_number(str(found.possible), *possible_words(found))
        _say(self.short, short_words(found, now))
        _say(self.stand_ins, "\n".join(stand_in_words(found)) if found.short else "")
        take_down(self._places)
        self.rows = [PlaceRow(place, found, bag) for place in found.pattern.places]
        for row in self.rows:
            self._places.addWidget(row)
        lacking = [f"{place.letter} {bag.lacks(place)}" for place in bag.lacking]
        if lacking:
            self.close_key.refuse(f"It lacks {', '.join(lacking)}.")
        else:
            self.close_key.allow()
        for key in (self.out_key, self.empty_key):
            key.setVisible(bool(bag.skeins))

    def show_stock(self, words: str, *, made: bool) -> None:
        """Where the next label is printed; `made` where there is one that may be printed again."""
        self.stock.setText(words)
        self.label_key.setVisible(made)

    def _ask(self) -> None:
        count = self.wanted.value()
        if count is not None:
            self.asked.emit(count)

    def _lay_out(self) -> None:
        self.card.setAccessibleName("the kit in hand")
        places = QWidget()
        self._places = QVBoxLayout(places)
        self._places.setContentsMargins(0, Gap.SMALL, 0, Gap.SMALL)
        self._places.setSpacing(Gap.LINE)
        self.card.add(SideBySide(self.number, self.wanted, shares=(3, 1)), self.name, self.short,
                      self.stand_ins, places, self.stock)


class PlaceRow(QWidget):
    """One place: its letter, its yarn, what is left of it, and what of it lies in the bag."""

    def __init__(self, place: PlaceNow, found: KitsNow, bag: Bag) -> None:
        super().__init__()
        full = len(bag.of(place.letter))
        self.left, self.inside = Words(place_words(place, found)), Words(
            bag_place_words(place, bag), bold=True)
        if not full:
            self.inside.hide()
        if not bag.lacks(place):
            self.left.hide()  # what still lacks is to be in sight
        form = "" if place.put_up == "skein" else f", {place.put_up}"
        name = Words(f"{place.name}, {place.base_name}{form}", bold=True)
        self.setAccessibleName(f"{place.letter}, {place.name}: {full} of {place.wanted}")
        words = QVBoxLayout()
        words.setSpacing(0)
        for part in (name, self.left, self.inside):
            words.addWidget(part)
        words.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.PART)
        top = Qt.AlignmentFlag.AlignTop
        letter = Words(place.letter, Size.TITLE, bold=True, wrap=False)
        letter.setMinimumWidth(look().grid(24))
        row.addWidget(letter, 0, top)
        row.addWidget(Swatch((Zone(place.swatch),) if place.swatch else (), place.name,
                             none="no swatch"), 0, top)
        row.addLayout(words, 1)
        row.addWidget(Words(f"{full} of {place.wanted}", Size.TITLE, bold=True, wrap=False), 0, top)


def _say(words: Words, text: str) -> None:
    words.setText(text)
    words.setVisible(bool(text))
