"""The page of shade pictures: swatches of a colourway's lots, their map, and their drift."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import bare_characters
from app.calculations.shade_difference import MOST_DRIFT, SMALL_STEP, difference
from app.lookups.shade_map import ShadeMap
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, SideBySide, stacked
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.window.shades.beside import MIDDLE, PAIR, Beside, Shown, short_of, zones_of
from app.window.shades.drift_picture import DriftPicture
from app.window.shades.lot_list import LotList
from app.window.shades.map_picture import MapPicture
from app.window.shades.shade_words import (
    fine_words,
    group_words,
    left_out_words,
    map_words,
    pair_words,
)

LIMIT_KEYS = ("N", "M", "W")
"""Of how far two lots of a group may be apart."""
_OLD_HABIT = (f"Round: from the standard, with its ±; beyond {MOST_DRIFT:g} it is left. Hollow "
              f"diamond: the step from the last lot; below {SMALL_STEP:g} it looks harmless.")
_MARKS = ("Lots with one shape of mark, in one ring, go together; filled: some are left to sell; "
          "ringed close: the lot in hand; cross hair: the standard. a*, b* and L* have one scale; "
          "rings may cross where lots differ in L*.")


class ShadePage(QWidget):
    """`wanted` asks for a lot to be taken in hand, `limited` for other groups, `left` to go."""

    wanted = Signal(int, str)  # lot, code
    limited = Signal(float)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("shades of a colourway")
        self.shades: ShadeMap | None = None
        self.meant: int | None = None
        self.title, self.said = Words("", Size.LEAD, bold=True), Words()
        self.groups, self.out = Words(), Words(ink=SECOND)
        self.limit_keys = [KeyButton("", key) for key in LIMIT_KEYS]
        self.limits: dict[float, KeyButton] = {}
        self.open_key = KeyButton("Take it in hand", "O")
        self.away_key = KeyButton("Put away", "F8")
        self.pair, self.pair_words = Beside(PAIR), Words("", Size.LEAD, bold=True)
        self.fine, self.short = Words(ink=SECOND), Words(ink=SECOND)
        self.all = Beside(MIDDLE)
        self.hold_against = stacked(self.pair_words, self.pair, self.fine, self.short,
                                    Actions(self.open_key))
        self.map, self.lots, self.drift = MapPicture(), LotList(), DriftPicture()
        self.pictures = QWidget()
        self._lay_out()
        self._join()

    def show_map(self, shades: ShadeMap) -> None:
        """Show a colourway's lots, the one in hand marked; fewer than two make no picture."""
        before = (None if self.shades is None or self.meant is None
                  else self.shades.lots[self.meant].lot)
        self.shades = shades
        lots = [step.lot for step in shades.lots]
        self.title.setText(f"Shades of {shades.colourway}, {shades.base}")
        enough = len(lots) > 1
        self.said.setText(f"{shades.viewing}. {map_words(shades)}" if enough else _empty(shades))
        self.groups.setText("\n".join(group_words(shades, one) for one in shades.groups
                                      if len(one.lots) > 1) or "No two of them go together.")
        self.out.setText(left_out_words(shades))
        for words, there in ((self.groups, enough), (self.out, bool(self.out.text()))):
            words.setVisible(there)
        self._show_limits(shades)
        self.pictures.setVisible(enough)
        self.hold_against.setVisible(enough)
        if enough:
            for part in (self.map, self.lots, self.drift):
                part.show_map(shades)
            self.all.show_all(_swatches(shades))
        self.mean(lots.index(before) if before in lots else None)

    def _show_limits(self, shades: ShadeMap) -> None:
        for key in self.limit_keys:
            key.hide()
        self.limits = dict(zip(shades.limits, self.limit_keys, strict=False))
        for limit, key in self.limits.items():
            key.say(f"Within {limit}")
            key.setChecked(limit == shades.limit)
            key.setVisible(len(shades.lots) > 1)

    def mean(self, place: int | None) -> None:
        """This lot is meant: show it beside the one in hand."""
        self.meant = place
        for picture in (self.map, self.drift):
            picture.mark(place)
        self._show_pair()

    def _show_pair(self) -> None:
        shades = self.shades
        if shades is None or len(shades.lots) < 2:
            return
        here = next((n for n, step in enumerate(shades.lots) if step.lot == shades.lot), None)
        colours = {"the standard": shades.standard} if shades.standard else {}
        colours |= {shades.lots[place].code: shades.lots[place].colour
                    for place in (here, self.meant) if place is not None}
        self.pair.show_all([Shown(name, zones_of(colour)) for name, colour in colours.items()])
        self.short.setText(short_of(colours))
        self.short.setVisible(bool(self.short.text()))
        self._say_apart(shades, here)
        if self.meant is None or self.meant == here:
            self.open_key.refuse("Choose another lot first.")
        else:
            self.open_key.allow()

    def _say_apart(self, shades: ShadeMap, here: int | None) -> None:
        """The lot in hand and the one that is meant, else the standard."""
        lots, fine = shades.lots, ""
        if here is None:
            said = "The lot in hand was not read in this light."
        else:
            meant = None if self.meant is None or self.meant == here else lots[self.meant]
            other = "the standard" if meant is None else meant.code
            apart = lots[here].from_standard if meant is None else difference(
                meant.colour, lots[here].colour)
            said = "The standard was not read in this light: choose a lot to hold it against."
            if apart is not None:
                said = f"{lots[here].code} and {other}: {pair_words(apart, shades.bands)}."
                fine = fine_words(apart)
        self.pair_words.setText(said)
        self.fine.setText(fine)
        self.fine.setVisible(bool(fine))

    def _open(self) -> None:
        if self.shades is not None and self.meant is not None:
            step = self.shades.lots[self.meant]
            self.wanted.emit(step.lot, bare_characters(step.code))

    def _join(self) -> None:
        for part in (self.map, self.lots, self.drift):
            part.chosen.connect(self.mean)
        for place, key in enumerate(self.limit_keys):
            key.setCheckable(True)
            key.clicked.connect(lambda _=False, place=place: self.limited.emit(
                list(self.limits)[place]))
        self.open_key.clicked.connect(self._open)
        self.away_key.clicked.connect(self.left)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        head = Card(in_hand=True)
        head.add(SideBySide(
            stacked(self.title, self.said, self.groups, self.out,
                    Actions(*self.limit_keys, self.away_key)), self.hold_against))
        column.addWidget(head)
        inside = QVBoxLayout(self.pictures)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(Gap.PART)
        drawn, listed = Card("Where they lie"), Card("The lots, as they were dyed")
        drawn.add(self.map, Words(_MARKS, Size.SMALL, ink=SECOND))
        listed.add(Words("Tap one to hold it against the lot in hand.", ink=SECOND), self.lots)
        drift, swatches = Card("How they drift"), Card("Side by side, as they were dyed")
        drift.add(self.drift, Words(_OLD_HABIT, Size.SMALL, ink=SECOND))
        swatches.add(self.all)
        for part in (SideBySide(stacked(drawn, drift, gap=Gap.PART), listed, shares=(3, 2)),
                     swatches):
            inside.addWidget(part)
        column.addWidget(self.pictures)
        column.addStretch(1)


def _swatches(shades: ShadeMap) -> list[Shown]:
    lots = [Shown(step.code, zones_of(step.colour),
                  (f"{place + 1}: {step.from_standard or 'no standard'}",))
            for place, step in enumerate(shades.lots)]
    kept = [Shown("standard", zones_of(shades.standard))] if shades.standard else []
    return [*kept, *lots]


def _empty(shades: ShadeMap) -> str:
    lots = "No lot of it was" if not shades.lots else "Only 1 lot of it was"
    return (f"{lots} read with an instrument, and a picture needs two. Read the wound cards at the "
            "inspecting bench, or drop a file of readings there.")
