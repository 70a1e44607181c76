"""A table model over a long list of keys; rows are fetched a window at a time."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

Row = TypeVar("Row")
Index = QModelIndex | QPersistentModelIndex

WINDOW = 200  # rows fetched at once
_KEPT = 20  # windows remembered

COLUMN_ROLE = Qt.ItemDataRole.UserRole + 1  # the Column itself
SWATCH_ROLE = Qt.ItemDataRole.UserRole + 2  # the colour to show, if any

_TEXT = int(Qt.ItemDataRole.DisplayRole)
_TIP = int(Qt.ItemDataRole.ToolTipRole)
_ALIGNMENT = int(Qt.ItemDataRole.TextAlignmentRole)
_NO_INDEX = QModelIndex()


@dataclass(frozen=True, slots=True)
class Column(Generic[Row]):
    """One column: what stands on top, and how to get its text from a row.

    `right` is for numbers, `codes` for codes; `swatch` gives a colour (`#1B856E`) or nothing.
    """

    title: str
    text: Callable[[Row], str]
    right: bool = False
    codes: bool = False
    swatch: Callable[[Row], str | None] | None = None


class RecordTable(QAbstractTableModel, Generic[Row]):
    """Shows the rows of `keys`; `fetch` gives the rows of one window of them."""

    def __init__(
        self,
        columns: Sequence[Column[Row]],
        fetch: Callable[[Sequence[int]], dict[int, Row]],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._columns, self._fetch = columns, fetch
        self._keys: Sequence[int] = ()
        self._windows: dict[int, dict[int, Row]] = {}

    def show_keys(self, keys: Sequence[int]) -> None:
        """Replace the whole list."""
        self.beginResetModel()
        self._keys, self._windows = keys, {}
        self.endResetModel()

    def refresh(self, keys: set[int]) -> None:
        """Some rows changed: forget and repaint only the windows that hold them."""
        for number in [n for n, rows in self._windows.items() if keys & rows.keys()]:
            del self._windows[number]
            top = number * WINDOW
            bottom = min(top + WINDOW, len(self._keys)) - 1
            self.dataChanged.emit(self.index(top, 0), self.index(bottom, len(self._columns) - 1))

    def row_at(self, row: int) -> Row | None:
        """What stands in this row; nothing if it has gone meanwhile."""
        number = row // WINDOW
        if number not in self._windows:
            while len(self._windows) >= _KEPT:
                del self._windows[next(iter(self._windows))]
            keys = self._keys[number * WINDOW : (number + 1) * WINDOW]
            self._windows[number] = self._fetch(keys)
        return self._windows[number].get(self._keys[row])

    def rowCount(self, parent: Index = _NO_INDEX) -> int:
        return 0 if parent.isValid() else len(self._keys)

    def columnCount(self, parent: Index = _NO_INDEX) -> int:
        return 0 if parent.isValid() else len(self._columns)

    def data(self, index: Index, role: int = _TEXT) -> Any:
        if not index.isValid() or role not in (_TEXT, _TIP, _ALIGNMENT, COLUMN_ROLE, SWATCH_ROLE):
            return None
        column = self._columns[index.column()]
        if role == _ALIGNMENT:
            return _side(column) | Qt.AlignmentFlag.AlignVCenter
        if role == COLUMN_ROLE:
            return column
        row = self.row_at(index.row())
        if role == SWATCH_ROLE:
            return None if row is None or column.swatch is None else column.swatch(row)
        return "" if row is None else column.text(row)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = _TEXT) -> Any:
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == _TEXT:
            return self._columns[section].title
        if role == _ALIGNMENT:
            return _side(self._columns[section]) | Qt.AlignmentFlag.AlignVCenter
        return None


def _side(column: Column[Any]) -> Qt.AlignmentFlag:
    return Qt.AlignmentFlag.AlignRight if column.right else Qt.AlignmentFlag.AlignLeft
