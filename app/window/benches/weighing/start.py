"""Nothing stands on the balance: for which yarn and colourway is weighed, and what is open."""

from collections.abc import Sequence
from decimal import Decimal
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.cautions import Step
from app.calculations.moments import moment_words
from app.lookups.balances import BalanceNow, balances_now
from app.lookups.jars import JarNow, jars_now
from app.lookups.pots import Recipe, recipes
from app.lookups.recipes import RecipeThen, recipe_then
from app.lookups.reel import DiscNow
from app.lookups.studio import setting
from app.lookups.weighings import WeighOut, open_weighings
from app.problems import BadInput, Refused
from app.window.bench import Around
from app.window.benches.weighing.at_the_balance import AtTheBalance
from app.window.benches.weighing.balances_page import BalancesPage
from app.window.benches.weighing.colourway_list import ColourwayList
from app.window.benches.weighing.for_stock import ForStock
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.jar_words import to_look_at
from app.window.benches.weighing.jars_page import JarsPage
from app.window.benches.weighing.recipe_page import RecipePage
from app.window.benches.weighing.stocks_page import StocksPage
from app.window.benches.weighing.weigh_words import bare, title
from app.window.cords.cord_row import CordRow
from app.window.look.look import Gap, Size
from app.window.parts.amounts import read_grams
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.cautions_card import CautionsCard
from app.window.parts.fields import Field, GramsField
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.window.session import Done
from app.work.studio import choose
from app.work.weighing import WeighingIn, begin_weighing

STEPS = ("0.1", "0.01", "0.001")
"""What balances read to, in grams."""


def read_percent(text: str) -> Decimal:
    """Per cent from `80` or `80 %`; raises BadInput."""
    try:
        return read_grams(text.replace("%", ""))
    except BadInput as why:
        raise BadInput(f"“{text.strip()}” is no percentage.", "Write it like 80.") from why


def hand_of(around: Around, out: WeighOut) -> WeighHand:
    """An open weigh-out, taken up again."""
    return (ForStock if out.purpose == "stock" else AtTheBalance)(around, out.id)


class Start(WeighHand):
    """Gathers discs or a weight, and the colourway; the weigh-out begins with Enter."""

    file_wanted = Signal()

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.discs: list[DiscNow] = []
        self.recipe: Recipe | None = None
        self.then: RecipeThen | None = None
        self.open: Sequence[WeighOut] = ()
        self.dry, self.chosen = Words("", Size.TITLE, bold=True), Words("", Size.LEAD, bold=True)
        self.asks = Words("", ink=SECOND)
        self.weight = GramsField("Or its weight by the balance")
        self.pick_up = Field("If damp: its pick-up, %", read_percent, "spun 80, squeezed 160")
        self.colourways = ColourwayList()
        self.begin = KeyButton("Begin", "Enter", strong=True)
        self.step = KeyButton("", "F7")
        self.jars = KeyButton("Jars", "F4")
        self.balances = KeyButton("Balances", "F5")
        self.stocks = KeyButton("Stocks", "F9")
        self.recipes_key = KeyButton("Recipes", "F6")
        self.file = KeyButton("A notebook's file", "F3")
        self.to_look_at = Words("", bold=True)
        self._step = STEPS[1]
        self._rows = QVBoxLayout()
        self.waiting = ThingTable(
            (Head("", right=True), "weighed for", "lines in", "since"), "open weigh-outs",
            none="No weigh-out is open.", opens=True, most_rows=5)
        self._lay_out()
        self._join()
        self.chosen.hide()
        self.asks.hide()
        self.to_look_at.hide()
        self._show()
        self.look()

    def look(self) -> None:
        """Look again at the colourways and at what is open."""
        self.ask(self.colourways.show_recipes, recipes)
        self.ask(self._show_open, open_weighings)
        self.ask(self._show_balances, balances_now)
        self.ask(self._show_jars, jars_now)

    def _show_jars(self, jars: Sequence[JarNow]) -> None:
        self.to_look_at.setText(to_look_at(jars, self.around.session.now()))
        self.to_look_at.setVisible(bool(self.to_look_at.text()))

    def take_jar(self, jar: JarNow) -> bool:
        """With nothing to weigh for, a jar is looked at."""
        page = JarsPage(self.around)
        self.over.emit(page)
        return page.take_jar(jar)

    def take_disc(self, disc: DiscNow) -> bool:
        """The dry weight of its yarn, as it was wound."""
        if self.goes_in(disc, [one.id for one in self.discs], "it weighs nothing here",
                        "Scan the disc that is on the yarn, or write its weight."):
            self.discs.append(disc)
            self._show()
        return True

    def count(self, number: int) -> None:
        """COUNT chooses a colourway, or before a disc is scanned an open weigh-out."""
        if not self.discs and self.open and not self.weight.line.text():
            self._take_up(number - 1)
        else:
            self.colourways.choose(number)

    def write(self, letter: str) -> bool:
        """A letter begins the name of a colourway."""
        self.colourways.begin(letter)
        return True

    def weigh(self, reading: str) -> bool:
        """The yarn was on a balance that types."""
        self.weight.line.setText(reading)
        self._show()
        return True

    def write_figure(self, figure: str) -> bool:
        """A figure begins the weight."""
        self.weight.line.setFocus()
        self.weight.line.insert(figure)
        return True

    def done(self) -> None:
        """Begin, once the yarn and the colourway are known."""
        if self.colourways.choose_first():
            return
        weighed, pick_up = self._typed(self.weight), self._typed(self.pick_up)
        if weighed == "wrong" or pick_up == "wrong":
            return
        if self.recipe is None:
            self.around.trouble(Refused("No colourway is chosen yet; nothing was saved.",
                                        "Type a part of its name, or scan COUNT."))
            return
        bottles = self.then is not None and any(
            one.unit == "bottle" for one in self.then.components)
        rows = tuple(row for disc in self.discs if disc.bundle for row in disc.bundle.rows)
        self.do(begin_weighing, WeighingIn(
            "bottles" if bottles else "bath", self.recipe.version, rows,
            weighed_mg=_thousandths(weighed),
            pick_up_permille=None if weighed is None or pick_up is None
            else _tenths(pick_up)), then=self._begun)

    def _typed(self, field: Field[Decimal]) -> Decimal | str | None:
        """What is written there, none where nothing is, 'wrong' where it was said what is wrong."""
        if not field.line.text().strip():
            return None
        value = field.value()
        return "wrong" if value is None else value

    def _begun(self, done: Done[int]) -> None:
        self.over.emit(AtTheBalance(self.around, done.answer))

    def choose(self, recipe: Recipe) -> None:
        """This colourway is weighed for."""
        self.recipe, self.then = recipe, None
        self.chosen.show()
        self.chosen.setText(f"{recipe.colourway}, version {recipe.number}")
        self.ask(self._show_recipe, recipe_then, recipe.version)
        self._show()
        self.setFocus()

    def _show_recipe(self, then: RecipeThen | None) -> None:
        self.then = then
        self.asks.show()
        names = ", ".join(one.substance for one in then.components) if then else ""
        self.asks.setText(names or "Its recipe is not written: F6 writes it. Without one every jar "
                                   "is taken as it is scanned.")

    def _take_up(self, row: int) -> None:
        if 0 <= row < len(self.open):
            self.over.emit(hand_of(self.around, self.open[row]))

    def _show_open(self, open_: Sequence[WeighOut]) -> None:
        self.open = tuple(reversed(open_))
        self.waiting.show_rows([
            (str(n), title(out), _how_far(out), moment_words(out.begun))
            for n, out in enumerate(self.open, 1)])

    def _show_balances(self, balances: Sequence[BalanceNow]) -> None:
        self.step.setVisible(not balances)
        if not balances:
            self.ask(self._show_step, setting, "balance step")

    def _show_step(self, step: str) -> None:
        self._step = step
        self.step.say(f"The balance reads to {step} g")

    def _next_step(self) -> None:
        at = STEPS.index(self._step) if self._step in STEPS else 0
        self.do(choose, {"balance step": STEPS[(at + 1) % len(STEPS)]})

    def _show(self) -> None:
        take_down(self._rows)
        for disc in self.discs:
            if disc.bundle is not None:
                line = CordRow(disc.bundle, "Take out")
                line.out.connect(partial(self._take_out, disc))
                self._rows.addWidget(line)
        self.dry.setText(self._dry_words())
        known = bool(self.discs or self.weight.line.text())
        if known and self.recipe is not None:
            self.begin.allow()
        else:
            self.begin.refuse("Scan the discs, or write a weight." if not known
                              else "Choose the colourway.")

    def _dry_words(self) -> str:
        if self.weight.line.text().strip():
            how = "damp" if self.pick_up.line.text().strip() else "dry"
            return (f"{self.weight.line.text().strip()} g weighed {how}"
                    + (": a fallback" if how == "damp" else ""))
        wound = sum(disc.bundle.mg for disc in self.discs if disc.bundle)
        if not wound:
            return "Scan the discs of the yarn."
        return f"{bare(Decimal(wound) / 1000)} g dry from winding"

    def _take_out(self, disc: DiscNow) -> None:
        self.discs.remove(disc)
        self._show()

    def _join(self) -> None:
        self.begin.clicked.connect(self.done)
        self.step.clicked.connect(self._next_step)
        self.recipes_key.clicked.connect(lambda: self.over.emit(RecipePage(self.around)))
        self.file.clicked.connect(self.file_wanted)
        self.balances.clicked.connect(lambda: self.over.emit(BalancesPage(self.around)))
        self.stocks.clicked.connect(lambda: self.over.emit(StocksPage(self.around)))
        self.jars.clicked.connect(lambda: self.over.emit(JarsPage(self.around)))
        self.colourways.chosen.connect(self.choose)
        self.waiting.opened.connect(self._take_up)
        for field in (self.weight, self.pick_up):
            field.line.textChanged.connect(self._show)
            field.line.returnPressed.connect(self.colourways.line.setFocus)

    def _lay_out(self) -> None:
        card = Card(in_hand=True)
        self._rows.setSpacing(Gap.HAIR)
        card.add(self.dry, self._rows)
        fields = card.add_row(self.weight, self.pick_up)
        fields.setStretch(0, 1)
        fields.setStretch(1, 1)
        card.add(self.chosen, self.asks, self.colourways)
        card.add_last(Actions(self.begin, self.put_away("Leave it")))
        waiting = Card("Open weigh-outs")
        waiting.add(self.waiting, self.to_look_at)
        waiting.add_last(Actions(
            self.jars, self.stocks, self.recipes_key, self.file, self.balances, self.step))
        side = QWidget()
        right = QVBoxLayout(side)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(Gap.PART)
        for part in (waiting, CautionsCard("Before a jar is opened", Step.WEIGH)):
            right.addWidget(part)
        self.body.addWidget(SideBySide(card, side, shares=(3, 2)))


def _how_far(out: WeighOut) -> str:
    taken = sum(not line.is_open for line in out.lines)
    waits = any(line.is_open for line in out.lines)
    return f"{taken} taken" + (", a cup stands" if waits else "")


def _thousandths(amount: Decimal | str | None) -> int | None:
    return round(amount * 1000) if isinstance(amount, Decimal) else None


def _tenths(percent: Decimal | str) -> int | None:
    return round(percent * 10) if isinstance(percent, Decimal) else None
