"""The lot in the inspector's hand: swatches, the number that decides, and one key a verdict."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.records.shades import VERDICTS
from app.window.benches.inspecting.asks import Question
from app.window.benches.inspecting.inspecting_words import (
    NONE,
    decides,
    sentences,
    swatches,
    verdict_words,
)
from app.window.benches.inspecting.looking import Inspected
from app.window.look.look import Size, look
from app.window.parts.card import Actions, Card, SideBySide, stacked
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, BigNumber, CodeWords, Words
from app.window.shades.beside import Beside, short_of

NUMBER = 56
LARGE = 1.5
"""Size of text from which the keys would be out of sight below the trail."""
VERDICT_KEYS = ("F1", "F3", "F4", "F5", "F6")  # F2 is undo everywhere
_BY_SCANNER = ("By scanner: COUNT 1 to 5 are the verdicts, 6 a reading, 7 the eye, 8 the shades; "
               "SECONDS and HOLD too.")


class LotCard(Card):
    """`said` gives the word of a verdict; the other keys ask for a reading, the eye, the pictures.

    COUNT 1 to 5 are the verdicts, 6 is the reading, 7 the eye, 8 the pictures.
    """

    said = Signal(str)

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("the lot in hand")
        self.found: Inspected | None = None
        self.code, self.name = CodeWords(size=Size.TITLE), Words("", Size.LEAD, bold=True)
        self.beside, self.short = Beside(), Words(ink=SECOND)
        self.number, self.means = BigNumber(size=NUMBER), Words("", Size.LEAD, bold=True)
        self.findings, self.verdict, self.rest = Words(), Words(bold=True), Words()
        self.verdicts = [KeyButton(f"{word[:1].upper()}{word[1:]}", key)
                         for word, key in zip(VERDICTS, VERDICT_KEYS, strict=True)]
        self.read_key = KeyButton("Type a reading", "F7")
        self.eye_key = KeyButton("By eye", "Alt+E")
        self.away_key, self.shades_key = KeyButton("Put away", "F8"), KeyButton("Shades", "F10")
        self.swatch_key = KeyButton("Choose a swatch", "Alt+S")
        self.list_key = KeyButton("From a file", "F11")
        self.fault_key = KeyButton("A fault", "Alt+F")
        self.good_key = KeyButton("Seen good", "Alt+G")
        self.question: Question | None = None
        self._asked = QVBoxLayout()
        self._keys = (Actions(*self.verdicts),
                      Actions(self.read_key, self.eye_key, self.shades_key, self.swatch_key,
                              self.list_key, self.fault_key, self.good_key, self.away_key),
                      Words(_BY_SCANNER, Size.SMALL, ink=SECOND))
        self._lay_out()

    def show_lot(self, found: Inspected) -> None:
        """Show another lot, or the same as it is now."""
        self.found = found
        self.code.show_code(found.shown)
        self.name.setText(f"{found.colourway}, {found.base}")
        shown = swatches(found)
        self.beside.show_all(shown)
        self.beside.setVisible(any(one.zones for one in shown))
        against = found.shade.from_standard
        colours = {found.shown: against.decisive.other} if against else {}
        self.short.setText(short_of(colours))
        self.short.setVisible(bool(self.short.text()))
        number, counts, means = decides(found)
        self.number.show_number(number, counts)
        self.number.setVisible(number != NONE)
        first = "" if number != NONE else f"{counts[:1].upper()}{counts[1:]}. "
        self.means.setText(f"{first}{means}")
        self.findings.setText("\n".join(found.shade.findings))
        self.findings.setVisible(bool(found.shade.findings))
        self.verdict.setText(verdict_words(found.shade.verdict))
        self.rest.setText("\n".join(sentences(found)))
        decided = "" if found.shade.verdict is None else found.shade.verdict.verdict
        for word, key in zip(VERDICTS, self.verdicts, strict=True):
            key.setChecked(word == decided)

    @property
    def wants_room(self) -> bool:
        """Whether a question or large text needs the room of the trail."""
        return self.question is not None or look().text >= LARGE

    def ask(self, question: Question | None) -> None:
        """Put a question in the place of the keys, or the keys back."""
        take_down(self._asked)
        self.question = question
        for row in self._keys:
            row.setVisible(question is None)
        if question is not None:
            self._asked.addWidget(question)
            question.begin()

    def count(self, number: int) -> bool:
        """A COUNT plate: what is asked, else the key with this number; False where none has it."""
        if self.question is not None:
            return self.question.count(number)
        keys = {**dict(enumerate(self.verdicts, 1)), 6: self.read_key, 7: self.eye_key,
                8: self.shades_key}
        if number in keys:
            keys[number].click()
        return number in keys

    def _lay_out(self) -> None:
        for word, key in zip(VERDICTS, self.verdicts, strict=True):
            key.setCheckable(True)
            key.clicked.connect(lambda _=False, word=word: self.said.emit(word))
        self.add_row(self.code, self.name).setStretch(1, 1)
        verdicts, *others = self._keys
        self.add(SideBySide(stacked(self.number, self.means, self.findings, self.verdict, verdicts),
                            self.beside, shares=(2, 3)), self.short)
        for row in others:
            self.add(row)
        self.add(self._asked, self.rest)
