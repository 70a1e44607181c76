"""Row after row of a list: cells by the fields they stand for, and what is wrong with them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from app.exchange.cells import Cell, Formula, Row
from app.exchange.columns import ColumnMatch

_SHOWN = 80  # characters of what stood in a cell


@dataclass(frozen=True, slots=True)
class RowTrouble:
    """Why a row was not taken: its number, the column, what is wrong, and what stood there."""

    row: int
    column: str
    what: str
    kept: str

    @property
    def sentence(self) -> str:
        """'Row 7, Gross (g): it is no number. It says: 12x'."""
        kept = self.kept if len(self.kept) <= _SHOWN else f"{self.kept[:_SHOWN]}…"
        said = f" It says: {kept}" if kept else ""
        return f"Row {self.row}, {self.column}: {self.what}{said}"


@dataclass(slots=True, kw_only=True)
class RowReader:
    """Reads fields of a row and gathers what is wrong.

    `given` is said once, for every row that does not say it itself.
    """

    match: ColumnMatch
    given: Mapping[str, Cell] = field(default_factory=dict)
    troubles: list[RowTrouble] = field(default_factory=list)

    def cell(self, row: Row, name: str) -> Cell:
        """What stands there, '' where nothing does; what reckons is trouble."""
        place = self.match.places.get(name)
        cell = row[place] if place is not None else ""
        cell = self.given.get(name, "") if cell == "" else cell
        if isinstance(cell, Formula):
            self.trouble(row, name, "it reckons, or begins as a formula does: only values "
                                    "are taken.", cell)
            return ""
        return cell

    def trouble(self, row: Row, name: str, what: str, kept: Cell = "") -> None:
        """Something is wrong with this field of the row."""
        place = self.match.places.get(name)
        column = self.match.kind.fields[name] if place is None else self.match.headings[place]
        self.troubles.append(RowTrouble(row.number, column, what, str(kept)))

    def words(self, row: Row, name: str) -> str:
        """What stands there as text."""
        cell = self.cell(row, name)
        return f"{cell.normalize():f}" if isinstance(cell, Decimal) else str(cell)

    def needed(self, row: Row, name: str) -> str:
        """The same; nothing at all is trouble."""
        before = len(self.troubles)
        words = self.words(row, name)
        if not words and len(self.troubles) == before:
            self.trouble(row, name, "nothing stands there.")
        return words
