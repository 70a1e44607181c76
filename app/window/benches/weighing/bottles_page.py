"""All is weighed for the bottles of a painted recipe: they are full, or one was filled again."""

from functools import partial

from app.lookups.recipes import RecipeThen, recipe_then
from app.lookups.trays import TraysNow, trays_now
from app.window.bench import Around
from app.window.benches.weighing.hand import WeighHand
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.work.stocks import fill_bottles, refill_bottle


class BottlesPage(WeighHand):
    """A set of bottles comes of a weigh-out; what is painted from each set is a lot of its own."""

    def __init__(self, around: Around, weighing: int, version: int) -> None:
        super().__init__(around)
        self.weighing, self.version = weighing, version
        self.before: int | None = None
        self.title, self.so = Words("", Size.TITLE, bold=True), Words("", bold=True)
        self.table = ThingTable(
            ("bottle", "called", Head("mL on 100 g", right=True)), "the bottles")
        self.full = KeyButton("They are full: a new set", "Enter", strong=True)
        self.full.clicked.connect(self.done)
        self.again: dict[str, KeyButton] = {}
        self.card = Card(in_hand=True)
        self.card.add(self.title, self.table, self.so, Words(
            "Left for later, the set is said at the boards: this weigh-out is offered there.",
            ink=SECOND))
        self.body.addWidget(self.card)
        self.ask(self._show, recipe_then, version)

    def done(self) -> None:
        """All bottles were filled from what was weighed."""
        self.do(fill_bottles, self.version, self.weighing, then=lambda _: self.over.emit(None))

    def _refill(self, letter: str) -> None:
        if self.before is not None:
            self.do(refill_bottle, self.before, letter, self.weighing,
                    then=lambda _: self.over.emit(None))

    def _show(self, then: RecipeThen | None) -> None:
        if then is None:
            return
        self.title.setText(f"{then.name}: are its bottles full?")
        self.table.show_rows([(zone.letter, zone.name, str(zone.ml_per_100_g))
                              for zone in then.zones])
        for zone in then.zones:
            key = KeyButton(f"Only {zone.letter} was filled again")
            key.clicked.connect(partial(self._refill, zone.letter))
            key.setVisible(False)
            self.again[zone.letter] = key
        self.card.add_last(Actions(self.full, *self.again.values(), self.put_away("Not yet")))
        self.ask(self._show_sets, trays_now)

    def _show_sets(self, trays: TraysNow) -> None:
        newest = next((one for one in trays.bottles if one.recipe.version == self.version), None)
        self.before = newest.id if newest else None
        for key in self.again.values():
            key.setVisible(newest is not None)
        number = newest.number + 1 if newest else 1
        self.so.setText(f"It will be set {number}." + (
            f" What is painted from it is a lot of its own, also where only one bottle of set "
            f"{newest.number} was filled again." if newest else
            " What is painted from it and steamed in one run is one lot."))
