"""The first start: the studio's name and your initials; all else has its default."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.problems import BadInput
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words


class FirstStart(QWidget):
    """Two questions; `answered` gives studio, initials and name (which may be empty)."""

    answered = Signal(str, str, str)

    def __init__(self) -> None:
        super().__init__()
        self.studio = TextField("The studio is called", needed="Every tag and report needs it.")
        self.initials = Field("Your initials", _initials)
        self.name = TextField("and your name, if you like")
        self._begin = KeyButton("Begin the book", "Enter", strong=True)
        card = Card(in_hand=True)
        card.add(Words("A new book", Size.TITLE, bold=True), self.studio)
        who = card.add_row(self.initials, self.name)
        who.setStretch(0, 1)
        who.setStretch(1, 2)
        who.setAlignment(self.initials, Qt.AlignmentFlag.AlignTop)
        who.setAlignment(self.name, Qt.AlignmentFlag.AlignTop)
        card.add(Words("All else can be set later, at the Desk.", ink=SECOND))
        card.add(Actions(self._begin))
        card.setMaximumWidth(720)
        middle = QHBoxLayout()
        middle.addStretch(1)
        middle.addWidget(card, 4)
        middle.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, Gap.BLOCK, 0, 0)
        column.addLayout(middle)
        column.addStretch(1)
        self._begin.clicked.connect(self._answer)
        self.setFocusProxy(self.studio)

    def _answer(self) -> None:
        studio, initials, name = self.studio.value(), self.initials.value(), self.name.value()
        if studio and initials:
            self.answered.emit(studio, initials, name or "")


def _initials(text: str) -> str:
    initials = text.strip().upper()
    if not (1 <= len(initials) <= 4 and initials.isalnum()):
        raise BadInput("Initials are one to four letters or digits, as you will sign.")
    return initials
