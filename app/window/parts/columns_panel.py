"""Which column of a list holds what: what is lacking is asked, what was found can be changed."""

from collections.abc import Mapping
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from app.exchange.columns import ColumnMatch
from app.window.look.look import Gap
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words

NOWHERE = "in no column"
_LONGEST = 30


class ColumnsPanel(QWidget):
    """The headings to choose from for each field that is asked.

    `chosen` gives field and heading, `given` a field and the words that hold for all rows, and
    `asked` a field of which another column is wanted.
    """

    chosen = Signal(str, str)
    given = Signal(str, str)
    asked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("columns of the list")
        self.keys: dict[tuple[str, str], KeyButton] = {}
        self.fields: dict[str, QLineEdit] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.SMALL)

    def show_match(
        self,
        match: ColumnMatch,
        asked: Mapping[str, str],
        said: Mapping[str, str],
        *,
        all_of: bool,
    ) -> None:
        """Ask for these fields, each with its sentence; with `all_of` every field is shown, so
        that a match can be put right.
        """
        take_down(self._column)
        self.keys, self.fields = {}, {}
        if asked:
            self._column.addWidget(Words("Tap the column where it stands.", ink=SECOND))
        for field, sentence in asked.items():
            ways: list[QWidget] = [*self._headings(match, field)]
            if field in match.kind.for_all and field not in match.places:
                ways.append(self._for_all(match.kind.fields[field], field, said.get(field, "")))
            self._column.addWidget(Words(sentence, bold=True))
            self._column.addWidget(Actions(*ways))
        if all_of:
            self._column.addWidget(Words("What stands where; tap what is wrong.", ink=SECOND))
            self._column.addWidget(Actions(
                *(self._found(match, field, said) for field in match.kind.fields)))

    def settle(self) -> bool:
        """What was written for all rows holds now; True if anything was."""
        written = {name: line.text().strip() for name, line in self.fields.items()}
        for name, words in written.items():
            if words:
                self.given.emit(name, words)
        return any(written.values())

    def _headings(self, match: ColumnMatch, field: str) -> list[KeyButton]:
        own = match.places.get(field)
        keys = []
        for place, heading in enumerate(match.headings):
            if heading and place != own:
                key = KeyButton(_short(heading))
                key.setAccessibleName(f"{match.kind.fields[field]} stands in {heading}")
                key.clicked.connect(partial(self.chosen.emit, field, heading))
                self.keys[field, heading] = key
                keys.append(key)
        if own is not None or field in match.kind.settled:
            nowhere = KeyButton(NOWHERE)
            nowhere.clicked.connect(partial(self.chosen.emit, field, ""))
            self.keys[field, NOWHERE] = nowhere
            keys.append(nowhere)
        return keys

    def _found(self, match: ColumnMatch, field: str, said: Mapping[str, str]) -> KeyButton:
        place = match.places.get(field)
        where = said.get(field, "–") if place is None else match.headings[place]
        key = KeyButton(f"{match.kind.fields[field].removeprefix('the ')}: {_short(where)}")
        key.clicked.connect(partial(self.asked.emit, field))
        self.keys[field, ""] = key
        return key

    def _for_all(self, what: str, field: str, said: str) -> QLineEdit:
        line = QLineEdit(said)
        line.setAccessibleName(f"{what}, the same for all rows")
        line.setPlaceholderText("or, for all rows")
        line.setAcceptDrops(False)  # a list that is dropped here is for the bench
        self.fields[field] = line
        return line


def _short(heading: str) -> str:
    return heading if len(heading) <= _LONGEST else f"{heading[: _LONGEST - 1]}…"
