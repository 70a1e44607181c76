"""The frame of every A4 sheet: head, hanging titles, tables that run over pages, the book's foot.

Who, what and when are found in the same place on every sheet. Edges in mm: left 20 (filing
holes), body 48, right 196. Unlike a tag, a sheet never refuses words: it breaks them, and a letter
it cannot print stands as its number.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.calculations import codes
from app.documents.paper import Hang, Paper, Pen
from app.documents.proof import Due, prove
from app.documents.typesetting import Face, Type, break_lines, spelled_out, width_mm

LEFT, BODY, RIGHT = 20.0, 48.0, 196.0
FLOOR = 278.0
NEXT_TOP = 30.0  # where a second page begins

_DPI = 300
_HEADING, _CELL, _BOLD = Type(8), Type(8.5), Type(8.5, Face.BOLD)
_LEAD = 4.2
_HEADINGS = _LEAD + 0.5  # of a table, to its first row
_STAYS = 12  # lines that are kept on one page
_FOOT_LINE, _FOOT_LEAD = 289.5, 4.0
_LINE = Pen(0.15)


@dataclass(frozen=True, slots=True)
class SheetHead:
    """What paper it is, of which thing: its name, a bold line, a plain line, its own code."""

    kind: str
    title: str
    subtitle: str = ""
    detail: str = ""
    code: str = ""


@dataclass(frozen=True, slots=True)
class SheetFoot:
    """What bears witness: the journal's head with its entry, and who printed it when."""

    printed: str
    journal_head: str = ""
    entry: int | None = None


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: its heading and place, in mm from the body's left.

    It hangs from `at` to the right, or ends there; its words are broken to its room.
    """

    heading: str
    at: float
    room: float
    hang: Hang = "left"
    face: Face = Face.WORDS


@dataclass(frozen=True, slots=True)
class _Piece:
    """The cells of a row in lines, or so many lines of a long one as stay together."""

    cells: tuple[tuple[Column, Type, Sequence[str]], ...]
    bold: bool

    @property
    def height(self) -> float:
        return _LEAD * max(len(lines) for _, _, lines in self.cells)


class Sheet:
    """A sheet in the making: what is added stands under what was added before."""

    def __init__(self, head: SheetHead, foot: SheetFoot, pages: int) -> None:
        """Begins the first of so many pages; ask `page` at the end how many there were."""
        self.head, self.foot, self.pages, self.page = head, foot, pages, 1
        self.paper = Paper(f"{head.kind} {head.title}".strip(), dpi=_DPI)
        self._witness = self._foot_lines()
        self._draw_foot()
        self.y = self._draw_first_head() + 11

    @property
    def room_below(self) -> float:
        """How much room there is below, in mm."""
        return FLOOR - _FOOT_LEAD * (len(self._witness) - 1) - self.y

    def keep_together(self, height: float) -> None:
        """Goes on to the next page when this one has less room than that."""
        if height > self.room_below:
            self.paper.new_page()
            self.page += 1
            self._draw_foot()
            self._draw_code(f"{self.head.kind}, {self.head.title}")
            self.y = NEXT_TOP

    def answers(self, rows: Sequence[tuple[str, str]]) -> None:
        """What an owner wants to know, in sentences, before anything else."""
        for label, words in rows:
            self._lines(LEFT, words, Type(12), 5.8, (label, BODY))
        self.y += 3

    def words(self, title: str, sentence: str) -> None:
        """A sentence in the body with its title hanging at the left."""
        self._lines(LEFT, sentence, _CELL, _LEAD, (title, BODY))
        self.y += 3

    def table(
        self,
        title: str,
        columns: Sequence[Column],
        rows: Sequence[Sequence[str]],
        total: Sequence[str] = (),
    ) -> None:
        """Rows under their headings, said again on every page; a total under its line.

        A short table stays whole, and so do the last row and its total; a long row is parted.
        """
        pieces = [piece for row in rows for piece in _pieces(columns, row, bold=False)]
        ends = len(pieces) - 1
        pieces += _pieces(columns, total, bold=True) if total else ()
        heights = [piece.height for piece in pieces]
        whole = sum(heights)
        self.keep_together(_HEADINGS + (whole if whole <= _STAYS * _LEAD else heights[0]))
        self._draw_headings(title, columns)
        for n, piece in enumerate(pieces):
            page = self.page
            self.keep_together(sum(heights[n:]) if n == ends else piece.height)
            if self.page != page:
                self._draw_headings(f"{title}, continued" if title else "", columns)
            self._draw_piece(piece)
        self.y += 5

    def finish(self) -> bytes:
        """The sheet's PDF, its codes read back."""
        pdf = self.paper.pdf("Shorten the longest words; the record itself is whole.")
        due = [[Due(text, box) for text, box in page] for page in self.paper.codes]
        prove(pdf, due, _DPI)
        return pdf

    def _lines(
        self, x: float, words: str, kind: Type, lead: float, beside: tuple[str, float]
    ) -> None:
        label, body = beside
        labels = break_lines(spelled_out(label), _BOLD, body - x - 2, anywhere=True)
        lines = break_lines(spelled_out(words), kind, RIGHT - body, anywhere=True)
        for n in range(max(len(labels), len(lines))):
            self.keep_together(lead)
            self.paper.text(x, self.y, labels[n] if n < len(labels) else "", _BOLD)
            self.paper.text(body, self.y, lines[n] if n < len(lines) else "", kind)
            self.y += lead

    def _draw_headings(self, title: str, columns: Sequence[Column]) -> None:
        self.paper.lines(LEFT, self.y, title, _BOLD, BODY - LEFT - 2, _LEAD)
        for column in columns:
            self.paper.text(BODY + column.at, self.y, column.heading, _HEADING, column.hang)
        self.paper.rule((BODY, self.y + 1.2), (RIGHT, self.y + 1.2), _LINE)
        self.y += _HEADINGS

    def _draw_piece(self, piece: "_Piece") -> None:
        if piece.bold:
            self.paper.rule((BODY, self.y - 3.1), (RIGHT, self.y - 3.1), _LINE)
        for column, kind, lines in piece.cells:
            for n, line in enumerate(lines):
                at = BODY + column.at, self.y + n * _LEAD
                self.paper.text(*at, line, kind, column.hang)
        self.y += piece.height

    def _draw_first_head(self) -> float:
        head, room = self.head, 150.0
        self._draw_code(head.kind)
        if head.code:
            grouped = codes.read(head.code).grouped
            self.paper.text(RIGHT, 29.6, grouped, Type(8, Face.CODE), "right")
        coded = any(mark in head.title for mark in "·-")
        parts = (
            (head.title, Type(26, Face.CODE_BOLD if coded else Face.BOLD), 0.0, 10.0),
            (head.subtitle, Type(13, Face.BOLD), 7.0, 5.5),
            (head.detail, Type(10), 5.0, 4.8),
        )
        y = 28.0
        for words, kind, before, lead in parts:
            lines = break_lines(spelled_out(words), kind, room, anywhere=True) if words else []
            for n, line in enumerate(lines):
                y += lead if n else before
                self.paper.text(LEFT, y, line, kind)
        return y

    def _draw_code(self, label: str) -> None:
        room = RIGHT - LEFT - 20
        for n, line in enumerate(break_lines(spelled_out(label), Type(10, Face.BOLD), room)):
            self.paper.text(LEFT, 16 + 4.4 * n, line, Type(10, Face.BOLD))
        if self.head.code:
            self.paper.code((RIGHT, 24.2), self.head.code)

    def _foot_lines(self) -> list[str]:
        room = RIGHT - LEFT - width_mm(f"page {self.pages} of {self.pages}", _BOLD) - 4
        return break_lines(spelled_out(self.foot.printed), Type(8), room, anywhere=True)

    def _draw_foot(self) -> None:
        for n, line in enumerate(reversed(self._witness)):
            self.paper.text(LEFT, _FOOT_LINE - _FOOT_LEAD * n, line, Type(8))
        if self.foot.journal_head:
            self._draw_journal_head(_FOOT_LINE - _FOOT_LEAD * len(self._witness))
        page = f"page {self.page} of {self.pages}"
        self.paper.text(RIGHT, _FOOT_LINE, page, Type(8, Face.BOLD), "right")

    def _draw_journal_head(self, y: float) -> None:
        entry = "" if self.foot.entry is None else f" at entry {self.foot.entry:,}"
        head = self.foot.journal_head
        groups = " ".join(head[n : n + 8] for n in range(0, len(head), 8))
        self.paper.text(LEFT, y, f"journal head{entry}", Type(8))
        self.paper.text(RIGHT, y, groups, Type(8, Face.CODE), "right")


def _pieces(columns: Sequence[Column], row: Sequence[str], *, bold: bool) -> Iterator[_Piece]:
    kinds = [_cell_type(column, bold) for column in columns]
    broken = [break_lines(spelled_out(words), kind, column.room, anywhere=True)
              for column, kind, words in zip(columns, kinds, row, strict=True)]
    for first in range(0, max(map(len, broken)), _STAYS):
        parts = (lines[first:first + _STAYS] for lines in broken)
        yield _Piece(tuple(zip(columns, kinds, parts, strict=True)), bold)


def _cell_type(column: Column, bold: bool) -> Type:
    heavier = {Face.WORDS: Face.BOLD, Face.CODE: Face.CODE_BOLD}
    return Type(8.5, heavier.get(column.face, column.face) if bold else column.face)
