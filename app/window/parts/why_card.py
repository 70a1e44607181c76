"""Why: the one question before a hold is put, one skein is cleared of it, or it is lifted."""

from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QElapsedTimer, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout

from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import bring
from app.window.parts.words import SECOND, Words

TWICE_MS = 1500
FAULTS = ("stain or oil", "shade is off", "thin or broken yarn", "moths or dirt",
          "colour comes off")
"""What holds are put for most often; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Why:
    """One question: what will be done, what that means, and answers at hand."""

    title: str
    means: str
    does: str
    needed: str
    answers: tuple[str, ...] = ()
    asks: str = ""
    """What stands over the field, where it wants something else than words."""


def in_place_of(
    column: QVBoxLayout, place: int, before: Card | None, card: Card | None
) -> None:
    """Put a question among the cards of a page in place of the one before, or take that away."""
    if before is not None:
        column.removeWidget(before)
        before.hide()
        before.deleteLater()
    if card is not None:
        column.insertWidget(place, card)
        card.setFocus()
        bring(card)


class WhyCard(Card):
    """Enter, the key or the plate DONE saves; Esc and F8 leave it; what was typed stays if not."""

    said = Signal(str)
    left = Signal()

    def __init__(self, why: Why) -> None:
        super().__init__(in_hand=True)
        self.why = why
        self._answer, self._since = "", QElapsedTimer()
        self.setAccessibleName(why.title)
        words = "Or in your own words" if why.answers else "In a few words"
        self.field = TextField(why.asks or words, "then Enter", why.needed)
        self.setFocusProxy(self.field)
        self.does = KeyButton(why.does, strong=True)
        self.leave = KeyButton("Leave it", "F8")
        self.answers = [
            KeyButton(f"{number}  {answer}") for number, answer in enumerate(why.answers, 1)
        ]
        for key, answer in zip(self.answers, why.answers, strict=True):
            key.clicked.connect(partial(self._say, answer))
        self.add(Words(why.title, Size.LEAD, bold=True), Words(why.means, ink=SECOND))
        if self.answers:
            self.add(Actions(*self.answers))
        row = self.add_row(self.field, self.does, self.leave)
        row.setStretch(0, 1)
        for key in (self.does, self.leave):
            row.setAlignment(key, Qt.AlignmentFlag.AlignBottom)
        self.does.clicked.connect(self.save)
        self.leave.clicked.connect(self.left)
        self.field.line.returnPressed.connect(self.save)

    def save(self) -> None:
        """Answer with what was typed, or with the answer of that figure; asked for if nothing is.
        """
        words = self.field.value()
        if words and not (words.isdecimal() and self.choose(int(words))):
            self._say(words)
        elif not words:
            self.field.line.setFocus()

    def choose(self, number: int) -> bool:
        """The answer with this number, as the plate COUNT says it."""
        if not 1 <= number <= len(self.answers):
            return False
        self.answers[number - 1].click()
        return True

    def _say(self, words: str, *_checked: bool) -> None:
        """A double press answers once; an answer that was refused can be given again."""
        if words != self._answer or self._since.hasExpired(TWICE_MS):
            self._answer = words
            self._since.start()
            self.said.emit(words)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
