"""The kit patterns of the studio, with how many of each are possible now."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from app.lookups.kit_patterns import KitsNow
from app.window.look.icons import Icon
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.picture import Picture
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


class PatternList(Card):
    """`chosen` gives the number of a pattern in the book."""

    chosen = Signal(int)
    new = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("kit patterns")
        self.kits: Sequence[KitsNow] = ()
        self.at = 0
        self.title, self.told = Words("", Size.TITLE, bold=True), Words(ink=SECOND)
        self.table = ThingTable(
            ("kit", Head("possible", right=True), "the shortest colour"), "kit patterns",
            opens=True, most_rows=9)
        self.open = KeyButton("", "Enter", strong=True)
        new, leave = KeyButton("Write a pattern", "F4"), KeyButton("Leave it", "F8")
        self.table.opened.connect(self._choose)
        self.open.clicked.connect(lambda: self._choose(self.at))
        new.clicked.connect(self.new)
        leave.clicked.connect(self.left)
        self.add_row(Picture(Icon.KIT), self.title, None)
        self.add(self.told, self.table)
        self.add_last(Actions(self.open, new, leave))

    def show_kits(self, found: Sequence[KitsNow]) -> None:
        """Show what the shelves allow of each."""
        self.kits = found
        self.at = min(self.at, max(0, len(found) - 1))
        self.title.setText("Kits" if found else "No kit pattern is written yet.")
        self.told.setText(
            "Choose one with ↑ ↓ and Enter, or scan COUNT and its row. A kit’s bag is scanned to "
            "open it, or to print its label." if found else
            "A pattern says what goes into a bag: A the main colour, B, C and so on. Write one: "
            "F4.")
        self.table.show_rows([_row(one) for one in found])
        self._mark()

    def walk(self, step: int) -> None:
        """The pattern above or below is meant."""
        if self.kits:
            self.at = (self.at + step) % len(self.kits)
            self._mark()

    def choose(self, number: int) -> None:
        """The row with this figure, from 1."""
        self._choose(number - 1)

    def _choose(self, row: int) -> None:
        if 0 <= row < len(self.kits):
            self.chosen.emit(self.kits[row].pattern.id)

    def _mark(self) -> None:
        if self.kits:
            self.table.view.selectRow(self.at)
            self.open.say(f"Make {self.kits[self.at].pattern.name}")
        self.open.setVisible(bool(self.kits))


def _row(one: KitsNow) -> tuple[str, ...]:
    names = {place.letter: place.name for place in one.pattern.places}
    return (one.pattern.name, str(one.possible),
            ", ".join(f"{letter} {names[letter]}" for letter in one.shortest))
