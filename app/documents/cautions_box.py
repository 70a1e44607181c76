"""The cautions of a dye paper, white on black: whose words come first, then what to mind."""

from collections.abc import Sequence

from app.documents.boxes import Box
from app.documents.paper import SOLID
from app.documents.sheet import LEFT, RIGHT, Sheet
from app.documents.typesetting import WHITE, Face, Type, break_lines, spelled_out

_FIRST, _WORDS = Type(11, Face.BOLD, WHITE), Type(9.5, ink=WHITE)
_EDGE, _LEAD, _BETWEEN = 5.0, 4.6, 1.4


def draw_cautions(sheet: Sheet, first: str, cautions: Sequence[str]) -> None:
    """One box that is never parted; on the next page where this one has no room."""
    room = RIGHT - LEFT - 2 * _EDGE
    column = (room - _EDGE) / 2
    heading = break_lines(spelled_out(first), _FIRST, room, anywhere=True)
    told = [break_lines(spelled_out(one), _WORDS, column, anywhere=True) for one in cautions]
    half = (len(told) + 1) // 2
    sides = told[:half], told[half:]
    tallest = max(sum(_LEAD * len(lines) + _BETWEEN for lines in side) for side in sides)
    height = 9 + 5.6 * len(heading) + tallest
    sheet.keep_together(height)
    top = sheet.y - 3
    sheet.paper.box(Box(LEFT, top, RIGHT, top + height), SOLID)
    y = top + 7.5
    for line in heading:
        sheet.paper.text(LEFT + _EDGE, y, line, _FIRST)
        y += 5.6
    for n, side in enumerate(sides):
        line_y = y + 1.4
        for lines in side:
            for line in lines:
                sheet.paper.text(LEFT + _EDGE + n * (column + _EDGE), line_y, line, _WORDS)
                line_y += _LEAD
            line_y += _BETWEEN
    sheet.y = top + height + 6
