"""A card on which one row after the other is written, until nothing more is."""

from collections.abc import Sequence
from typing import Any, Generic, TypeVar

from PySide6.QtCore import Signal

from app.window.parts.card import Card
from app.window.parts.fields import CountField, Field
from app.window.parts.key_button import KeyButton

R = TypeVar("R")


class OneByOne(Card, Generic[R]):
    """The rows so far, and the fields of the next: what it is, how many, and a third."""

    left = Signal()

    def __init__(self, name: str, row: str, what: Field[Any], third: Field[Any]) -> None:
        """`row` is what a row is called."""
        super().__init__(in_hand=True)
        self.setAccessibleName(name)
        self.rows: list[R] = []
        self._row, self._what, self.count = row, what, CountField("How many")
        self.fields: tuple[Field[Any], ...] = (what, self.count, third)
        self.back = KeyButton(f"Change the last {row}", "F6")
        self.leave = KeyButton("Leave it", "F8")
        self.back.clicked.connect(self._take_back)
        self.leave.clicked.connect(self.left)

    def read_row(self) -> R | None:
        """What stands in the fields; none where it cannot be read, and that has the focus."""
        raise NotImplementedError

    def as_written(self, row: R) -> Sequence[str]:
        """A row as it stood in the fields."""
        raise NotImplementedError

    def show_rows(self) -> None:
        """Other rows are written now."""
        raise NotImplementedError

    def keep(self) -> None:
        """All that is written is the whole."""
        raise NotImplementedError

    def go_on(self) -> None:
        """The next row; or the whole, where nothing more is written."""
        if self.rows and not self._begun:
            self.keep()
        else:
            self._write_row()

    def is_whole(self) -> bool:
        """Whether there are rows, that which was begun among them."""
        return bool(self.rows and not self._begun) or self._write_row()

    def how_many(self) -> int:
        """None is refused: then the number has the focus."""
        count = self.count.value()
        if count == 0:
            self.count.complain("None cannot be wanted. Say how many.")
        if not count:
            self.count.line.setFocus()
        return count or 0

    @property
    def _begun(self) -> bool:
        return bool(self._what.line.text().strip())

    def _write_row(self) -> bool:
        row = self.read_row()
        if row is None:
            return False
        self.rows.append(row)
        for field in self.fields:
            field.clear()
        self.show_rows()
        self._what.line.setFocus()
        return True

    def _take_back(self) -> None:
        """The last row stands in the fields once more; what is being written there is kept."""
        if self._begun:
            self._what.complain(f"Add this {self._row} first, or clear it.")
        else:
            for field, text in zip(self.fields, self.as_written(self.rows.pop()), strict=True):
                field.line.setText(text)
            self.show_rows()
        self._what.line.setFocus()
