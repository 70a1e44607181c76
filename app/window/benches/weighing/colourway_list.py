"""The colourway that is weighed for: a part of its name and Enter, or COUNT for its number."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from app.lookups.pots import Recipe
from app.window.look.look import Gap
from app.window.parts.thing_table import Head, ThingTable

SHOWN = 5


class ColourwayList(QWidget):
    """`chosen` gives the Recipe, which is the newest version."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.recipes: Sequence[Recipe] = ()
        self.fitting: list[Recipe] = []
        self.line = QLineEdit()
        self.line.setPlaceholderText("colourway: type a part of its name, Enter takes the first")
        self.line.setAccessibleName("colourway, a part of its name")
        self.line.textChanged.connect(self._show)
        self.line.returnPressed.connect(self.choose_first)
        self.table = ThingTable(
            (Head("", right=True), Head("", swatch=True), "colourway", Head("version", right=True)),
            "colourways", none="No colourway is called so: write its recipe with F6.", opens=True,
            most_rows=SHOWN)
        self.table.opened.connect(lambda row: self.choose(row + 1))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.SMALL)
        column.addWidget(self.line)
        column.addWidget(self.table)

    def show_recipes(self, recipes: Sequence[Recipe]) -> None:
        """All colourways, by name."""
        self.recipes = recipes
        self._show()

    def choose(self, number: int) -> bool:
        """The one with this number; False where there is none."""
        if not 0 < number <= len(self.fitting):
            return False
        self.chosen.emit(self.fitting[number - 1])
        return True

    def choose_first(self) -> bool:
        """Enter in the line chooses the first that fits; False where nothing is written there."""
        return self.line.hasFocus() and bool(self.line.text()) and self.choose(1)

    def begin(self, letter: str) -> None:
        """A person begins to type a name."""
        self.line.setFocus()
        self.line.setText(letter)

    def _show(self) -> None:
        wanted = self.line.text().casefold().split()
        self.fitting = [one for one in self.recipes
                        if all(word in one.colourway.casefold() for word in wanted)]
        self.table.show_rows([(str(n), one.swatch or "", one.colourway, str(one.number))
                              for n, one in enumerate(self.fitting, 1)])
