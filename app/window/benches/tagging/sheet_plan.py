"""Where the tags of one printing will stand: from which cell, on how many sheets, what is left."""

from dataclasses import dataclass

from app.documents.stocks import Stock


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """So many tags from a first cell on; cells are counted row by row from 1."""

    stock: Stock
    first: int
    count: int

    @property
    def on_first(self) -> int:
        """The last cell that will be used on the first sheet."""
        return min(self.first + self.count - 1, self.stock.cells)

    @property
    def sheets(self) -> int:
        """How many sheets it takes."""
        return -(-(self.first - 1 + self.count) // self.stock.cells)

    @property
    def left(self) -> int:
        """Cells left free on the last sheet."""
        return -(self.first - 1 + self.count) % self.stock.cells

    @property
    def words(self) -> str:
        """'Cells 9 to 19 of 21, 2 left on the sheet.'"""
        if not self.count:
            return f"From cell {self.first} of {self.stock.cells}."
        if self.stock.cells == 1:
            return f"{self.count} from the roll, one at a time."
        left = f"{self.left} left" if self.left else "none left"
        if self.sheets == 1:
            return f"{_cells(self.first, self.on_first)} of {self.stock.cells}, {left}."
        more = "1 more sheet" if self.sheets == 2 else f"{self.sheets - 1} more sheets"
        return (
            f"{_cells(self.first, self.on_first)} of {self.stock.cells}, then {more}, "
            f"{left} on the last."
        )


def next_cell(stock: Stock, place: int) -> int:
    """The first free cell of a half-used sheet, from the place after its last tag."""
    return (place - 1) % stock.cells + 1


def _cells(first: int, last: int) -> str:
    return f"Cell {first}" if first == last else f"Cells {first} to {last}"
