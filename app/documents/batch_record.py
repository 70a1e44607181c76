"""The batch record of a lot as paper: answers, numbered parts, places to sign, the journal's head.

What is not in the book is said by whoever hands the parts in; here nothing is left out.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from app.documents.boxes import Box
from app.documents.paper import Pen
from app.documents.sheet import BODY, LEFT, RIGHT, Column, Sheet, SheetFoot, SheetHead
from app.documents.trail import Station, draw_band, lay_out
from app.documents.typesetting import Face, Type, break_lines, spelled_out

WHEN, DID = Column("when", 115.5, 24), Column("did", 141, 7, face=Face.BOLD)
"""Who and when stand in the same place on every line of every part."""

_CELL, _BOLD, _LEAD = Type(8.5), Type(8.5, Face.BOLD), 4.2
_BELOW_TRAIL = 10.5
_CARD = (70.0, 34.0)
_SIGNED = ("weighed out", "dyed", "washed and dried", "counted", "tags counted off",
           "record reviewed", "released for sale")


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence, and who entered it when where that is known."""

    words: str
    when: str = ""
    did: str = ""


@dataclass(frozen=True, slots=True)
class Listed:
    """Rows under their headings, with a total where they have one."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    total: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Part:
    """One numbered part; with `card` the wound card of the lot is fastened in it."""

    title: str
    blocks: tuple[Said | Listed, ...]
    card: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchPaper:
    """All that a batch record says of one lot, ready to be set."""

    head: SheetHead
    foot: SheetFoot
    answers: tuple[tuple[str, str], ...]
    stations: tuple[Station, ...] = ()
    parts: tuple[Part, ...] = ()
    done_by: tuple[str, ...] = ()
    """Who did each of the steps that are signed, in their order, as the book has it."""


def batch_record_pdf(record: BatchPaper) -> bytes:
    """The record, on as many pages as it needs; every code on it is read back."""
    pages = _set(record, pages=1).page
    return _set(record, pages).finish()


def journal_code(entry: int, journal_head: str) -> str:
    """The journal's head as its square code says it: entry and digest."""
    return f"E{entry}-{journal_head.upper()}"


def _set(record: BatchPaper, pages: int) -> Sheet:
    sheet = Sheet(record.head, record.foot, pages)
    _draw_trail(sheet, record.stations)
    sheet.answers(record.answers)
    for number, part in enumerate(record.parts, 1):
        _draw_part(sheet, f"{number}  {part.title}", part)
    _draw_signatures(sheet, f"{len(record.parts) + 1}  Signed", record.done_by)
    _draw_witness(sheet, record.foot)
    return sheet


def _draw_trail(sheet: Sheet, stations: Sequence[Station]) -> None:
    if not stations:
        return
    trail = lay_out(stations, RIGHT - LEFT)
    for band in range(len(trail.bands)):
        sheet.keep_together(trail.tag[1] + 4)
        draw_band(sheet.paper, trail, band, (LEFT, sheet.y + 2))
        sheet.y += trail.tag[1] + _BELOW_TRAIL


def _draw_part(sheet: Sheet, title: str, part: Part) -> None:
    sheet.keep_together(3 * _LEAD + 2)
    page = sheet.page
    foot = sheet.paper.lines(LEFT, sheet.y, title, _BOLD, BODY - LEFT - 2, _LEAD)
    for block in part.blocks:
        if isinstance(block, Listed):
            sheet.table("", block.columns, block.rows, block.total)
            sheet.y -= 3.4
        else:
            _draw_said(sheet, block)
    if part.card:
        _draw_card(sheet)
    sheet.y = (sheet.y if sheet.page != page else max(sheet.y, foot)) + 4


def _draw_said(sheet: Sheet, said: Said) -> None:
    room = WHEN.at - 3 if said.when else RIGHT - BODY
    for n, line in enumerate(break_lines(spelled_out(said.words), _CELL, room, anywhere=True)):
        sheet.keep_together(_LEAD)
        sheet.paper.text(BODY, sheet.y, line, _CELL)
        if n == 0:
            sheet.paper.text(BODY + WHEN.at, sheet.y, said.when, _CELL, room=WHEN.room)
            sheet.paper.text(BODY + DID.at, sheet.y, spelled_out(said.did), _BOLD)
        sheet.y += _LEAD
    sheet.y += 0.6


def _draw_card(sheet: Sheet) -> None:
    """A place where the real yarn is fastened: no printed colour stands for it."""
    width, height = _CARD
    sheet.keep_together(height + 6)
    top = sheet.y - 1
    sheet.paper.box(Box(BODY, top, BODY + width, top + height), Pen(0.25, dash=(0.6, 0.6)))
    for n, words in enumerate(("fasten the", "wound card here")):
        sheet.paper.text(BODY + width / 2, top + height / 2 + 4 * n, words, Type(8), "centre")
    sheet.y = top + height + 5


def _draw_signatures(sheet: Sheet, title: str, done_by: Sequence[str]) -> None:
    """What the book knows of who did it; who checked it signs by hand."""
    sheet.keep_together((len(_SIGNED) + 1) * 7)
    sheet.paper.text(LEFT, sheet.y, title, _BOLD)
    for at, heading in ((0, "what"), (42, "done by, in the book"), (82, "checked by"),
                        (122, "date")):
        sheet.paper.text(BODY + at, sheet.y, heading, Type(8))
    sheet.paper.rule((BODY, sheet.y + 1.2), (RIGHT, sheet.y + 1.2), Pen(0.15))
    for n, what in enumerate(_SIGNED):
        sheet.y += 7
        sheet.paper.text(BODY, sheet.y, what, _CELL)
        names = done_by[n] if n < len(done_by) else ""
        sheet.paper.text(BODY + 42, sheet.y, spelled_out(names), _BOLD, room=38)
        for left, right in ((82, 118), (122, RIGHT - BODY)):
            sheet.paper.rule((BODY + left, sheet.y + 1), (BODY + right, sheet.y + 1), Pen(0.15))
    sheet.y += 9


def _draw_witness(sheet: Sheet, foot: SheetFoot) -> None:
    """The print compared with the book: lines to sign, and the journal's head to scan."""
    sheet.keep_together(34)
    y = sheet.y + 4
    sheet.paper.text(LEFT, y, "This print", _BOLD)
    sheet.paper.text(BODY, y, "compared with the book and found the same:", _CELL)
    for at, length, words in ((0, 36, "name"), (40, 36, "signed"), (80, 24, "date")):
        sheet.paper.rule((BODY + at, y + 13), (BODY + at + length, y + 13), Pen(0.15))
        sheet.paper.text(BODY + at, y + 16.6, words, Type(8))
    if foot.journal_head and foot.entry is not None:
        sheet.paper.code((RIGHT - 2, y + 18), journal_code(foot.entry, foot.journal_head))
    sheet.y = y + 24
