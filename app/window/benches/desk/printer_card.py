"""The printers of this computer: found by the system, or named by hand."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.problems import BadInput
from app.window.look.look import Gap
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words

_LONGEST = 40


class PrinterCard(Card):
    """`named` and `forgotten` give the printer; `sought` asks the system which it has."""

    named = Signal(str)
    forgotten = Signal(str)
    sought = Signal()

    def __init__(self) -> None:
        super().__init__("Printers of this computer")
        self.name = Field("Printer", _name_of, "laser in the office")
        self.name_key, self.seek_key = KeyButton("Name it"), KeyButton("Look for printers")
        self.forget_keys: dict[str, KeyButton] = {}
        self.found_keys: dict[str, KeyButton] = {}
        self.says = Words()
        self.says.hide()
        self._lines, self._found = QVBoxLayout(), QVBoxLayout()
        self._lines.setSpacing(Gap.HAIR)
        self.add(self._lines, self.says, self._found, self.name)
        self.add(Words("One that the system knows gets its sheets straight. For any other the "
                       "sheet is opened as a file: print it at 100 %, not fitted to the page.",
                       ink=SECOND))
        self.add_last(Actions(self.name_key, self.seek_key))
        self.name_key.clicked.connect(self._name)
        self.name.line.returnPressed.connect(self._name)
        self.seek_key.clicked.connect(self.sought)

    def show_printers(self, names: Sequence[str]) -> None:
        """Those that were named here."""
        take_down(self._lines)
        self.forget_keys = {}
        for name in names:
            self._lines.addWidget(self._line(name))
        if not names:
            self._lines.addWidget(Words("None is named yet: sheets are opened as files.",
                                        bold=True))

    def show_found(self, found: Sequence[str]) -> None:
        """What the system has and is not named here yet."""
        take_down(self._found)
        self.found_keys = {name: KeyButton(name) for name in found}
        for name, key in self.found_keys.items():
            key.clicked.connect(partial(self.named.emit, name))
        self._found.addWidget(Actions(*self.found_keys.values()))
        self.says.setText("The system has these; tap one that prints tags." if found else
                          "The system has no printer that is not named here.")
        self.says.show()

    def clear(self) -> None:
        """Room for the next."""
        self.name.clear()
        self.says.hide()
        take_down(self._found)
        self.found_keys = {}

    def _line(self, name: str) -> QWidget:
        key = KeyButton("Forget")
        key.setAccessibleName(f"forget the printer {name}")
        key.clicked.connect(partial(self.forgotten.emit, name))
        self.forget_keys[name] = key
        line = QWidget()
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        row.addWidget(Words(name, bold=True), 1)
        row.addWidget(key)
        return line

    def _name(self) -> None:
        name = self.name.value()
        if name:
            self.named.emit(name)


def _name_of(text: str) -> str:
    if not text.strip():
        raise BadInput("Say what it is called.")
    if len(text.strip()) > _LONGEST:
        raise BadInput(f"A name of {len(text.strip())} letters fits no key.",
                       f"Call it something of {_LONGEST} letters at most.")
    return text.strip()
