"""The lines of a weigh-out below the balance: what was taken, what is next, what is left."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import clock_words
from app.lookups.at_balance import AtBalance, Wanted
from app.window.benches.weighing.weigh_words import under
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.words import SECOND, Words


class LinesCard(Card):
    """Every line of the recipe in its order of pouring."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("lines")
        self.lines: list[str] = []
        self._row: QWidget | None = None

    def show_lines(self, now: AtBalance, here: int | None) -> None:
        """Show them all; `here` is the one at the balance or the next to fetch."""
        if self._row is not None:
            self._row.hide()
            self._row.deleteLater()
        self.lines = [f"{one.substance}: {_second(now, one, here)}" for one in now.wanted]
        self._row = Actions(*(_line(now, one, here) for one in now.wanted))
        self.add(self._row)
        self.setVisible(bool(now.wanted))


def _line(now: AtBalance, one: Wanted, here: int | None) -> QWidget:
    part = QWidget()
    column = QVBoxLayout(part)
    column.setContentsMargins(0, 0, Gap.PART, 0)
    column.setSpacing(0)
    column.addWidget(Words(one.substance, bold=True, wrap=False))
    column.addWidget(Words(_second(now, one, here), Size.SMALL, ink=SECOND, wrap=False))
    return part


def _second(now: AtBalance, one: Wanted, here: int | None) -> str:
    if one.component == here and not one.is_taken:
        return "now"
    taken = [line.taken for line in now.out.lines
             if line.component == one.component and line.taken]
    at = f" {clock_words(taken[-1])}" if one.is_taken and taken else ""
    return under(one, now.balance) + at
