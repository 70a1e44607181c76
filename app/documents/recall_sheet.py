"""A recall list on paper: the sums, what is still here to fetch, then whoever has some."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.documents.sheet import Column, Sheet, SheetFoot, SheetHead
from app.documents.typesetting import Face

_SUMS = (
    Column("", 0, 59),
    Column("skeins", 74, 14, "right", Face.CODE_BOLD),
    Column("grams", 92, 17, "right", Face.CODE),
)
_ROWS = (
    Column("who or where", 0, 32),
    Column("order", 34, 16),
    Column("number", 61, 9, "right", Face.CODE_BOLD),
    Column("marks", 64, 40, "left", Face.CODE),
    Column("of it", 106, 22),
)
_MARKS, _COMMA = 12, ", "
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
            sheet.table(title, (*_ROWS, *_ticks(place)),
                        [cells for row in rows for cells in _cells(row)])
    for title, words in one.to_say:
        sheet.words(title, words)
    return sheet


def _ticks(place: str) -> Sequence[Column]:
    """Columns to write in by hand."""
    first, second = _TICKS[place]
    return Column(first, 138, 9, "right"), Column(second, 148, 9, "right")


def _cells(row: RecallRow) -> Iterator[tuple[str, ...]]:
    """One row, and where it has more marks than go well on a page, rows that go on with them."""
    marks = row.marks.split(_COMMA)
    some = [_COMMA.join(marks[n:n + _MARKS]) for n in range(0, len(marks), _MARKS)]
    yield row.who, row.order, f"{row.count:,}", some[0], row.of_it, "____", "____"
    for more in some[1:]:
        yield "", "", "", more, "", "", ""
