"""The stocks tags are printed on, told by their geometry: sheets of labels or card, and rolls."""

import tomllib
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import chain, count, islice
from typing import Any, Literal

from app import paths
from app.documents.boxes import Box
from app.documents.tag_choices import PLAIN, Choices
from app.problems import NotFound, Refused

LARGEST_CORRECTION_MM = 5.0
_ROUNDING_MM = 0.01
_LARGEST_PAGE_MM = 450.0  # a little over A3: a larger one cannot be drawn dot by dot and proven

LayoutName = Literal["swing", "small", "card", "roll", "band"]
Correction = tuple[float, float]  # mm to the right and down, of one printer with one stock


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """One sheet of tags: its page, its cells counted row by row from 1, and its printer's dots.

    All lengths in mm. `edge` is what the printer cannot reach; `cut` says that the tags are cut
    from plain card, so that the sheet shows where. With `long_edge_first` the sheet is fed turned
    a quarter to the left; its cells keep their numbers and their places on the sheet.
    """

    name: str
    title: str
    layout: LayoutName
    page: tuple[float, float]
    tag: tuple[float, float]
    across: int
    down: int
    first: tuple[float, float]
    step: tuple[float, float]
    dpi: int = 300
    edge: float = 4.0
    cut: bool = False
    long_edge_first: bool = False
    choices: Choices = PLAIN

    def __post_init__(self) -> None:
        if self.across < 1 or self.down < 1 or min(self.tag) <= 0 or self.dpi < 100:
            raise self._impossible("it needs at least one cell, a size and a printer's dots")
        if max(self.page) > _LARGEST_PAGE_MM:
            raise self._impossible(f"its page is longer than {_LARGEST_PAGE_MM:.0f} mm")
        for axis, cells in enumerate((self.across, self.down)):
            if cells > 1 and self.step[axis] < self.tag[axis] - _ROUNDING_MM:
                raise self._impossible("its cells overlap")
            last = self.first[axis] + (cells - 1) * self.step[axis] + self.tag[axis]
            if self.first[axis] < 0 or last > self.page[axis] + _ROUNDING_MM:
                raise self._impossible("its cells do not fit its page")

    @property
    def cells(self) -> int:
        """How many tags one sheet holds."""
        return self.across * self.down

    def cell(self, number: int, correction: Correction = (0.0, 0.0)) -> Box:
        """Where a cell lies on the page for a printer with this correction."""
        if not 1 <= number <= self.cells:
            raise Refused(
                f"{self.title} has no cell {number}; nothing was printed.",
                f"Choose a cell from 1 to {self.cells}.",
            )
        if max(map(abs, correction)) > LARGEST_CORRECTION_MM:
            raise Refused(
                f"A correction of more than {LARGEST_CORRECTION_MM:.0f} mm is not a printer's habit"
                " but a wrong stock or a scaled page; nothing was printed.",
                "Print the grid again at 100 % and read the two numbers.",
            )
        row, column = divmod(number - 1, self.across)
        left = self.first[0] + column * self.step[0] + correction[0]
        top = self.first[1] + row * self.step[1] + correction[1]
        return Box(left, top, left + self.tag[0], top + self.tag[1])

    def free_cells(self, first_cell: int = 1, used: Collection[int] = ()) -> tuple[int, ...]:
        """The cells of a sheet that are still to be had, from the first on."""
        for cell in (first_cell, *used):
            self.cell(cell)
        free = tuple(cell for cell in range(first_cell, self.cells + 1) if cell not in used)
        if not free:
            raise Refused(
                "Every cell of this sheet is used; nothing was printed.",
                "Put in a new sheet and begin at its first cell.",
            )
        return free

    def places(
        self, wanted: int, first_cell: int = 1, used: Collection[int] = ()
    ) -> tuple[tuple[int, int], ...]:
        """So many places as (page, cell): what is free on the first sheet, then whole sheets."""
        first = ((1, cell) for cell in self.free_cells(first_cell, used))
        more = ((page, cell) for page in count(2) for cell in range(1, self.cells + 1))
        return tuple(islice(chain(first, more), wanted))

    def on_page(self, box: Box) -> Box:
        """Where a box of the sheet lies on the page as it is fed."""
        return box.turned(self.page[0]) if self.long_edge_first else box

    def _impossible(self, why: str) -> Refused:
        return Refused(
            f"{self.title} cannot be used as a stock: {why}.",
            "Measure the sheet again and correct its numbers.",
        )


def in_runs(cells: Sequence[int]) -> list[str]:
    """Cells in their order as words for each run of them: `3`, `5 to 9`."""
    runs: list[list[int]] = []
    for cell in cells:
        if runs and runs[-1][-1] == cell - 1:
            runs[-1].append(cell)
        else:
            runs.append([cell])
    return [f"{run[0]} to {run[-1]}" if len(run) > 1 else f"{run[0]}" for run in runs]


def after_grid(correction: Correction, read: Correction) -> Correction:
    """The new correction, when the grid was printed with this one and these two numbers were read
    on its scales, with their signs: across, then down, in mm."""
    return correction[0] + read[0], correction[1] + read[1]


@cache
def stocks() -> tuple[Stock, ...]:
    """All stocks that are described, in the order of their names."""
    folder = paths.RESOURCES / "stocks"
    return tuple(_stock(path.stem, path.read_bytes()) for path in sorted(folder.glob("*.toml")))


def stock(name: str) -> Stock:
    """The stock of this name."""
    for one in stocks():
        if one.name == name:
            return one
    raise NotFound(f"No stock is called {name}.", "Choose one of the list, or describe it.")


def _stock(name: str, description: bytes) -> Stock:
    read: dict[str, Any] = tomllib.loads(description.decode())
    for key in ("page", "tag", "first", "step"):
        read[key] = tuple(map(float, read[key]))
    return Stock(name=name, **read)
