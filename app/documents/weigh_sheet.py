"""The weigh-out sheet: what to weigh for one pot, from which jar, with a square for each weight.

Points of all weights stand under each other. It shows amounts: back into the folder after the lot.
"""

from dataclasses import dataclass

from app.documents.boxes import Box
from app.documents.cautions_box import draw_cautions
from app.documents.paper import Pen
from app.documents.sheet import LEFT, RIGHT, Sheet, SheetFoot, SheetHead
from app.documents.typesetting import Face, Type, break_lines, spelled_out, width_mm

_ROW = 17.0
_POINT, _SQUARE, _NAME = 118.0, 152.0, 58.0  # mm: the points; the squares; room of a name
_LINE = Pen(0.2)
_WHAT, _WHERE, _AMOUNT = Type(13, Face.BOLD), Type(9), Type(28, Face.CODE_BOLD)
_LABEL, _FACT, _STEP = Type(10), Type(18, Face.BOLD), Type(10.5)


@dataclass(frozen=True, slots=True)
class WeighRow:
    """One component in its order of pouring.

    `wanted` is the number alone, '' where it is not known; `taken` '' leaves the square empty.
    """

    what: str
    where: str
    wanted: str
    unit: str
    may_show: str = ""
    taken: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighSheet:
    """All that stands on the sheet of one weigh-out."""

    head: SheetHead
    foot: SheetFoot
    facts: tuple[tuple[str, str], ...]
    """At most three: a label and what stands large under it."""
    balance_rule: str
    rows: tuple[WeighRow, ...]
    steps: tuple[str, ...]
    first_caution: str
    cautions: tuple[str, ...]


def weigh_sheet_pdf(weigh: WeighSheet) -> bytes:
    """The sheet, on as many pages as its components need; its code is read back."""
    pages = _set(weigh, pages=1).page
    return _set(weigh, pages).finish()


def _set(weigh: WeighSheet, pages: int) -> Sheet:
    sheet = Sheet(weigh.head, weigh.foot, pages)
    _draw_facts(sheet, weigh.facts)
    _draw_rule(sheet, weigh.balance_rule)
    for row in weigh.rows:
        _draw_row(sheet, row)
    sheet.paper.rule((LEFT, sheet.y), (RIGHT, sheet.y), _LINE)
    sheet.y += 7
    _draw_steps(sheet, weigh.steps)
    draw_cautions(sheet, weigh.first_caution, weigh.cautions)
    return sheet


def _draw_facts(sheet: Sheet, facts: tuple[tuple[str, str], ...]) -> None:
    """What the amounts are reckoned on, and an empty place for the lot, which the pot names."""
    for n, (label, value) in enumerate(facts):
        x = LEFT + 46 * n
        for m, line in enumerate(break_lines(spelled_out(label), _LABEL, 43, anywhere=True)):
            sheet.paper.text(x, sheet.y + 9.5 + 4.4 * m, line, _LABEL)
        sheet.paper.text(x, sheet.y + 4, spelled_out(value), _FACT, room=45)
    sheet.paper.text(_SQUARE, sheet.y - 4, "lot, named at the pot", _LABEL)
    sheet.paper.box(Box(_SQUARE, sheet.y - 2, RIGHT, sheet.y + 8), Pen(0.35))
    sheet.y += 24


def _draw_rule(sheet: Sheet, words: str) -> None:
    for line in break_lines(spelled_out(words), _WHERE, _SQUARE - LEFT - 4, anywhere=True):
        sheet.paper.text(LEFT, sheet.y, line, _WHERE)
        sheet.y += 4.4
    sheet.paper.text(_SQUARE, sheet.y - 4.4, "taken, by", _LABEL)
    sheet.y -= 1


def _draw_row(sheet: Sheet, row: WeighRow) -> None:
    name = break_lines(spelled_out(row.what), _WHAT, _NAME, anywhere=True)
    where = [line for part in (row.where, row.note) if part for line in
             break_lines(spelled_out(part), _WHERE, _NAME, anywhere=True)]
    height = max(_ROW, 3 + 5.4 * len(name) + 4.2 * len(where) + 1.6)
    sheet.keep_together(height + 1)
    top, paper = sheet.y, sheet.paper
    paper.rule((LEFT, top), (RIGHT, top), _LINE)
    y = top + 6.4
    for kind, lead, lines in ((_WHAT, 5.4, name), (_WHERE, 4.2, where)):
        for line in lines:
            paper.text(LEFT, y, line, kind)
            y += lead
        y -= 0.6
    whole, point, part = (row.wanted or "").partition(".")
    end = _POINT
    if whole:
        paper.text(_POINT - width_mm(whole, _AMOUNT), top + 12.4, whole + point + part, _AMOUNT,
                   room=_SQUARE - _POINT + width_mm(whole, _AMOUNT) - 9)
        end = _POINT + width_mm(point + part, _AMOUNT)
    paper.text(end + 2, top + 12.4, row.unit if whole else "not known", _STEP)
    paper.box(Box(_SQUARE, top + 2, RIGHT, top + 11), Pen(0.35))
    paper.text(_SQUARE + 2, top + 8.6, spelled_out(row.taken), Type(13, Face.BOLD), room=40)
    paper.text(RIGHT, top + 15.2, row.may_show, _WHERE, "right")
    sheet.y += height


def _draw_steps(sheet: Sheet, steps: tuple[str, ...]) -> None:
    for n, words in enumerate(steps, 1):
        lines = break_lines(spelled_out(words), _STEP, RIGHT - LEFT - 10, anywhere=True)
        sheet.keep_together(5 * len(lines) + 1)
        sheet.paper.text(LEFT, sheet.y, str(n), Type(10.5, Face.BOLD))
        for line in lines:
            sheet.paper.text(LEFT + 8, sheet.y, line, _STEP)
            sheet.y += 5
        sheet.y += 0.8
    sheet.y += 4
