"""One jar in hand: refilled, weighed, its strength told, when to buy; few fields each."""

from datetime import datetime
from decimal import Decimal
from enum import StrEnum
from typing import Any

from PySide6.QtCore import Signal

from app.calculations.moments import day_words
from app.lookups.jars import JarNow
from app.problems import BadInput
from app.window.benches.weighing.jar_words import (
    gap_words,
    grams,
    parts_words,
    read_buying,
    read_until,
    strength_words,
)
from app.window.look.look import Size
from app.window.parts.amounts import read_grams
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, GramsField, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, FactLine, Words
from app.work.jars import Refill


class Mode(StrEnum):
    """What is done to the jar."""

    REFILL = "refill"
    WEIGH = "weigh"
    STRENGTH = "strength"
    BUYING = "buying"


_KEEP = {Mode.REFILL: "Refill", Mode.WEIGH: "It weighs so, without the glass",
         Mode.STRENGTH: "So strong is it", Mode.BUYING: "Buy below this"}


def read_strength(text: str) -> Decimal:
    """Per cent of the standard from `92` or `92 %`; raises BadInput."""
    try:
        return read_grams(text.replace("%", ""))
    except BadInput as why:
        raise BadInput(f"“{text.strip()}” is no strength.", "As strong as the standard is 100."
                       ) from why


class JarCard(Card):
    """`kept` comes when what was written is to be kept."""

    kept = Signal()

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.jar: JarNow | None = None
        self.mode = Mode.REFILL
        self.name, self.gap = Words("", Size.LARGE, bold=True), Words("", ink=SECOND)
        self.facts = {name: FactLine(name) for name in ("left", "fill", "strength", "good until")}
        self.amount = GramsField("Tipped in")
        self.lot = TextField("The words on the new lot's label", "not stated")
        self.strength = Field("Strength, % of the standard", read_strength, "not known yet")
        self.until: Field[datetime | None] = Field("The new lot is good until", read_until,
                                                   "2027-03-31 or 2027-03")
        self.buying: Field[int | None] = Field("Buy below, grams (nothing: nobody is told)",
                                               read_buying, "100")
        self.asked = Words("", bold=True)
        self.keep = KeyButton("Refill", "Enter", strong=True)
        self.keep.clicked.connect(self.kept)
        self.keys = {Mode.REFILL: KeyButton("Refill it", "F5"),
                     Mode.WEIGH: KeyButton("Weigh it", "F6"),
                     Mode.STRENGTH: KeyButton("Its strength", "F7"),
                     Mode.BUYING: KeyButton("When to buy", "F10")}
        for mode, key in self.keys.items():
            key.clicked.connect(lambda _=False, mode=mode: self.turn(mode))
        self.add(self.name, *self.facts.values(), self.gap, self.asked)
        self.add_row(self.amount, self.lot)
        self.add_row(self.strength, self.until, self.buying)
        self.add_last(Actions(self.keep, *self.keys.values()))

    @property
    def first(self) -> Field[Any]:
        """The field that a figure begins in."""
        return (self.strength if self.mode is Mode.STRENGTH else self.buying
                if self.mode is Mode.BUYING else self.amount)

    @property
    def fields(self) -> tuple[Field[Any], ...]:
        """All that may be written of a jar."""
        return self.amount, self.lot, self.strength, self.until, self.buying

    def show_jar(self, jar: JarNow) -> None:
        """This jar is in hand; what was typed for it stays."""
        self.jar = jar
        self.name.setText(f"Jar {jar.shown}, {jar.dye}")
        for name, said in (
            ("left", f"{grams(jar.left_mg)} of {grams(jar.filled_mg)}; " + (
                f"more is bought below {grams(jar.reorder_mg)}" if jar.reorder_mg
                else "nobody is told when to buy")),
            ("fill", f"{jar.number}, since {day_words(jar.filled)}: {parts_words(jar)}"),
            ("strength", strength_words(jar)),
            ("good until", day_words(jar.expires) if jar.expires else "not stated"),
        ):
            self.facts[name].show_fact(said)
        self.gap.setText(gap_words(jar))

    def turn(self, mode: Mode, asked: str = "") -> None:
        """Another thing is done to it; `asked` says why that is next."""
        self.mode = mode
        self.lot.setVisible(mode is Mode.REFILL)
        self.until.setVisible(mode is Mode.REFILL)
        self.amount.setVisible(mode in (Mode.REFILL, Mode.WEIGH))
        self.strength.setVisible(mode in (Mode.REFILL, Mode.STRENGTH))
        self.buying.setVisible(mode is Mode.BUYING)
        self.asked.setText(asked)
        self.asked.setVisible(bool(asked))
        self.amount.name("Tipped in" if mode is Mode.REFILL else "Without the glass it weighs")
        self.strength.name("Strength of the mixture, %, if it was tried" if mode is Mode.REFILL
                           else "Strength, % of the standard")
        self.keep.say(_KEEP[mode])
        for one, key in self.keys.items():
            key.setVisible(one is not mode)
        self.first.setFocus()

    def refill(self) -> Refill | None:
        """What was tipped in; none where something of it cannot be read, which is said there."""
        amount, until = self.amount.value(), self.until.value()
        said = bool(self.strength.line.text().strip())
        strength = self.strength.value() if said else None
        if amount is None or (said and strength is None) or (
                until is None and self.until.line.text().strip()):
            return None
        return Refill(self.lot.line.text().strip() or None, round(amount * 1000),
                      None if strength is None else round(strength * 10), until)

    def clear(self) -> None:
        """Make room for the next."""
        for field in self.fields:
            field.clear()
