"""A recipe written at the bench, three fields at a time; what was used becomes the next version."""

from collections.abc import Sequence

from app.exchange.recipe_notebook import plain
from app.lookups.jars import JarNow, jars_now
from app.lookups.pots import Recipe, recipes
from app.lookups.recipe_amounts import Amount, difference, history, to_write_on
from app.lookups.recipes import RecipeThen
from app.problems import BadInput
from app.window.bench import Around
from app.window.benches.weighing.colourway_list import ColourwayList
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.history_card import HistoryCard
from app.window.benches.weighing.looks_card import LooksCard
from app.window.benches.weighing.recipe_draft import (
    amount_words,
    earlier,
    named,
    read_component,
    read_ratio,
    rows_of,
    steps_of,
    unit_words,
    with_row,
    zones_of,
)
from app.window.benches.weighing.steps_card import StepsCard
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.window.session import Done
from app.work.dyeing import name_colourway
from app.work.recipes import ComponentIn, RecipeIn, correct_recipe, doubts, write_recipe


class RecipePage(WeighHand):
    """The colourway first, then its rows; nothing that was dyed by is overwritten."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.then: RecipeThen | None = None
        self.rows: list[ComponentIn] = []
        self._dyes: frozenset[str] = frozenset()
        self.colourways = ColourwayList()
        self.name_new = KeyButton("Name it as written", "F6")
        self.title, self.doubt = Words("", Size.TITLE, bold=True), Words("", bold=True)
        self.changed = Words("", bold=True)
        self.unused = Words("Nothing was dyed by it yet: without a reason it is put right, with "
                            "one it becomes the next version.", ink=SECOND)
        self.substance = TextField("Dye or assistant", "sodium sulphate (crystals)")
        self.amount, self.unit = TextField("How much", "0.85"), TextField("Of what", "%, or g/L")
        self.liquor: Field[int | None] = Field("Liquor ratio", read_ratio, "20 : 1")
        self.reason = TextField("Why this version", "what changes, and why")
        self.table = ThingTable(
            ("poured in this order", Head("how much", right=True), "of", "what it is"),
            "the recipe",
            none="No dye is written yet.", opens=True)
        self.add_row = KeyButton("Add this row", "Enter", strong=True)
        self.out = KeyButton("Take the row out", "F7")
        self.sooner = KeyButton("Pour it earlier", "F10")
        self.steps_key, self.looks_key = KeyButton("Steps", "F3"), KeyButton("Look, zones", "F4")
        self.keep = KeyButton("Write the version", "F9")
        self.choosing, self.writing = Card("The recipe of"), Card(in_hand=True)
        self.steps = StepsCard(self.put_away("Leave it"))
        self.looks = LooksCard(self.put_away("Leave it"))
        self.history = HistoryCard()
        self._stands = False
        self._lay_out()
        self._join()
        self.ask(self._show_jars, jars_now)
        self.look()

    def look(self) -> None:
        """Look again at the colourways."""
        self.ask(self.colourways.show_recipes, recipes)

    def count(self, number: int) -> None:
        """COUNT chooses a colourway."""
        if self.then is None:
            self.colourways.choose(number)

    def write(self, letter: str) -> bool:
        """A letter begins a name."""
        if self.then is None:
            self.colourways.begin(letter)
        return self.then is None

    def done(self) -> None:
        """Enter: the colourway is chosen, or this row stands."""
        if self.then is None:
            self.colourways.choose_first()
            return
        if self.writing.isHidden():
            self._stand()
            return
        try:
            new = read_component(
                self.substance.line.text(), self.amount.line.text(),
                self.unit.line.text() or "%", self._dyes,
                [zone.letter for zone in self.looks.rows])
        except BadInput as problem:
            self.around.trouble(problem)
            return
        self._set_rows(with_row(self.rows, new))
        for field in (self.substance, self.amount):
            field.clear()
        self.substance.setFocus()

    def choose(self, recipe: Recipe) -> None:
        """This colourway's newest version is shown, to write the next from."""
        self.ask(self._show_recipe, to_write_on, recipe.version)

    def _show_recipe(self, found: tuple[RecipeThen | None, tuple[Amount, ...], bool]) -> None:
        self.then, _, self._stands = found
        if self.then is None:
            return
        self.choosing.hide()
        self.writing.show()
        self.title.setText(
            f"{self.then.name}, after version {self.then.number}" if self._stands
            else f"{self.then.name}, version {self.then.number}")
        self.unused.setVisible(self.then.is_written and not self._stands)
        self.reason.setVisible(self.then.is_written)
        self.steps.show_rows(steps_of(self.then))
        self.looks.show_looks(self.then.look, self.then.base_class, zones_of(self.then))
        if self.then.liquor_tenths:
            self.liquor.line.setText(f"{self.then.liquor_tenths / 10:g} : 1")
        self._set_rows(rows_of(self.then, found[1]))
        self.ask(self.history.show_versions, history, self.then.colourway)
        self.substance.setFocus()

    def _set_rows(self, rows: list[ComponentIn]) -> None:
        self.rows = rows
        self.table.show_rows([(named(one), amount_words(one), unit_words(one), one.role)
                              for one in rows])
        self._show_doubts()

    def _show_doubts(self) -> None:
        try:
            liquor = read_ratio(self.liquor.line.text())
        except BadInput:
            liquor = None
        zones = self.looks.rows if self.then else ()
        self.doubt.setText(" ".join(doubts(self.rows, zones, liquor)))
        self.doubt.setVisible(bool(self.doubt.text()))

    def _open(self, row: int) -> None:
        """A row comes back into its fields, to be put right."""
        one = self.rows[row]
        for field, words in ((self.substance, named(one)), (self.amount, amount_words(one)),
                             (self.unit, unit_words(one))):
            field.line.setText(words)
        self.amount.setFocus()
        self.amount.line.selectAll()

    def _turn(self, card: Card) -> None:
        """The dyes, the steps or the look: one at a time."""
        for one in (self.writing, self.steps, self.looks):
            one.setVisible(one is card)
        if card is self.writing:
            self._show_doubts()
            self.substance.setFocus()
        else:
            (self.steps.what if card is self.steps else self.looks.letter).setFocus()

    def _stand(self) -> None:
        try:
            (self.looks if self.steps.isHidden() else self.steps).stand()
        except BadInput as problem:
            self.around.trouble(problem)

    def _pour_earlier(self) -> None:
        self._set_rows(earlier(self.rows, self.substance.line.text()))

    def _take_out(self) -> None:
        said = plain(self.substance.line.text())
        self._set_rows([one for one in self.rows if plain(named(one)) != said])
        for field in (self.substance, self.amount):
            field.clear()

    def _keep(self) -> None:
        then = self.then
        if then is None:
            return
        try:
            liquor = read_ratio(self.liquor.line.text())
        except BadInput as problem:
            self.liquor.complain(str(problem))
            return
        reason = self.reason.line.text().strip()
        new = RecipeIn(
            then.colourway, tuple(self.rows), self.looks.look_said(),
            self.looks.fibre.line.text().strip() or None, liquor, tuple(self.looks.rows),
            tuple(self.steps.rows), reason)
        if then.is_written and not self._stands and not reason:
            self.do(correct_recipe, then.version, new, then=lambda _done: self._put_right())
        else:
            self.do(write_recipe, new, then=lambda done: self._written(then, done))

    def _put_right(self) -> None:
        self._over()
        self.changed.setText("")

    def _written(self, before: RecipeThen, done: Done[int]) -> None:
        self._over()
        if before.is_written:
            self.ask(self._show_changed, difference, before.version, done.answer)

    def _over(self) -> None:
        self.then = None
        for card in (self.writing, self.steps, self.looks, self.history):
            card.hide()
        self.choosing.show()
        self.reason.clear()
        self.setFocus()

    def _show_changed(self, words: str) -> None:
        self.changed.setText(f"What changed: {words}." if words else "")

    def _show_jars(self, jars: Sequence[JarNow]) -> None:
        self._dyes = frozenset(plain(jar.dye) for jar in jars)

    def _name(self) -> None:
        name = self.colourways.line.text().strip()
        if name:
            self.do(name_colourway, name, then=self._named)

    def _named(self, done: Done[int]) -> None:
        self.ask(self._show_recipe, to_write_on, done.answer)

    def _join(self) -> None:
        self.colourways.chosen.connect(self.choose)
        self.name_new.clicked.connect(self._name)
        self.table.opened.connect(self._open)
        self.add_row.clicked.connect(self.done)
        self.out.clicked.connect(self._take_out)
        self.keep.clicked.connect(self._keep)
        self.sooner.clicked.connect(self._pour_earlier)
        self.steps_key.clicked.connect(lambda: self._turn(self.steps))
        self.looks_key.clicked.connect(lambda: self._turn(self.looks))
        for card in (self.steps, self.looks):
            card.back.clicked.connect(lambda: self._turn(self.writing))
            card.out.clicked.connect(card.take_out)
        self.steps.add_step.clicked.connect(self.done)
        self.looks.add_zone.clicked.connect(self.done)
        self.liquor.line.textChanged.connect(self._show_doubts)

    def _lay_out(self) -> None:
        self.choosing.add(self.changed, self.colourways)
        self.choosing.add_last(Actions(self.name_new, self.put_away("Back to the balance")))
        self.writing.add(self.title, self.unused, self.table, self.doubt)
        fields = self.writing.add_row(self.substance, self.amount, self.unit)
        fields.setStretch(0, 2)
        more = self.writing.add_row(self.liquor, self.reason)
        more.setStretch(1, 2)
        self.writing.add(Words("% is of the dry fibre, g/L of the bath. The same name again "
                               "changes its row.", ink=SECOND))
        self.writing.add_last(Actions(
            self.add_row, self.out, self.sooner, self.steps_key, self.looks_key, self.keep,
            self.put_away("Leave it")))
        for card in (self.choosing, self.writing, self.steps, self.looks, self.history):
            self.body.addWidget(card)
        for card in (self.writing, self.steps, self.looks, self.history):
            card.hide()
