"""The people of the studio: who signs, who left, who begins today; and the studio's own words."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.moments import day_words
from app.lookups.studio import PersonFacts
from app.problems import BadInput
from app.window.benches.desk.studio_card import StudioCard
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words


class PeoplePage(QWidget):
    """`enrolled` gives initials and name (which may be empty), `leaving` the initials."""

    enrolled = Signal(str, str)
    leaving = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.initials = Field("Initials", _initials, "one to four letters or digits")
        self.name = TextField("Name, if they like")
        self.enrol_key = KeyButton("Enrol", strong=True)
        self.leave_keys: dict[str, KeyButton] = {}
        self._signing, self._left = QVBoxLayout(), QVBoxLayout()
        for list_of in (self._signing, self._left):
            list_of.setSpacing(Gap.HAIR)
        here, new = Card("Who signs here"), Card("Someone begins", in_hand=True)
        here.add(self._signing)
        self._gone = Card("Who left")
        self._gone.add(Words("All they did stays theirs, and their initials too.", ink=SECOND),
                       self._left)
        new.add(self.initials, self.name, Actions(self.enrol_key))
        new.add(Words("The name can be removed on request; the initials stay in the journal.",
                      Size.SMALL, ink=SECOND))
        self.studio = StudioCard()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(SideBySide(_above_each_other(here, self.studio),
                                   _above_each_other(new, self._gone), shares=(1, 1)))
        whole.addStretch(1)
        self.enrol_key.clicked.connect(self._enrol)
        self.name.line.returnPressed.connect(self._enrol)
        self.initials.line.returnPressed.connect(self.name.line.setFocus)

    def show_people(self, people: Sequence[PersonFacts], signed_on: str) -> None:
        """Show who is here and who left; who is signed on here now cannot leave yet."""
        take_down(self._signing)
        take_down(self._left)
        self.leave_keys = {}
        for person in people:
            if person.left is None:
                self._signing.addWidget(self._signs(person, signed_on))
            else:
                left = Words(f"left {day_words(person.left)}", ink=SECOND, wrap=False)
                self._left.addWidget(_line(person, left))
        self._gone.setVisible(any(person.left is not None for person in people))

    def clear(self) -> None:
        """Someone was enrolled: room for the next."""
        self.initials.clear()
        self.name.clear()
        self.initials.line.setFocus()

    def _signs(self, person: PersonFacts, signed_on: str) -> QWidget:
        key = KeyButton("Leaves")
        key.setAccessibleName(f"{person.initials} leaves")
        if person.initials == signed_on:
            key.refuse("Signed on here: let another sign on first.")
        key.clicked.connect(lambda: self.leaving.emit(person.initials))
        self.leave_keys[person.initials] = key
        return _line(person, key)

    def _enrol(self) -> None:
        initials, name = self.initials.value(), self.name.value()
        if initials:
            self.enrolled.emit(initials, name or "")


def _above_each_other(*cards: QWidget) -> QWidget:
    side = QWidget()
    column = QVBoxLayout(side)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(Gap.PART)
    for card in cards:
        column.addWidget(card)
    column.addStretch(1)
    return side


def _line(person: PersonFacts, more: QWidget) -> QWidget:
    line = QWidget()
    row = QHBoxLayout(line)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(Gap.LINE)
    initials = Words(person.initials, Size.LEAD, bold=True, wrap=False)
    initials.setMinimumWidth(56)
    row.addWidget(initials)
    row.addWidget(Words(person.name or "", ink="" if person.left is None else SECOND), 1)
    row.addWidget(more, 0, Qt.AlignmentFlag.AlignRight)
    return line


def _initials(text: str) -> str:
    initials = text.strip().upper()
    if not (1 <= len(initials) <= 4 and initials.isalnum()):
        raise BadInput("Initials are one to four letters or digits, as they will sign.")
    return initials
