"""One jar in hand: refilled, weighed, its strength told, each with no more than three fields."""

from decimal import Decimal
from enum import StrEnum

from PySide6.QtCore import Signal

from app.lookups.jars import JarNow
from app.problems import BadInput
from app.window.benches.weighing.jar_words import (
    gap_words,
    grams,
    parts_words,
    strength_words,
)
from app.window.look.look import Size
from app.window.parts.amounts import read_grams
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, GramsField, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, FactLine, Words


class Mode(StrEnum):
    """What is done to the jar."""

    REFILL = "refill"
    WEIGH = "weigh"
    STRENGTH = "strength"


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
        self.facts = {name: FactLine(name) for name in ("left", "fill", "of", "strength")}
        self.lot = TextField("The words on the new lot's label")
        self.amount = GramsField("Tipped in")
        self.strength = Field("Strength of the mixture, % (if it was tried)", read_strength,
                              "not known yet")
        self.keep = KeyButton("Refill", "Enter", strong=True)
        self.keep.clicked.connect(self.kept)
        self.keys = {Mode.REFILL: KeyButton("Refill it", "F5"),
                     Mode.WEIGH: KeyButton("Weigh it", "F6"),
                     Mode.STRENGTH: KeyButton("Its strength", "F7")}
        for mode, key in self.keys.items():
            key.clicked.connect(lambda _=False, mode=mode: self.turn(mode))
        self.add(self.name, *self.facts.values(), self.gap, self.lot, self.amount, self.strength)
        self.add_last(Actions(self.keep, *self.keys.values()))

    def show_jar(self, jar: JarNow) -> None:
        """This jar is in hand; what was typed for it stays."""
        self.jar = jar
        self.name.setText(f"Jar {jar.shown}, {jar.dye}")
        for name, said in (("left", f"{grams(jar.left_mg)} of {grams(jar.filled_mg)}"),
                           ("fill", str(jar.number)), ("of", parts_words(jar)),
                           ("strength", strength_words(jar))):
            self.facts[name].show_fact(said)
        self.gap.setText(gap_words(jar))

    def turn(self, mode: Mode) -> None:
        """Another thing is done to it."""
        self.mode = mode
        self.lot.setVisible(mode is Mode.REFILL)
        self.amount.setVisible(mode is not Mode.STRENGTH)
        self.strength.setVisible(mode is not Mode.WEIGH)
        self.keep.say({Mode.REFILL: "Refill", Mode.WEIGH: "It weighs so, without the glass",
                       Mode.STRENGTH: "So strong is it"}[mode])
        for one, key in self.keys.items():
            key.setVisible(one is not mode)
        (self.lot if mode is Mode.REFILL else self.amount if mode is Mode.WEIGH
         else self.strength).setFocus()

    def strength_permille(self) -> int | None:
        """As it was written; none where nothing is."""
        if not self.strength.line.text().strip():
            return None
        percent = self.strength.value()
        return None if percent is None else round(percent * 10)

    def clear(self) -> None:
        """Make room for the next."""
        for field in (self.lot, self.amount, self.strength):
            field.clear()
