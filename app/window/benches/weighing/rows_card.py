"""A list that is written a row at a time: the fields of one row, and the rows there are."""

from abc import abstractmethod
from collections.abc import Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import Signal

from app.window.parts.card import Card
from app.window.parts.fields import Field
from app.window.parts.thing_table import Head, ThingTable

R = TypeVar("R")


class RowsCard(Card, Generic[R]):
    """Enter lets the row in the fields stand; a row that is opened comes back into them.

    Of two rows with the same first field the later takes the place of the one before.
    """

    changed = Signal()

    def __init__(self, title: str, heads: Sequence[Head | str], name: str, none: str,
                 *fields: Field[str]) -> None:
        super().__init__(title, in_hand=True)
        self.rows: list[R] = []
        self.fields = fields
        self.table = ThingTable(tuple(heads), name, none=none, opens=True)
        self.table.opened.connect(self._open)

    @abstractmethod
    def read(self) -> R:
        """The row that stands in the fields; raises BadInput with what is wrong."""

    @abstractmethod
    def words(self, row: R) -> tuple[str, ...]:
        """A row as its fields are written."""

    def show_rows(self, rows: Sequence[R]) -> None:
        """Begin with these."""
        self.rows = list(rows)
        self._say()

    def stand(self) -> None:
        """The row in the fields stands."""
        new = self.read()
        first = self._named(self.words(new)[0])
        same = [n for n, row in enumerate(self.rows) if self._named(self.words(row)[0]) == first]
        if same:
            self.rows[same[0]] = new
        else:
            self.rows.append(new)
        self._clear()

    def take_out(self) -> None:
        """The row that stands in the fields goes."""
        first = self._named(self.fields[0].line.text())
        self.rows = [row for row in self.rows if self._named(self.words(row)[0]) != first]
        self._clear()

    def _named(self, words: str) -> str:
        return " ".join(words.casefold().split())

    def _clear(self) -> None:
        for field in self.fields:
            field.clear()
        self.fields[0].setFocus()
        self._say()

    def _say(self) -> None:
        self.table.show_rows([self.words(row) for row in self.rows])
        self.changed.emit()

    def _open(self, number: int) -> None:
        for field, words in zip(self.fields, self.words(self.rows[number]), strict=True):
            field.line.setText(words)
        self.fields[-1].setFocus()
