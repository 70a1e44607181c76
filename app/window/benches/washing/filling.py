"""A load that is being filled: its place, its discs, what looks wrong; DONE closes it."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import Kind, numbered
from app.calculations.moments import moment_words
from app.lookups.bundles import BundleFacts
from app.lookups.load_warnings import APART, before_load
from app.lookups.loads import InPlace, WetPlace, cords_on
from app.lookups.now import NOW
from app.lookups.reel import DiscNow
from app.lookups.together import Water, in_one_water
from app.lookups.trails import trail_of
from app.problems import Refused
from app.window.bench import Around
from app.window.benches.washing.wet_row import WetRow, mark_of
from app.window.cords.hand import Hand
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Digits, Words
from app.work.dividing import skeins
from app.work.loading import into_load

IN_VESSEL = ("soak", "wash", "spin")
_NO_PLACE = "Scan the tub, machine, rail or steamer."
_NO_DISC = "Scan the discs that go there."
_SCAN_THAT = "Scan the disc that is on the yarn, or tie it on at Winding first."
_NO_STEP = "Say what is done in it: soak, wash or spin."


class Filling(Hand):
    """Gathers discs for one load; it is written at DONE and not before."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.place: InPlace | None = None
        self.cords: list[BundleFacts] = []
        self._chosen: str | None = None
        self._instead: WetPlace | None = None
        self.headline = Words("", Size.LARGE, bold=True)
        self.number, self.total = Digits(), Words("", Size.TITLE, bold=True)
        self.there, self.warnings = Words(ink=SECOND), Words(bold=True)
        self.apart, self.why = Digits(), Words("", Size.LEAD, bold=True)
        self.steps = {
            step: KeyButton(step.capitalize(), str(n)) for n, step in enumerate(IN_VESSEL, 1)
        }
        self.close_it = KeyButton("They are in", "Enter", strong=True)
        self._which, self._rows = _choices(self.steps), QVBoxLayout()
        for n, key in enumerate(self.steps.values(), 1):
            key.clicked.connect(partial(self.count, n))
        self.close_it.clicked.connect(self.done)
        self.body.addWidget(self._card())
        self._show()

    @property
    def step(self) -> str | None:
        """What is done: as it was said, a spin of what was washed here, else as the place says."""
        if self.place is None or self.place.place is None:
            return None
        washed = {wet.cord.disc for wet in self.place.cords if wet.step == "wash"}
        if self._chosen is None and self.cords and washed.issuperset(self._discs()):
            return "spin"
        return self._chosen or self.place.place.step

    def take_disc(self, disc: DiscNow) -> bool:
        """A disc goes in; a second scan of it changes nothing."""
        if self.goes_in(disc, self._discs(), "it is in no load", _SCAN_THAT) and disc.bundle:
            self.cords.append(disc.bundle)
            self._show()
            code = numbered(Kind.DISC, int(disc.number)).text
            self.ask(self.around.show_trail, trail_of, code, NOW)
        return True

    def take_place(self, place: InPlace) -> bool:
        """They are in this place; the place once more: all that is in it is in hand.

        Another place while a load is not closed has to be scanned twice: DONE may be forgotten.
        """
        again = self.place is not None and self.place.place == place.place
        if self.place is not None and self.cords and not again and self._instead != place.place:
            self._instead = place.place
            self.around.trouble(
                Refused(
                    f"The load {self.place.where} is not closed yet; nothing was saved.",
                    f"DONE closes it. If its discs are {place.where} instead, scan that once more.",
                )
            )
            return True
        if again and not self.cords:
            self.cords = [wet.cord for wet in place.cords]
        elif not again:
            self._chosen = None
        self.place, self._instead = place, None
        self._show()
        return True

    def count(self, number: int) -> None:
        """What is done in a tub or machine."""
        if self._asks_step() and 0 < number <= len(IN_VESSEL):
            self._chosen = IN_VESSEL[number - 1]
            self._show()

    def done(self) -> None:
        """The load is closed, once it is said where and what."""
        why = self._why_not()
        if why:
            self.around.trouble(Refused("The load is not closed yet; nothing was saved.", why))
        elif self.place is not None and self.place.place is not None:
            self.do(
                into_load,
                self.step,
                discs=self._discs(),
                plate=self.place.place.id,
                then=lambda _: self.over.emit(None),
            )

    def look(self) -> None:
        """A cord may have been split or mixed meanwhile."""
        asked = self._discs()
        if asked:
            self.ask(partial(self._show_again, asked), cords_on, asked, NOW)

    def _show_again(self, asked: Sequence[int], cords: Sequence[BundleFacts]) -> None:
        """Those that were asked about as they are now; what was scanned meanwhile stays."""
        now = {cord.disc: cord for cord in cords}
        self.cords = [
            now.get(cord.disc, cord)
            for cord in self.cords
            if cord.disc in now or cord.disc not in asked
        ]
        self._show()

    def _discs(self) -> list[int]:
        return [cord.disc for cord in self.cords]

    def _asks_step(self) -> bool:
        place = self.place.place if self.place else None
        return place is not None and place.kind is Kind.VESSEL

    def _why_not(self) -> str:
        if self.place is None:
            return _NO_PLACE
        if self.step is None:
            return _NO_STEP
        return "" if self.cords else _NO_DISC

    def _card(self) -> Card:
        card = Card(in_hand=True)
        card.add_row(self.headline, self.number, None)
        self._rows.setSpacing(Gap.HAIR)
        card.add(self.apart, self.why, self._which, self.there, self.total)
        card.add(self._rows, self.warnings)
        card.add_last(Actions(self.close_it, *self.other_keys(), self.put_away("Leave it")))
        return card

    def _show(self) -> None:
        place = self.place.place if self.place else None
        self.headline.setText(_headline(self.place, self.step))
        if place is not None:
            self.number.show_number(str(place.number))
        self.number.setVisible(place is not None)
        count = sum(cord.count for cord in self.cords)
        bundles = "1 bundle" if len(self.cords) == 1 else f"{len(self.cords)} bundles"
        self.total.setText(f"{skeins(count)} in {bundles}")
        self.total.setVisible(bool(self.cords))
        self._which.setVisible(self._asks_step())
        for step, key in self.steps.items():
            key.setChecked(step == self.step)
        self.there.setText(_there(self.place, self._discs()))
        self.there.setVisible(bool(self.there.text()))
        self._show_rows()
        why = self._why_not()
        if why:
            self.close_it.refuse(why)
        else:
            self.close_it.allow()
        self._warn()

    def _show_rows(self) -> None:
        take_down(self._rows)
        if not self.cords:
            self._rows.addWidget(Words(_NO_DISC, Size.LEAD, ink=SECOND))
        for cord in self.cords:
            line = WetRow(cord)
            line.out.connect(partial(self._take_out, cord))
            self._rows.addWidget(line)

    def _take_out(self, cord: BundleFacts) -> None:
        self.cords.remove(cord)
        self._show()

    def _warn(self) -> None:
        rows = [row for cord in self.cords for row in cord.rows]
        self.ask(self._warned, before_load, rows, self.step, self.around.session.now())
        beside = [row for wet in self.place.cords if wet.step == self.step
                  for row in wet.cord.rows] if self.place else []
        self.ask(self._show_water, in_one_water, [*dict.fromkeys((*rows, *beside))], self.step, NOW)

    def _warned(self, sentences: Sequence[str]) -> None:
        """What is not to be in one water stands above, read at two metres."""
        small = [sentence for sentence in sentences if not sentence.startswith(APART)]
        self.warnings.setText("\n".join(small))
        self.warnings.setVisible(bool(small))

    def _show_water(self, water: Water) -> None:
        apart = bool(water.apart and self.cords)
        self.apart.show_number("NOT TOGETHER" if apart else "")
        self.why.setText("\n".join(water.apart) if apart else "")
        for words in (self.apart, self.why):
            words.setVisible(apart)
        self.there.setVisible(bool(self.there.text()) and not apart)
        self.close_it.say("Together all the same" if apart else "They are in")
        for line in self.findChildren(WetRow):
            line.show_mark(mark_of(water, line.cord))


def _choices(keys: dict[str, KeyButton]) -> QWidget:
    for key in keys.values():
        key.setCheckable(True)
    return Actions(*keys.values())


def _headline(place: InPlace | None, step: str | None) -> str:
    """'Wash\nin machine', with the number beside it."""
    if place is None or place.place is None:
        return "Scan the place"
    where = f"{'on' if place.place.kind is Kind.RAIL else 'in'} {place.place.what}"
    if place.place.kind is not Kind.VESSEL:
        return where.capitalize()
    return f"{step.capitalize() if step else 'What is done'}\n{where}"


def _there(place: InPlace | None, discs: Sequence[int]) -> str:
    """What is in the place already, besides the load in hand."""
    cords = [wet.cord for wet in place.cords if wet.cord.disc not in discs] if place else []
    if place is None or not cords:
        return ""
    more = "" if discs else " Scan the place once more to take all of it in hand."
    numbers = ", ".join(cord.number for cord in cords[:6]) + (" …" if len(cords) > 6 else "")
    which = "disc" if len(cords) == 1 else "discs"
    return (
        f"There since {moment_words(place.since)}: {skeins(sum(c.count for c in cords))} on "
        f"{which} {numbers}.{more}"
    )
