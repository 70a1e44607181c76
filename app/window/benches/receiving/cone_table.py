"""Cones in a table, with the columns that these cones fill."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import Kind, numbered
from app.exchange.delivery_note import NOT_STATED
from app.window.benches.receiving.door_words import g
from app.window.parts.thing_table import Head, ThingTable
from app.work.receiving import ConeIn


@dataclass(frozen=True, slots=True)
class Listed:
    """A cone of a list; `place` is where it stands, if that is worth saying."""

    cone: ConeIn
    off: bool
    base: str = ""
    place: str = ""


class ConeTable(QWidget):
    """A table that is made anew for each list; `opened` gives the row."""

    opened = Signal(int)

    def __init__(self, name: str, *, opens: bool = False, most_rows: int = 9) -> None:
        super().__init__()
        self._name, self._opens, self._most = name, opens, most_rows
        self.table: ThingTable | None = None
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)

    def show_cones(self, cones: Sequence[Listed]) -> None:
        """Show all of them; none hides the table."""
        if self.table is not None:
            self.table.hide()
            self.table.deleteLater()
        columns = _columns(cones)
        self.table = ThingTable([head for head, _ in columns], self._name, opens=self._opens,
                                most_rows=self._most)
        self.table.opened.connect(self.opened)
        self._column.addWidget(self.table)
        self.table.show_rows([[cell(one) for _, cell in columns] for one in cones])
        self.setVisible(bool(cones))


Cell = Callable[[Listed], str]


def _columns(cones: Sequence[Listed]) -> list[tuple[Head, Cell]]:
    columns: list[tuple[bool, Head, Cell]] = [
        (any(one.place for one in cones), Head("cone", right=True), lambda one: one.place),
        (any(one.cone.number for one in cones), Head("number", codes=True), _code),
        (len({one.base for one in cones}) > 1, Head("base"), lambda one: one.base),
        (True, Head("batch"), lambda one: one.cone.batch or NOT_STATED),
        (True, Head("gross", right=True), lambda one: g(one.cone.gross_mg)),
        (True, Head("centre", right=True), lambda one: g(one.cone.tare_mg)),
        (True, Head("net", right=True), lambda one: g(one.cone.gross_mg - one.cone.tare_mg)),
        (any(one.cone.wrap_mg for one in cones), Head("100 m", right=True),
         lambda one: g(one.cone.wrap_mg) if one.cone.wrap_mg else ""),
        (any(one.cone.moisture_permille for one in cones), Head("moisture", right=True), _moist),
        (any(one.off for one in cones), Head(""), lambda one: "look again" if one.off else ""),
    ]
    return [(head, cell) for filled, head, cell in columns if filled]


def _code(one: Listed) -> str:
    return numbered(Kind.CONE, one.cone.number).grouped if one.cone.number else ""


def _moist(one: Listed) -> str:
    moisture = one.cone.moisture_permille
    return f"{moisture / 10:g} %" if moisture else ""
