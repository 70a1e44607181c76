"""The cone is finished: what is left at its end is weighed, and the book checks its sum."""

from decimal import ROUND_HALF_UP, Decimal

from PySide6.QtCore import Signal

from app.calculations.codes import shown
from app.calculations.units import grams, milligrams
from app.lookups.reel import OnReel
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import GramsField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words


class EndCard(Card):
    """Asks one weight; `weighed` gives it in milligrams."""

    weighed = Signal(int)
    given_up = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.cone: OnReel | None = None
        self.title, self.told = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.grams = GramsField("What is left at its end, in grams", "4")
        self._save = KeyButton("Save", "Enter", strong=True)
        self._give_up = KeyButton("Not finished", "E")
        self.add(self.title, self.told, self.grams, Actions(self._save, self._give_up))
        self._save.clicked.connect(self.save)
        self._give_up.clicked.connect(self.given_up)

    def begin(self, cone: OnReel) -> None:
        """This cone is finished."""
        facts = cone.facts
        self.cone = cone
        left = grams(facts.fibre_mg - facts.drawn_mg - facts.waste_mg)
        self.title.setText(f"{shown(facts.code)} is finished: weigh its end")
        self.told.setText(
            f"{_tenth(grams(facts.fibre_mg))} g of yarn came on it and "
            f"{_tenth(grams(facts.drawn_mg))} g were wound, so {_tenth(left)} g "
            "should be left. Weigh without the centre."
        )
        self.grams.clear()
        self.grams.line.setFocus()

    def count(self, number: int) -> None:
        """A count plate: so many grams."""
        self.grams.clear()
        self.grams.line.setText(str(number))

    def save(self) -> None:
        """Give the weight, if one can be read."""
        weight = self.grams.value()
        if weight is not None:
            self.weighed.emit(milligrams(weight))


def _tenth(weight: Decimal) -> str:
    return f"{weight.quantize(Decimal('0.1'), ROUND_HALF_UP):,f}"
