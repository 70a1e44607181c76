"""A recall list on paper: the sums, what is still here to fetch, then whoever has some."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.documents.sheet import Column, Sheet, SheetFoot, SheetHead
from app.documents.typesetting import Face

_SUMS = (
    Column("", 0, 59),
    Column("skeins", 74, 14, "right", Face.CODE_BOLD),
    Column("grams", 92, 17, "right", Face.CODE),
)
_ROWS = (
    Column("who or where", 0, 29),
    Column("order", 31, 14),
    Column("number", 56, 9, "right", Face.CODE_BOLD),
    Column("marks", 58, 47, "left", Face.CODE),
    Column("of it", 107, 22),
)
_TICKS = {"here": ("fetched", "seen"), "out": ("told", "heard")}


@dataclass(frozen=True, slots=True)
class RecallRow:
    """A buyer or a place: order, how many, marks, and how many of them are hit."""

    who: str
    order: str
    count: int
    marks: str
    of_it: str


@dataclass(frozen=True, slots=True)
class RecallSheet:
    """All that a recall list says, ready to be set; `sums` are (words, skeins, grams)."""

    head: SheetHead
    foot: SheetFoot
    answers: tuple[tuple[str, str], ...]
    sums: tuple[tuple[str, int, str], ...]
    here: tuple[RecallRow, ...]
    out: tuple[RecallRow, ...]
    to_say: tuple[tuple[str, str], ...]


def recall_sheet_pdf(one: RecallSheet) -> bytes:
    """The list, on as many pages as it needs, with the journal's head at the foot of each."""
    pages = _set(one, pages=1).page
    return _set(one, pages).finish()


def _set(one: RecallSheet, pages: int) -> Sheet:
    sheet = Sheet(one.head, one.foot, pages)
    sheet.answers(one.answers)
    *some, together = [(words, f"{count:,}", grams) for words, count, grams in one.sums]
    sheet.table("It adds up", _SUMS, some, together)
    for title, place, rows in (("Still here", "here", one.here), ("Who has it", "out", one.out)):
        if rows:
            sheet.table(title, (*_ROWS, *_ticks(place)), [_cells(row) for row in rows])
    for title, words in one.to_say:
        sheet.words(title, words)
    return sheet


def _ticks(place: str) -> Sequence[Column]:
    """Columns to write in by hand."""
    first, second = _TICKS[place]
    return Column(first, 138, 9, "right"), Column(second, 148, 9, "right")


def _cells(row: RecallRow) -> tuple[str, ...]:
    return row.who, row.order, f"{row.count:,}", row.marks, row.of_it, "____", "____"
