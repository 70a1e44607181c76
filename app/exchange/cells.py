"""What a list from outside is made of: rows of cells that say something, or reckon."""

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

_SPACES = " \t\r\n\f\v\u00a0\u2007\u202f"
_UNSEEN = dict.fromkeys(map(ord, "\u00ad\u200b\u200e\u200f\u2060\ufeff"))
"""What comes along when words are copied from a page: of no width, and no part of them."""
_NOTHING = ("", "-", "–", "—")
_RECKONS = ("=", "+", "@", "-")


@dataclass(frozen=True, slots=True)
class Formula:
    """A cell that reckons, or could where it is opened; it is told and never taken."""

    text: str

    def __str__(self) -> str:
        return self.text


Cell = str | Decimal | date | datetime | Formula
"""Text, '' where nothing stands; numbers and days only where the file itself keeps them so."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row, numbered as a spreadsheet shows it."""

    number: int
    cells: tuple[Cell, ...]

    def __getitem__(self, place: int) -> Cell:
        """The cell at a place, empty where the row is shorter."""
        return self.cells[place] if place < len(self.cells) else ""


@dataclass(frozen=True, slots=True)
class Table:
    """All rows of a file that say something, and what was seen on the way."""

    rows: tuple[Row, ...]
    notes: tuple[str, ...] = ()


def read_cell(text: str) -> Cell:
    """What stands in a text cell, without the spaces round it; a lone dash says nothing."""
    words = text.translate(_UNSEEN).strip(_SPACES)
    if words in _NOTHING:
        return ""
    return Formula(words) if words.startswith(_RECKONS) else words
