"""A fault on the cone: it goes on hold, with what was seen."""

from PySide6.QtCore import Signal

from app.calculations.codes import shown
from app.lookups.reel import OnReel
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

SEEN = ("oil or dirt", "slubs or thin places", "too many knots", "another shade")


class FaultCard(Card):
    """Asks what was seen: one tap, one COUNT plate, or a few words."""

    seen = Signal(str)
    given_up = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.title = Words("", Size.LEAD, bold=True)
        self.words = TextField("or in your words", needed="Say what was seen.")
        self.keys = [KeyButton(f"{n}  {what}") for n, what in enumerate(SEEN, 1)]
        give_up = KeyButton("No fault", "H")
        self._save = KeyButton("Put on hold", "Enter", strong=True)
        self.add(
            self.title,
            Words(
                "Nothing of it is printed or sold until the owner has looked; "
                "what is in work goes on, marked.",
                ink=SECOND,
            ),
            Actions(*self.keys),
            self.words,
            Actions(self._save, give_up),
        )
        for key, what in zip(self.keys, SEEN, strict=True):
            key.clicked.connect(lambda what=what: self.seen.emit(what))
        self._save.clicked.connect(self.save)
        give_up.clicked.connect(self.given_up)

    def begin(self, cone: OnReel) -> None:
        """Something is wrong with this cone."""
        self.title.setText(f"What is wrong with {shown(cone.facts.code)}?")
        self.words.clear()

    def count(self, number: int) -> None:
        """A digit or a count plate: the fault with this number."""
        if number <= len(SEEN):
            self.seen.emit(SEEN[number - 1])

    def save(self) -> None:
        """What was written in words."""
        words = self.words.value()
        if words:
            self.seen.emit(words)
