"""A wash in its water: which lots are in it, how often it was rinsed, how the water looks."""

from functools import partial

from PySide6.QtWidgets import QVBoxLayout

from app.calculations.rinses import RINSES_BEFORE_DOUBT, After
from app.lookups.loads import InPlace, WetCord
from app.lookups.now import NOW
from app.lookups.reel import DiscNow
from app.lookups.rinsing import Rinsing, rinsing
from app.lookups.together import Water, in_one_water
from app.window.bench import Around
from app.window.benches.washing.filling import Filling
from app.window.benches.washing.wet_row import WetRow, mark_of
from app.window.cords.hand import Hand
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, BigNumber, Words
from app.work.readings import BLEEDING, bleed, rinse

_NEXT = {
    After.CLEAR: "The water is clear: spin, then hang it.",
    After.RINSE_AGAIN: "Rinse once more.",
    After.BLEEDS: "This rinse is as strong as the one before: it is bleeding, back to heat and "
    "acid.",
    After.NOT_FIXED: "This is not rinsing any more, the dye is not fixed: back to heat and acid?",
}
_LOOK = "After a rinse say how the water looks, 20 cm deep in a white bowl."


def wash_in(place: InPlace) -> int | None:
    """The newest wash that still is in the water of this place, or none."""
    return max((wet.load for wet in place.cords if wet.step == "wash" and wet.load), default=None)


class InWater(Hand):
    """One wash in hand: DONE counts a rinse, COUNT 1 to 3 or a figure says how the water looks."""

    def __init__(self, around: Around, place: InPlace, load: int) -> None:
        super().__init__(around)
        self.place, self.load = place, load
        self.cords = [wet for wet in place.cords if wet.load == load]
        self.rinsed: Rinsing | None = None
        self._which = 0  # how the water looks, while it is asked whose dye that is
        self.rinses, self.next = BigNumber("0", "rinses"), Words("", Size.TITLE, bold=True)
        self.whose = Words("Whose dye is it? Scan its disc; DONE is the next rinse.", Size.LEAD)
        self.whose.hide()
        self.rinse = KeyButton("Rinsed", "Enter", strong=True)
        self.rinse.clicked.connect(self.done)
        self.looks = [KeyButton(how.capitalize(), str(n)) for n, how in enumerate(BLEEDING, 1)]
        for n, key in enumerate(self.looks, 1):
            key.setCheckable(True)
            key.clicked.connect(partial(self.count, n))
        self.go_on = KeyButton("All of it goes on", "A")
        self.go_on.clicked.connect(lambda: self.take_place(self.place))
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Gap.HAIR)
        self.body.addWidget(self._card())
        self._show_rows(Water({}, ()))
        self.look()

    def take_place(self, place: InPlace) -> bool:
        """Its own place once more: all that is in it goes on, to the spin."""
        if place.place != self.place.place:
            return False
        load = Filling(self.around)
        load.take_place(place)
        load.take_place(place)
        self.over.emit(load)
        return True

    def take_disc(self, disc: DiscNow) -> bool:
        """A disc goes into this place, or goes on from it, as a load of its own.

        While it is asked whose dye is in the water, the disc says it.
        """
        bleeding = next((wet for wet in self.cords if wet.cord.disc == disc.id), None)
        if self._which and bleeding is not None:
            self._bleeds(bleeding, self._which)
            return True
        load = Filling(self.around)
        load.take_place(self.place)
        self.over.emit(load)
        return load.take_disc(disc)

    def count(self, number: int) -> None:
        """How the water looks."""
        if 0 < number <= len(BLEEDING):
            self._which = number - 1 if _dyed(self.cords) > 1 else 0
            self.do(bleed, self.load, number - 1)

    def done(self) -> None:
        """A rinse is over."""
        self._which = 0
        if self.rinsed is not None:
            self.do(rinse, self.load, self.rinsed.rinses + 1)

    def look(self) -> None:
        """Count the rinses again, and look at the lots."""
        rows = [row for wet in self.cords for row in wet.cord.rows]
        self.ask(self._show_rinses, rinsing, self.load)
        self.ask(self._show_rows, in_one_water, rows, "wash", NOW)

    def _card(self) -> Card:
        card = Card(in_hand=True)
        number = self.place.place.number if self.place.place else "?"
        what = self.place.place.what if self.place.place else "no place"
        title = what.capitalize() if "wash" in what.casefold() else f"Wash in {what}"
        card.add_row(Words(f"{title} {number}", Size.LARGE, bold=True), None, self.rinses)
        card.add(self._rows, self.next, self.whose)
        card.add_last(Words(_LOOK, ink=SECOND))
        card.add_last(Actions(*self.looks))
        card.add_last(Actions(self.rinse, self.go_on, *self.other_keys(), self.put_away()))
        return card

    def _show_rinses(self, rinsed: Rinsing) -> None:
        self.rinsed = rinsed
        count = rinsed.rinses
        many = "" if count < RINSES_BEFORE_DOUBT else "that is many"
        self.rinses.show_number(str(count), "rinse" if count == 1 else "rinses", many)
        self.next.setText(_NEXT[rinsed.next] if rinsed.next else "")
        self.next.setVisible(bool(self.next.text()))
        self.whose.setVisible(bool(self._which))
        last = rinsed.looks[-1] if rinsed.looks else None
        for how, key in enumerate(self.looks):
            key.setChecked(how == last)

    def _show_rows(self, water: Water) -> None:
        take_down(self._rows)
        for wet in self.cords:
            line = WetRow(wet.cord, "It bleeds" if _dyed(self.cords) > 1 else "")
            line.show_mark(mark_of(water, wet.cord))
            line.out.connect(partial(self._bleeds, wet))
            self._rows.addWidget(line)

    def _bleeds(self, wet: WetCord, how: int = 2) -> None:
        """Of several lots in one water this one was seen to bleed."""
        self._which = 0
        self.do(bleed, self.load, how, wet.cord.rows[0])


def _dyed(cords: list[WetCord]) -> int:
    return len({wet.cord.lot for wet in cords if wet.cord.lot})
