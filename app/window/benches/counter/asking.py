"""Questions at the counter: to whom, where else, take it out, which shelf, what was found."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QShortcut
from PySide6.QtWidgets import QWidget

from app.lookups.counter import Tagged
from app.problems import BadInput
from app.window.benches.counter.for_whom import ForWhom
from app.window.look.look import Size
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.fields import Field, GramsField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

ELSEWHERE = (("lost", "Lost"), ("given", "Given away"), ("discarded", "Thrown away"))


class Ask(Card):
    """One question; Enter, the key or the plate DONE answers it, Esc and F8 leave it."""

    answered = Signal(tuple)
    left = Signal()
    wants = ""
    """What answers it, where neither DONE nor Enter does."""

    def __init__(self, title: str, means: str, does: str) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName(title)
        self.means = Words(means, ink=SECOND)
        self.does, self.leave = KeyButton(does, "Enter", strong=True), KeyButton("Leave it", "F8")
        for shortcut in self.does.findChildren(QShortcut):
            shortcut.setEnabled(False)  # the focus decides: Enter on a name chooses it
        self.add(Words(title, Size.LEAD, bold=True))
        self.does.clicked.connect(self.save)
        self.leave.clicked.connect(self.left)

    def begin(self) -> None:
        """The question is in sight: the first thing to answer has the focus."""

    def save(self) -> None:
        """Answer it, or say what is missing."""

    def count(self, number: int) -> bool:
        """A COUNT plate; True if this question has a use for it."""
        return False

    def shelf(self, place: int, words: str) -> bool:
        """A shelf's plate; True if this question has a use for it."""
        return False

    def choose_skeins(self, chosen: Sequence[Tagged]) -> None:
        """Other tags were scanned while it is open."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def lay_out(self, *parts: QWidget) -> None:
        """Put the parts of the question on the card; Enter in its fields answers it."""
        self.add(*parts, self.means)
        self.means.setVisible(bool(self.means.text()))
        self.add_last(Actions(self.does, self.leave))
        for field in self.findChildren(Field):
            field.line.returnPressed.connect(self.save)


class BuyerCard(Ask):
    """To whom the basket is sold. Answers with the buyer."""

    def __init__(self, what: str) -> None:
        super().__init__("Sell to", what, "Sell")
        self.whom = ForWhom(title="To whom")
        self.lay_out(self.whom)
        self.whom.settled.connect(self.save)

    def begin(self) -> None:
        self.whom.field.line.setFocus()

    def save(self) -> None:
        buyer = self.whom.buyer()
        if buyer is not None:
            self.answered.emit((buyer,))


class NumberedAsk(Ask):
    """One question with an answer a key, each with its number; no Enter."""

    def __init__(self, title: str, means: str) -> None:
        super().__init__(title, means, "")
        self.keys: list[KeyButton] = []
        self.does.hide()

    def begin(self) -> None:
        self.keys[0].setFocus()

    def count(self, number: int) -> bool:
        if 1 <= number <= len(self.keys):
            self.keys[number - 1].click()
            return True
        return False


class ElsewhereCard(NumberedAsk):
    """These are not for sale any more, and why. Answers with the state."""

    wants = "Press 1, 2 or 3, or scan the COUNT plate with that number."

    def __init__(self, what: str) -> None:
        super().__init__("Where are these?", what)
        self.keys = [KeyButton(words, str(n)) for n, (_, words) in enumerate(ELSEWHERE, 1)]
        for key, (state, _) in zip(self.keys, ELSEWHERE, strict=True):
            key.clicked.connect(lambda _=False, state=state: self.answered.emit((state,)))
        self.lay_out(Actions(*self.keys))


class YesCard(Ask):
    """One thing to be said yes to, with Enter, or to be left."""

    def __init__(self, title: str, means: str, does: str) -> None:
        super().__init__(title, means, does)
        self.lay_out()

    def begin(self) -> None:
        self.does.setFocus()

    def save(self) -> None:
        self.answered.emit(())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.save()
        else:
            super().keyPressEvent(event)


class ShelfCard(Ask):
    """Which shelf: its plate answers, with the place."""

    wants = "Scan the plate of the shelf."

    def __init__(self, title: str) -> None:
        super().__init__(title, "Scan the plate of the shelf.", "")
        self.lay_out()
        self.does.hide()

    def begin(self) -> None:
        self.leave.setFocus()

    def shelf(self, place: int, words: str) -> bool:
        self.answered.emit((place,))
        return True


class FoundCard(Ask):
    """A skein without a tag: of which base, and how heavy. Answers with the base's number and mg.
    """

    def __init__(
        self, title: str, means: str, bases: Sequence[tuple[int, str]], base: str = ""
    ) -> None:
        super().__init__(title, means, "Keep it")
        self.base = Field("Base", _base_reader(bases), "part of its name")
        self.grams = GramsField("Weighs")
        self.lay_out(SideBySide(self.base, self.grams))
        self.base.line.setText(base)

    def begin(self) -> None:
        first = self.grams if self.base.line.text() else self.base
        first.line.setFocus()

    def save(self) -> None:
        base, mg = self.told()
        if base is not None and mg is not None:
            self.answered.emit((base, mg))

    def told(self) -> tuple[int | None, int | None]:
        """The base's number and mg; none, and what is missing has the focus."""
        base = self.base.value()
        if base is None:
            self.base.line.setFocus()
            return None, None
        if not self.grams.line.text().strip():
            self.grams.line.setFocus()
            return base, None
        grams = self.grams.value()
        return base, None if grams is None else int(grams * 1000)


def _base_reader(bases: Sequence[tuple[int, str]]) -> Callable[[str], int]:
    """The one base in whose name these words stand."""
    def read_base(text: str) -> int:
        words = text.casefold().split()
        fits = [one for one in bases if words and all(w in one[1].casefold() for w in words)]
        exact = [one for one in fits if one[1].casefold() == text.strip().casefold()]
        if len(exact or fits) == 1:
            return (exact or fits)[0][0]
        names = ", ".join(name for _, name in (fits or bases))
        raise BadInput(f"Which base is it: {names}?")
    return read_base
