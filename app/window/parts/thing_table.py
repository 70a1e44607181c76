"""A short table of a few things, all of it in sight."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from app.window.parts.words import SECOND, Words
from app.window.tables.quiet_view import QuietView
from app.window.tables.record_table import Column, RecordTable

Cells = Sequence[str]


@dataclass(frozen=True, slots=True)
class Head:
    """What stands over a column: numbers keep to the right, codes are set as codes.

    The cells of a swatch column are colours (`#1B856E`) or empty.
    """

    title: str
    right: bool = False
    codes: bool = False
    swatch: bool = False


class ThingTable(QWidget):
    """Rows of words; with `opens` a click or Enter opens a row."""

    opened = Signal(int)

    def __init__(
        self,
        heads: Sequence[Head | str],
        name: str = "",
        none: str = "",
        *,
        opens: bool = False,
        most_rows: int = 12,
    ) -> None:
        super().__init__()
        self._rows: list[Cells] = []
        self._most = most_rows
        self.view = QuietView(name, self, opens=opens)
        self.model = RecordTable(
            [
                _column(n, Head(head) if isinstance(head, str) else head)
                for n, head in enumerate(heads)
            ],
            lambda numbers: {n: self._rows[n] for n in numbers},
            self,
        )
        self.view.setModel(self.model)
        self.view.opened.connect(self.opened)
        self._none = Words(none, ink=SECOND)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.view)
        column.addWidget(self._none)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.show_rows([])

    def show_rows(self, rows: Sequence[Cells]) -> None:
        """Replace all rows."""
        self._rows = list(rows)
        self.model.show_keys(range(len(rows)))
        self.view.setVisible(bool(rows))
        self._none.setVisible(not rows and bool(self._none.text()))
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self._fit()

    def _fit(self) -> None:
        self.view.fit_columns()
        rows = min(len(self._rows), self._most)
        all_in_sight = rows == len(self._rows)
        self.view.setVerticalScrollBarPolicy(
            Qt.ScrollBarPolicy.ScrollBarAlwaysOff
            if all_in_sight
            else Qt.ScrollBarPolicy.ScrollBarAsNeeded
        )
        head = self.view.horizontalHeader().sizeHint().height()
        self.view.setFixedHeight(head + rows * self.view.row_height() + 4)


def _column(number: int, head: Head) -> Column[Cells]:
    def cell(cells: Cells) -> str:
        return cells[number]

    def no_words(_cells: Cells) -> str:
        return ""

    column: Column[Cells] = Column(
        head.title,
        no_words if head.swatch else cell,
        right=head.right,
        codes=head.codes,
        swatch=cell if head.swatch else None,
    )
    return column
