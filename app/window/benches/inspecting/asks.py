"""Questions of the inspector: a step of the grey scale, a name, a reason, a swatch by eye."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from app.calculations.grey_scales import Step
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.shade_field import ShadeField
from app.window.parts.words import SECOND, Words

STEP_KEYS = tuple(f"F{number}" for number in (1, 3, 4, 5, 6, 7, 9, 10, 11))
WORD_KEYS = ("F1", "F3", "F7", "F9")
"""None of them asks the question: a key pressed twice answers nothing."""
_OTHER = "Against the last lot"


class Question(Card):
    """One question at a time under the lot; `left` leaves it."""

    left = Signal()

    def __init__(self, title: str) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName(title)
        self.add(Words(title, Size.LEAD, bold=True))
        self.keys: list[KeyButton] = []
        self.leave = KeyButton("Leave it", "F8")
        self.leave.clicked.connect(self.left)

    def begin(self) -> None:
        """The first thing to answer has the focus."""

    def done(self) -> None:
        """Enter, or the plate DONE."""

    def count(self, number: int) -> bool:
        """A COUNT plate: the key in this place; False where there is none."""
        there = 1 <= number <= len(self.keys)
        if there:
            self.keys[number - 1].click()
        return there


class EyeQuestion(Question):
    """Which step of the grey scale, in which light. `answered` gives the step, lamp and other."""

    answered = Signal(object, str, bool)  # Step, lamp, against the last lot

    def __init__(self, last: str) -> None:
        super().__init__("Which step of the grey scale?")
        self.lamp = TextField("Light", "D65, north window")
        self.other = KeyButton(f"{_OTHER}, {last}" if last else _OTHER, "Alt+L")
        self.other.setCheckable(True)
        if not last:
            self.other.refuse("It is the first of its colourway and base.")
        self.keys = [KeyButton(str(step), key)
                     for step, key in zip(Step, STEP_KEYS, strict=True)]
        for step, key in zip(Step, self.keys, strict=True):
            key.clicked.connect(lambda _=False, step=step: self.answered.emit(
                step, self.lamp.line.text().strip(), self.other.isChecked()))
        self.add(Words("5 is no difference, 1 the greatest. One person, one light, twice. By "
                       "scanner: COUNT 1 is 5, COUNT 2 is 4-5, and so on.", ink=SECOND),
                 Actions(*self.keys), self.lamp, Actions(self.other, self.leave))

    def begin(self) -> None:
        self.keys[0].setFocus()


class WordsQuestion(Question):
    """A name or a reason: some to choose from, or written. `answered` gives the words."""

    answered = Signal(str)

    def __init__(self, title: str, asks: str, offered: Sequence[str], does: str) -> None:
        super().__init__(title)
        self.field = TextField(asks, needed=f"{asks} is missing: say it, or choose one above.")
        self.does = KeyButton(does, "Enter", strong=True)
        self.keys = [KeyButton(words, key)
                     for words, key in zip(offered, WORD_KEYS, strict=False)]
        for words, key in zip(offered, self.keys, strict=True):
            key.clicked.connect(lambda _=False, words=words: self.answered.emit(words))
        self.does.clicked.connect(self.done)
        self.add(Actions(*self.keys), self.field, Actions(self.does, self.leave))

    def begin(self) -> None:
        self.field.line.setFocus()

    def done(self) -> None:
        words = self.field.value()
        if words:
            self.answered.emit(words)


class SwatchQuestion(Question):
    """A colour chosen by eye where nothing was measured. `answered` gives it."""

    answered = Signal(str)

    def __init__(self) -> None:
        super().__init__("Which swatch looks like it?")
        self.field = ShadeField()
        self.does = KeyButton("Show it by this", "Enter", strong=True)
        self.does.refuse("Choose a shade first.")
        self.field.chosen.connect(lambda _colour: self.does.allow())
        self.does.clicked.connect(self.done)
        self.add(Words("It is shown by it, and never reckoned with. Arrow keys walk.", ink=SECOND),
                 self.field, Actions(self.does, self.leave))

    def begin(self) -> None:
        self.field.setFocus()

    def done(self) -> None:
        if self.field.colour is not None:
            self.answered.emit(self.field.colour)
