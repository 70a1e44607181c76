"""What lies in one bath: the codes of its lots at bench size, and when it may be lifted."""

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.moments import moment_words
from app.calculations.pot_words import CLEARNESS, PotWords
from app.exchange.bath_cards import at_the_pot, card_pdf
from app.lookups.jars import JarNow
from app.lookups.pot_plates import Dyed, PotPlate, dyed
from app.lookups.pot_steps import PotAtWork, pots_at_work
from app.lookups.pots import LotInPot
from app.lookups.weigh_sources import StockNow
from app.problems import Refused
from app.window.bench import Around
from app.window.benches.pots.adding import Adding
from app.window.benches.pots.pot_cards import pot_name
from app.window.benches.pots.shade import NO_SWATCH
from app.window.benches.pots.tending import Tending
from app.window.cords.hand import Hand
from app.window.look.look import Gap, Size
from app.window.papers import put_on_paper
from app.window.parts.big_code import BigCode
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words
from app.work.additions import Addition, addition
from app.work.dividing import skeins
from app.work.dyeing import lift
from app.work.readings import read_bath, step_done, water_added

_BENCH = 96  # height of a lot's code; 84 and more is read at two metres


class Lots(Hand):
    """A bath in hand: just born, or looked at again and perhaps lifted."""

    def __init__(
        self, around: Around, bath: int, *, plate: PotPlate | None = None, born: bool = False
    ) -> None:
        super().__init__(around)
        self.bath, self.plate, self.born = bath, plate, born
        self.found: Dyed | None = None
        self._meant = False  # it was said that a step is not done: the pot once more lifts it
        self.codes: list[BigCode] = []
        self.headline = Words(ink=SECOND)
        self.colourway = Words("", Size.TITLE, bold=True)
        self.kin, self.off = Words(ink=SECOND), Words("", Size.LEAD, bold=True)
        self.lift = KeyButton("Lift", "L")
        self.lift.clicked.connect(self._lift)
        self.paper_key = KeyButton("Card as paper", "P")
        self.paper_key.clicked.connect(self._print)
        self._swatch = Swatch(size=QSize(152, 184), none=NO_SWATCH)
        self._codes = QVBoxLayout()
        self.tending, self.adding = Tending(around.session.now), Adding()
        self.tending.done.connect(lambda step: self.do(step_done, self.bath, step))
        self.tending.read.connect(self._read)
        self.tending.looks.connect(self.count)
        self.tending.adds.connect(lambda: self.adding.begin())
        self.adding.added.connect(self._add)
        self.adding.left.connect(self._no_addition)
        self.body.addWidget(self._card())
        self.body.addWidget(self.adding)
        self.body.addWidget(self.tending)
        self.adding.hide()
        self.look()

    def take_pot(self, pot: PotPlate) -> bool:
        """Its own pot once more: to be lifted, unless the lot was only just born.

        While a step is not done it is said first: who comes back for the next step scans the pot.
        """
        if pot.bath != self.bath:
            return False
        self.plate = pot
        work = self.tending.work
        step = work.steps.now if work else None
        if self.born:
            self.born = False
            self._show_headline()
        elif step is None or self._meant:
            self._lift()
        else:
            self._meant = True
            self.around.trouble(Refused(
                f"Pot {pot.number} is still at a step: {step.words}. Nothing was saved.",
                "DONE says that it is done. Scan the pot once more to lift it all the same."))
        return True

    def take_source(self, jar: JarNow | None, stock: StockNow | None) -> bool:
        """A jar or a stock at the pot: some of it goes into this bath."""
        self.adding.begin(jar, stock)
        return True

    def done(self) -> None:
        """DONE: the step it is at was done."""
        self._meant = False
        self.tending.finish()

    def count(self, number: int) -> None:
        """COUNT 1 to 3: the bath looks clear, tinted or coloured."""
        if 0 < number <= len(CLEARNESS):
            self._meant = False
            self.do(read_bath, self.bath, clearness=number - 1)

    def look(self) -> None:
        """It may have been lifted, or taken back."""
        self.ask(self._show, dyed, self.bath)
        self.ask(self._show_work, pots_at_work)

    def _show_work(self, pots: Sequence[PotAtWork]) -> None:
        for work in pots:
            if work.pot.bath == self.bath:
                self.tending.show_work(work)

    def _read(self, words: PotWords) -> None:
        """One line may say how much water was added, and what was read."""
        if words.water_ml is not None:
            self.do(water_added, self.bath, words.water_ml, then=lambda _: self._noted())
        if (words.ph_centi, words.decidegrees, words.clearness) != (None, None, None):
            self.do(read_bath, self.bath, ph_centi=words.ph_centi, decidegrees=words.decidegrees,
                    clearness=words.clearness, then=lambda _: self._noted())

    def _noted(self) -> None:
        self.tending.field.clear()
        self.setFocus()

    def _add(self, mg: int | None, ul: int | None, name: str) -> None:
        jar, stock = self.adding.jar, self.adding.stock
        recipe = self.tending.work.recipe if self.tending.work else None
        asked = [one.id for one in (recipe.components if recipe else ())
                 if one.substance.casefold() == name.strip().casefold()]
        added = Addition(self.bath, asked[0] if asked else None,
                         jar.fill if jar and stock is None else None,
                         stock.stock if stock else None, mg, ul, why="" if asked else name)
        self.do(addition, added, then=lambda _: self._no_addition())

    def _no_addition(self) -> None:
        self.adding.clear()
        self.setFocus()

    def _show(self, found: Dyed | None) -> None:
        self.found = found
        if found is None:
            self.over.emit(None)
            return
        self.around.show_trail(found.stops)
        self._swatch.show_zones([Zone(found.pot.swatch)] if found.pot.swatch else ())
        self.colourway.setText(found.pot.colourway)
        self._show_codes(found.pot.lots)
        self._show_headline()
        self.off.setText(f"Off its recipe: {', '.join(found.off_recipe)}." if found.off_recipe
                         else "")
        self.off.setVisible(bool(found.off_recipe))
        self.kin.setText(_kin(found))
        self.kin.setVisible(bool(self.kin.text()))

    def _show_codes(self, lots: Sequence[LotInPot]) -> None:
        take_down(self._codes)
        self.codes = []
        for lot in lots:
            code = BigCode(lot.code, _BENCH if len(lots) == 1 else Size.HUGE)
            self.codes.append(code)
            self._codes.addWidget(code)
            self._codes.addWidget(Words(f"{skeins(lot.count)} of {lot.base}", Size.LEAD, bold=True))

    def _show_headline(self) -> None:
        if self.found is None:
            return
        pot = self.found.pot
        place = "The tray" if pot.pot is None else f"Pot {pot_name(pot)}"
        lots = "a new lot" if len(pot.lots) == 1 else f"{len(pot.lots)} companion lots"
        write = "its code" if len(pot.lots) == 1 else "their codes"
        self.headline.setText(
            f"{place} holds {lots}. Write {write} on the cord's card and on the pot."
            if self.born
            else f"{place} since {moment_words(pot.since)}. Scan it once more to lift it."
        )

    def _print(self) -> None:
        """The card that stands at the pot."""
        session = self.around.session
        put_on_paper(self, "bath cards", f"bath-card-{self.bath}.pdf", lambda person: card_pdf(
            session.ask(at_the_pot, self.bath, session.now()), person), "The card")

    def _lift(self) -> None:
        self.do(lift, self.bath)

    def _card(self) -> Card:
        card = Card(in_hand=True)
        self._codes.setSpacing(0)
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        words.addLayout(self._codes)
        words.addWidget(self.colourway)
        words.addWidget(self.off)
        words.addWidget(self.headline)
        words.addWidget(self.kin)
        words.addStretch(1)
        words.addSpacing(Gap.SMALL)
        words.addWidget(Actions(
            self.lift, self.paper_key, *self.other_keys(), self.put_away()))
        row = card.add_row(self._swatch)
        row.setAlignment(self._swatch, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        return card


def _kin(found: Dyed) -> str:
    """The nearest lots: companions in the same bath, sisters of the same day."""
    words = []
    if len(found.pot.lots) > 1:
        words.append("Companions: one bath, two bases, so each has its own code.")
    if found.sisters:
        which = "Sister of" if len(found.sisters) == 1 else "Sisters of"
        words.append(f"{which} the day: {', '.join(found.sisters)}. Look there for a match first.")
    if found.fills_not_known:
        words.append("Same recipe and day, fills not known: "
                     f"{', '.join(found.fills_not_known)}.")
    return " ".join(words)
