"""A pot that is being filled: its discs, what looks wrong about them, and the colourway."""

from collections.abc import Sequence
from functools import partial
from random import Random

from PySide6.QtWidgets import QStackedLayout, QVBoxLayout, QWidget

from app.calculations.codes import Kind, numbered
from app.lookups.meeting import before_bath
from app.lookups.now import NOW
from app.lookups.pot_filling import BathAsked, PotFilling, Weighed, pot_filling
from app.lookups.pot_plates import PotPlate
from app.lookups.pots import Recipe, recipes
from app.lookups.reel import DiscNow
from app.lookups.trails import trail_of
from app.problems import Refused
from app.window.bench import Around
from app.window.benches.pots.colourways import Colourways, NewColourway
from app.window.benches.pots.lots import Lots
from app.window.benches.pots.shade import NO_SWATCH
from app.window.benches.pots.water import ALL_IN_ONE, Water, too_much
from app.window.cords.cord_row import CordRow
from app.window.cords.hand import Hand
from app.window.look.look import Gap, Size
from app.window.parts.action_plates import SPLIT
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.findings import Finding
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, BigNumber, Digits, Words
from app.window.session import Done
from app.work.dividing import skeins
from app.work.dyeing import Bathed, BathIn, into_bath, name_colourway

_NO_DISC = "Scan a disc that goes in."
_NO_RECIPE = "Choose the colourway."


class Filling(Hand):
    """Gathers discs for one bath; the lot code is born at DONE and not before."""

    def __init__(self, around: Around, pot: PotPlate | None) -> None:
        super().__init__(around)
        self.pot = pot
        self._instead: PotPlate | None = None
        self.discs: list[DiscNow] = []
        self.recipe: Recipe | None = None
        self.place = Words("", Size.TITLE, ink=SECOND)
        self.number, self.total = Digits(), BigNumber()
        self.warnings = Words(bold=True)
        self.water = Water()
        self.water.with_weighing.connect(self._pour)
        self.bath: BathAsked | None = None
        self._agreed: set[object] = set()  # what was warned of and answered
        self._asks = False
        self.colourways = Colourways()
        self.colourways.chosen.connect(self._choose_other)
        self.dye = KeyButton("Into the bath", "Enter", strong=True)
        self._chosen = Swatch(none=NO_SWATCH)
        self._name = Words(_NO_RECIPE, Size.LEAD, bold=True)
        self._rows = QVBoxLayout()
        self._shelf = QWidget()
        new = KeyButton("New colourway", "F6")
        new.clicked.connect(self._name_new)
        self._keys = Actions(self.dye, new, self.put_away("Leave it"))
        self._right = QStackedLayout(self._shelf)
        self._right.addWidget(self.colourways)
        self.body.addWidget(SideBySide(self._card(), self._shelf, shares=(3, 2)))
        self._show()
        self._look_for_recipes()

    def take_disc(self, disc: DiscNow) -> bool:
        """A disc goes in; a second scan of it changes nothing."""
        if self.goes_in(disc, [one.id for one in self.discs], "nothing was put in",
                        "Tie it on at winding, or scan the disc that is on the yarn."):
            self.discs.append(disc)
            self._show()
            code = numbered(Kind.DISC, int(disc.number)).text
            self.ask(self.around.show_trail, trail_of, code, NOW)
        return True

    def take_pot(self, pot: PotPlate) -> bool:
        """They go into this pot. Another one while a pot has discs is scanned twice: DONE may be
        forgotten, and two baths would become one.
        """
        other = self.pot is not None and self.pot.id != pot.id
        if other and self.discs and self._instead != pot:
            self._instead = pot
            self.around.trouble(Refused(
                f"Pot {self.pot.number if self.pot else ''} is not begun yet; nothing was saved.",
                f"DONE begins it. If its discs go into pot {pot.number} instead, scan that once "
                "more."))
            return True
        self.pot, self._instead = pot, None
        self._show()
        return True

    def count(self, number: int) -> None:
        self.colourways.choose(number)

    def write(self, letter: str) -> bool:
        """A letter begins the name of a colourway."""
        if self._right.currentWidget() is self.colourways:
            self.colourways.begin(letter)
        return True

    def done(self) -> None:
        """The bundles meet the bath, once there are some and the colourway is chosen."""
        new = self._right.currentWidget()
        if isinstance(new, NewColourway):
            new.keep()
        elif self.colourways.choose_first():
            return
        elif not self.discs:
            self.around.trouble(Refused("Nothing is in the pot yet; nothing was saved.", _NO_DISC))
        elif self.recipe is None:
            self.around.trouble(
                Refused(
                    "No colourway is chosen yet; nothing was saved.",
                    "Tap it, press its figure, scan COUNT, or type a part of its name.",
                )
            )
        else:
            rows = tuple(row for disc in self.discs if disc.bundle for row in disc.bundle.rows)
            poured = self.water.poured.weighing if self.water.poured else None
            bath_in = BathIn(rows, self.recipe.version, self.pot.id if self.pot else None, poured)
            self.do(into_bath, bath_in, Random(), then=self._born)

    def _born(self, done: Done[Bathed]) -> None:
        self.over.emit(Lots(self.around, done.answer["bath"], born=True))

    def _card(self) -> Card:
        card = Card(in_hand=True)
        head = card.add_row(self.place, self.number, None, self.total)
        head.setStretch(3, 1)
        self._rows.setSpacing(Gap.HAIR)
        card.add(self._rows, self.warnings, self.water)
        chosen = card.add_row(self._chosen, self._name)
        chosen.setStretch(1, 1)
        self.dye.clicked.connect(self.done)
        card.add_last(self._keys)
        return card

    def _show(self) -> None:
        if self.pot is None:
            self.place.setText("On a tray,\nelse scan the pot")
        else:
            self.place.setText("Pot")
            self.number.show_number(str(self.pot.number))
        self.number.setVisible(self.pot is not None)
        count = sum(disc.bundle.count for disc in self.discs if disc.bundle)
        bundles = "1 bundle" if len(self.discs) == 1 else f"{len(self.discs)} bundles"
        self.total.show_number(str(count), skeins(count).partition(" ")[2], f"in {bundles}")
        self._show_rows()
        self._may_dye()
        self.look()

    def _show_rows(self) -> None:
        take_down(self._rows)
        if not self.discs:
            self._rows.addWidget(Words("Scan the discs that go in.", Size.LEAD, ink=SECOND))
        for disc in self.discs:
            if disc.bundle is not None:
                line = CordRow(disc.bundle, "Take out")
                line.out.connect(partial(self._take_out, disc))
                self._rows.addWidget(line)

    def _take_out(self, disc: DiscNow) -> None:
        self.discs.remove(disc)
        self._show()

    def _may_dye(self) -> None:
        why = _NO_DISC if not self.discs else _NO_RECIPE if self.recipe is None else ""
        if why:
            self.dye.refuse(why)
        else:
            self.dye.allow()

    def look(self) -> None:
        discs = [disc.id for disc in self.discs]
        pot = self.pot.id if self.pot else None
        self.ask(self._warned, before_bath, discs, pot, NOW)
        rows = [row for disc in self.discs if disc.bundle for row in disc.bundle.rows]
        poured = self.water.poured.weighing if self.water.poured else None
        self.ask(self._show_filling, pot_filling, rows, pot,
                 self.recipe.version if self.recipe else None, poured, NOW)

    def _show_filling(self, filling: PotFilling) -> None:
        """What was weighed for them, the water to add, and whether the pot takes it."""
        self.water.show_weighed(filling.weighed)
        self.water.show_bath(filling.bath)
        self.bath = filling.bath
        finding = too_much(filling.bath, self.pot.number) if self.pot else None
        agreed = finding is None or self._meant() in self._agreed
        asked = () if agreed or finding is None else (finding,)
        if asked or self._asks:
            self.around.found(asked, self._answered)
        self._asks = bool(asked)

    def _meant(self) -> object:
        return (self.pot.id if self.pot else None, *(disc.id for disc in self.discs),
                self.bath and self.bath.bath_l)

    def _answered(self, _finding: Finding, answer: str) -> None:
        """All in one is agreed to; else what fits stays in hand, and the rest is the next pot's."""
        if answer == ALL_IN_ONE:
            self._agreed.add(self._meant())
            self._asks = False  # it is put away: what the deed finds may stand there next
            return
        kept: list[DiscNow] = []
        left: list[DiscNow] = []
        mg = 0
        for disc in self.discs:
            mg += disc.bundle.mg if disc.bundle else 0
            (kept if self.bath is None or mg <= self.bath.most_mg else left).append(disc)
        if not kept:
            self.wanted.emit(SPLIT)
            return
        self.discs = kept
        self._show()
        self.say(f"disc {', '.join(disc.number for disc in left)} is left for the next pot: "
                 "a lot of its own")

    def _pour(self, weighed: Weighed | None) -> None:
        """A weigh-out says which recipe it is."""
        if weighed is not None:
            self._choose(weighed.recipe)
            self.colourways.take(weighed.recipe)
        self.look()

    def _warned(self, sentences: Sequence[str]) -> None:
        self.warnings.setText("\n".join(sentences))
        self.warnings.setVisible(bool(sentences))

    def _look_for_recipes(self) -> None:
        self.ask(self.colourways.show_recipes, recipes)

    def _choose_other(self, recipe: Recipe) -> None:
        """A colourway chosen by hand; what was weighed for another one stays in its cups."""
        if self.water.poured and self.water.poured.recipe.version != recipe.version:
            self.water.leave()
        self._choose(recipe)
        self.look()

    def _choose(self, recipe: Recipe) -> None:
        self.recipe = recipe
        self._chosen.show_zones([Zone(recipe.swatch)] if recipe.swatch else (), recipe.colourway)
        self._name.setText(recipe.colourway)
        self._may_dye()
        self.setFocus()

    def _name_new(self) -> None:
        new = NewColourway(self.colourways.line.text())
        new.named.connect(
            lambda name, swatch: self.do(name_colourway, name, swatch, then=self._named)
        )
        new.left.connect(self._leave_new)
        self._right.addWidget(new)
        self._right.setCurrentWidget(new)
        self._keys.hide()
        new.name.setFocus()

    def _leave_new(self) -> None:
        new = self._right.currentWidget()
        self._right.setCurrentWidget(self.colourways)
        if isinstance(new, NewColourway):
            self._right.removeWidget(new)
            new.deleteLater()
        self._keys.show()
        self.setFocus()

    def _named(self, done: Done[int]) -> None:
        def show(found: Sequence[Recipe]) -> None:
            self.colourways.show_recipes(found)
            named = next(recipe for recipe in found if recipe.version == done.answer)
            self.colourways.take(named)
            self._choose(named)

        self._leave_new()
        self.colourways.line.clear()
        self.ask(show, recipes)
