"""The jars as they are now; one that is scanned is refilled, weighed, or its strength told."""

from collections.abc import Sequence

from app.calculations.cautions import Step
from app.calculations.jar_balance import WrongJar
from app.calculations.moments import day_words
from app.lookups.jar_gaps import jars_that_were_swapped
from app.lookups.jars import JarNow, jars_now
from app.window.bench import Around
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.jar_card import JarCard, Mode
from app.window.benches.weighing.jar_words import (
    grams,
    parts_words,
    strength_words,
    swapped_words,
    to_look_at,
    warnings,
)
from app.window.benches.weighing.new_jar_page import NewJarPage
from app.window.parts.card import Actions, Card
from app.window.parts.cautions_card import CautionsCard
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import Words
from app.work.jars import refill, say_strength, set_reorder, weigh_jar


class JarsPage(WeighHand):
    """Everything about jars that is not weighing out."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.jars: Sequence[JarNow] = ()
        self.card = JarCard()
        self.card.kept.connect(self.done)
        self.swapped, self.to_look_at = Words("", bold=True), Words("", bold=True)
        self.table = ThingTable(
            (Head("jar", right=True), "dye", Head("left", right=True), "strength", "made of",
             "good until", "look"), "jars",
            none="No jar is in the book yet.", opens=True, most_rows=14)
        self.table.opened.connect(lambda row: self.take_jar(self.jars[row]))
        shelf = Card("The jars now")
        shelf.add(self.to_look_at, self.swapped, self.table)
        shelf.add(Words("Scan a jar, or open its row."))
        self.open_key = KeyButton("Open a new jar", "F9")
        self.open_key.clicked.connect(lambda: self.over.emit(NewJarPage(
            around, self._next_number(), lambda: JarsPage(around))))
        shelf.add_last(Actions(self.open_key, self.put_away("Back to the balance")))
        for part in (self.card, shelf, CautionsCard("Before a jar is opened", Step.REFILL)):
            self.body.addWidget(part)
        self.card.hide()
        for words in (self.swapped, self.to_look_at):
            words.hide()
        self.look()

    @property
    def is_idle(self) -> bool:
        """Nothing is written of a jar: it may be put away by the next scan."""
        return not any(field.line.text().strip() for field in self.card.fields)

    def look(self) -> None:
        """Look again at all jars."""
        self.ask(self._show, jars_now)
        self.ask(self._show_swapped, jars_that_were_swapped)

    def take_jar(self, jar: JarNow) -> bool:
        """This jar is in hand."""
        self.card.clear()
        self.card.show_jar(jar)
        self.card.show()
        self.card.turn(Mode.REFILL)
        return True

    def weigh(self, reading: str) -> bool:
        """A balance typed it: what was tipped in, or what the jar weighs."""
        if not self.card.amount.isVisible():
            return False
        self.card.amount.line.setText(reading)
        return True

    def write_figure(self, figure: str) -> bool:
        """A figure begins what is asked of the jar in hand."""
        if self.card.isHidden():
            return False
        self.card.first.setFocus()
        self.card.first.line.insert(figure)
        return True

    def done(self) -> None:
        """Keep what was written of the jar in hand."""
        card, jar = self.card, self.card.jar
        if jar is None or card.isHidden():
            return
        if card.mode is Mode.REFILL:
            self._refill(jar)
        elif card.mode is Mode.BUYING:
            below = card.buying.value()
            if below is not None or not card.buying.line.text().strip():
                self.do(set_reorder, jar.jar, below, then=lambda _done: self._kept())
        elif card.mode is Mode.WEIGH:
            if (amount := card.amount.value()) is not None:
                self.do(weigh_jar, jar.jar, round(amount * 1000), then=lambda _done: self._kept())
        elif (percent := card.strength.value()) is not None:
            self.do(say_strength, jar.jar, round(percent * 10), then=lambda _done: self._kept())

    def _refill(self, jar: JarNow) -> None:
        new = self.card.refill()
        if new is not None:
            asks = new.strength_permille is None
            self.do(refill, jar.jar, new, then=lambda _done: self._kept(asks_strength=asks))

    def _next_number(self) -> int:
        return max((int(jar.shown) for jar in self.jars), default=0) + 1

    def _kept(self, *, asks_strength: bool = False) -> None:
        """A mixture is as strong as nobody knows: its strength is asked again."""
        self.card.clear()
        self.look()
        if asks_strength:
            self.card.turn(Mode.STRENGTH, "How strong is the mixture? The old strength says "
                                          "nothing of it. Dye a sample against the standard.")
        else:
            self.setFocus()

    def _show(self, jars: Sequence[JarNow]) -> None:
        self.jars = jars
        now = self.around.session.now()
        self.to_look_at.setText(to_look_at(jars, now))
        self.to_look_at.setVisible(bool(self.to_look_at.text()))
        self.table.show_rows([
            (jar.shown, jar.dye, grams(jar.left_mg), strength_words(jar), parts_words(jar),
             day_words(jar.expires) if jar.expires else "", warnings(jar, now)) for jar in jars])
        here = self.card.jar
        fresh = next((jar for jar in jars if here and jar.jar == here.jar), None)
        if fresh is not None:
            self.card.show_jar(fresh)

    def _show_swapped(self, pairs: Sequence[WrongJar]) -> None:
        self.swapped.setText("\n".join(map(swapped_words, pairs)))
        self.swapped.setVisible(bool(pairs))
