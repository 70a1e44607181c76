"""After a stop: a cup stood on the balance, and somebody must say what became of it."""

from decimal import Decimal

from PySide6.QtCore import Signal

from app.lookups.weighings import LineThen
from app.window.benches.weighing.weigh_words import cup_question, read_millilitres
from app.window.look.look import Size
from app.window.parts.amounts import read_grams
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.work.weigh_lines import WHAT_BECAME

_WORDS = {"kept": "Kept", "tipped back": "Tipped back", "thrown": "Thrown"}


class StoppedCard(Card):
    """`answered` gives what became of the cup, and the thousandths (mg or ul) in it, or none."""

    answered = Signal(str, object)

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.by_volume = False
        self._waits = ""  # what became of it, while its weight is still to come
        self.question = Words("", Size.LARGE, bold=True)
        self.field: Field[Decimal] = Field("In the cup", self._read, "grams, where it is known")
        self.keys: dict[str, KeyButton] = {}
        for what, key in zip(WHAT_BECAME, ("F5", "F6", "F7"), strict=True):
            self.keys[what] = KeyButton(_WORDS[what], key, size=Size.LEAD)
            self.keys[what].clicked.connect(lambda _=False, what=what: self.answer(what))
        self.add(self.question, self.field)
        self.add(Words("Kept needs its weight, before or after it is said. Tipped back or thrown "
                       "without one: weigh the jar afterwards.", ink=SECOND))
        self.add(Words("By scanner: COUNT 1 kept, 2 tipped back, 3 thrown.", ink=SECOND))
        leave = KeyButton("Put away", "F8")
        self.leave = leave
        self.add_last(Actions(*self.keys.values(), leave))

    def show_line(self, line: LineThen) -> None:
        """This line is asked about."""
        self.by_volume = line.stock is not None or line.target_ul is not None
        self.question.setText(cup_question(line))
        self.field.setFocus()

    def answer(self, what: str) -> None:
        """Say what became of it; a weight that cannot be read stays where it is, with why."""
        written = self.field.line.text().strip()
        if not written and what != "kept":
            self.answered.emit(what, None)
            return
        amount = self.field.value()
        self._waits = what if amount is None else ""
        if amount is not None:
            self.answered.emit(what, round(amount * 1000))

    def weigh(self, reading: str) -> None:
        """The balance says what is in the cup; where it was said to be kept that is all."""
        self.field.line.setText(reading)
        if self._waits:
            self.answer(self._waits)

    def _read(self, text: str) -> Decimal:
        return read_millilitres(text) if self.by_volume else read_grams(text)
