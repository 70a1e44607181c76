"""The counts of a pile as a sum that everybody can check."""

from collections.abc import Iterator

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.lookups.tagging import PileFacts
from app.window.look.look import Gap, Size, look
from app.window.parts.words import Digits, Words

_SIZE = 72  # at large text less than so much more: what they count is to be seen with them


class Figures(QWidget):
    """'11 counted = 3 tied on + 5 to tie on + 3 to print', and what is void beside it."""

    def __init__(self) -> None:
        super().__init__()
        self.counted, self.tied_on = Figure("counted"), Figure("tied on")
        self.waiting, self.to_print = Figure("to tie on"), Figure("to print")
        self.over, self.void = Figure("too many"), Figure("void")
        self._minus = _Sign("−")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        for widget in self._in_order():
            row.addWidget(widget)
        row.addStretch(1)
        row.addWidget(self.void)

    def show_facts(self, facts: PileFacts) -> None:
        """Show the counts; printed more than there are skeins, the sum says so."""
        over = max(0, facts.waiting - facts.left)
        for figure, number in (
            (self.counted, facts.counted),
            (self.tied_on, facts.applied),
            (self.waiting, facts.waiting),
            (self.to_print, facts.to_print),
            (self.over, over),
            (self.void, facts.void),
        ):
            figure.show_number(number)
        for widget in (self._minus, self.over):
            widget.setVisible(bool(over))
        self.setAccessibleName(
            f"{facts.counted} counted, {facts.applied} tied on, {facts.waiting} to tie on, "
            f"{facts.to_print} to print, {facts.void} void"
        )

    def _in_order(self) -> Iterator[QWidget]:
        yield self.counted
        for sign, figure in (("=", self.tied_on), ("+", self.waiting), ("+", self.to_print)):
            yield _Sign(sign)
            yield figure
        yield self._minus
        yield self.over


class Figure(QWidget):
    """A number and what it counts."""

    def __init__(self, counts: str) -> None:
        super().__init__()
        self.number = 0
        self._digits = Digits("0", _SIZE / look().text ** 0.75)
        _over(self, self._digits, counts)

    def show_number(self, number: int) -> None:
        """Show another number."""
        self.number = number
        self._digits.show_number(str(number))


class _Sign(QWidget):
    """A sign between two figures, at the middle of their height."""

    def __init__(self, sign: str) -> None:
        super().__init__()
        _over(self, Digits(sign, Size.TITLE), "")


def _over(widget: QWidget, digits: Digits, words: str) -> None:
    column = QVBoxLayout(widget)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(Gap.HAIR)
    column.addWidget(digits, 1)
    column.addWidget(Words(words, Size.SMALL, bold=True))
