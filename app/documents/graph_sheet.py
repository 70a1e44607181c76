"""The picture of a trail on paper: lying, on the smallest sheet where it can still be read."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.documents.paper import A4, Paper, Point
from app.documents.trail_on_paper import LARGEST, LEAST_PT, draw_key, draw_picture
from app.documents.trail_picture import SMALL, Picture
from app.documents.typesetting import MM, Face, Type, break_lines, spelled_out, width_mm

_EDGE = 12.0  # mm
_SHEETS = 5  # A4 to A0
_HEAD, _FOOT = 26.0, 16.0  # kept above and below the picture, in mm, with a line of each
_ROOM = A4[1] - 2 * _EDGE  # for words, on the smallest sheet as on the largest
_TITLE, _TOGETHER, _PRINTED = Type(16, Face.BOLD), Type(10), Type(8)
_LEADS = {_TITLE: 6.5, _TOGETHER: 4.5, _PRINTED: 3.6}


@dataclass(frozen=True, slots=True)
class GraphSheet:
    """The picture with its title, what is said of all of it, and who printed it when."""

    title: str
    together: str
    picture: Picture
    printed: str
    journal_head: str
    entry: int


def graph_sheet_pdf(sheet: GraphSheet) -> bytes:
    """The sheet; refused where the picture is larger than the largest sheet."""
    title, together = _broken(sheet.title, _TITLE), _broken(sheet.together, _TOGETHER)
    head = f"journal head at entry {sheet.entry:,}: {sheet.journal_head[:16]} …"
    room = _ROOM - width_mm(head, Type(8, Face.CODE)) - 4
    printed = _broken(sheet.printed, _PRINTED, room)
    top = _HEAD + _more(title, _TITLE) + _more(together, _TOGETHER)
    below = _more(printed, _PRINTED)
    size, scale = _sheet_for(sheet.picture, top + _FOOT + below)
    paper = Paper(sheet.title, size, least_pt=LEAST_PT, edge=4)
    _draw_lines(paper, 14, title, _TITLE)
    _draw_lines(paper, 20.5 + _more(title, _TITLE), together, _TOGETHER)
    left = (size[0] - sheet.picture.width * scale) / 2
    draw_picture(paper, sheet.picture, (max(_EDGE, left), top), scale)
    draw_key(paper, (_EDGE, size[1] - 12 - below))
    _draw_lines(paper, size[1] - 7 - below, printed, _PRINTED)
    paper.text(size[0] - _EDGE, size[1] - 7, head, Type(8, Face.CODE), "right")
    return paper.pdf("Fold together what is opened, and print it again.")


def _sheet_for(picture: Picture, beside: float) -> tuple[Point, float]:
    """The smallest sheet on which small type is still 8 points, and mm to a unit on it.

    So many mm of its height are kept for words.
    """
    short, long = A4
    size, scale = (long, short), 0.0
    for _ in range(_SHEETS):
        size = (long, short)
        scale = min((long - 2 * _EDGE) / picture.width, (short - beside) / picture.height,
                    LARGEST / MM)
        if scale * MM * SMALL >= LEAST_PT:
            break
        short, long = long, 2 * short
    return size, scale


def _broken(words: str, kind: Type, room: float = _ROOM) -> list[str]:
    return break_lines(spelled_out(words), kind, room, anywhere=True)


def _more(lines: Sequence[str], kind: Type) -> float:
    """How much more room these lines need than one of them."""
    return _LEADS[kind] * (len(lines) - 1)


def _draw_lines(paper: Paper, y: float, lines: Sequence[str], kind: Type) -> None:
    for n, line in enumerate(lines):
        paper.text(_EDGE, y + _LEADS[kind] * n, line, kind)
