"""Where the tags of one printing will stand: in which cells, on how many sheets, what is left."""

from collections.abc import Sequence, Set
from dataclasses import dataclass
from functools import cached_property

from app.calculations.listing import listing
from app.documents.stocks import Correction, Stock, in_runs


@dataclass(frozen=True)
class SheetPlan:
    """So many tags in the cells of a sheet that are not used; counted row by row from 1."""

    stock: Stock
    used: frozenset[int]
    count: int

    @cached_property
    def places(self) -> tuple[tuple[int, int], ...]:
        """(page, cell) of each tag; none where every cell of the sheet is used."""
        return self.stock.places(self.count, 1, self.used) if self.free else ()

    @property
    def free(self) -> tuple[int, ...]:
        """The cells of the sheet in hand that are to be had."""
        return tuple(n for n in range(1, self.stock.cells + 1) if n not in self.used)

    @property
    def on_first(self) -> tuple[int, ...]:
        """The cells that will be printed on the sheet in hand."""
        return tuple(cell for page, cell in self.places if page == 1)

    @property
    def sheets(self) -> int:
        """How many sheets it takes."""
        return self.places[-1][0] if self.places else 1

    @property
    def left(self) -> int:
        """Cells left free on the last sheet."""
        on_last = sum(page == self.sheets for page, _ in self.places)
        return (len(self.free) if self.sheets == 1 else self.stock.cells) - on_last

    @property
    def words(self) -> str:
        """'Cells 9 to 19 of 21, 2 left.'"""
        if not self.free:
            return "Every cell of this sheet is used."
        if self.stock.cells == 1:
            return self._one_a_page
        if not self.count:
            return f"From cell {self.free[0]} of {self.stock.cells}."
        left = f"{self.left} left" if self.left else "none left"
        if self.sheets == 1:
            return f"{_cells(self.on_first)} of {self.stock.cells}, {left}."
        more = "1 more sheet" if self.sheets == 2 else f"{self.sheets - 1} more sheets"
        return f"{_cells(self.on_first)} of {self.stock.cells}, then {more}, {left} on the last."

    @property
    def _one_a_page(self) -> str:
        """'5 from the roll, one at a time.'"""
        where = "from the roll, one at a time" if self.stock.layout == "roll" else "one on a page"
        return f"{self.count} {where}." if self.count else f"{where[0].upper()}{where[1:]}."


@dataclass(frozen=True, slots=True)
class Wanted:
    """Tags that are asked for: where they will stand, by which text, and why; `correction` is that
    of whichever printer prints this stock, and `printed` what the screen showed as printed of the
    pile: a second press asks for no more."""

    plan: SheetPlan
    version: int | None = None
    why: str = ""
    correction: Correction = (0.0, 0.0)
    printed: int | None = None


@dataclass(frozen=True, slots=True)
class SheetTold:
    """What was said of the sheet in the printer: its stock, whether it was turned to by hand, its
    used cells where they were tapped, and those the book had then."""

    stock: Stock
    turned: bool
    used: frozenset[int] | None
    kept: frozenset[int]


def used_cells(stock: Stock, kept: Set[int]) -> frozenset[int]:
    """The used cells of the sheet in hand, from those kept over all sheets of the last printing.

    Where all were used it is a new sheet.
    """
    before = (max(kept, default=1) - 1) // stock.cells * stock.cells
    on_last = frozenset(cell - before for cell in kept if cell > before)
    return on_last if len(on_last) < stock.cells else frozenset()


def _cells(cells: Sequence[int]) -> str:
    """'Cell 9', 'Cells 9 to 11 and 13'."""
    return f"Cell{'' if len(cells) == 1 else 's'} {listing(in_runs(cells))}"
