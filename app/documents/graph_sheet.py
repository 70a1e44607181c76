"""The picture of a trail on paper: lying, on the smallest sheet where it can still be read."""

from dataclasses import dataclass

from app.documents.paper import A4, Paper, Point
from app.documents.trail_on_paper import LARGEST, LEAST_PT, draw_key, draw_picture
from app.documents.trail_picture import SMALL, Picture
from app.documents.typesetting import MM, Face, Type, break_lines, spelled_out

_EDGE = 12.0  # mm
_SHEETS = 5  # A4 to A0
_HEAD, _FOOT = 26.0, 16.0  # kept above and below the picture, in mm


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
    size, scale = _sheet_for(sheet.picture)
    paper = Paper(sheet.title, size, least_pt=LEAST_PT, edge=4)
    _draw_head(paper, sheet, size)
    room = size[0] - 2 * _EDGE
    left = _EDGE + max(0.0, room - sheet.picture.width * scale) / 2
    draw_picture(paper, sheet.picture, (left, _HEAD), scale)
    draw_key(paper, (_EDGE, size[1] - 12))
    return paper.pdf("Fold together what is opened, and print it again.")


def _sheet_for(picture: Picture) -> tuple[Point, float]:
    """The smallest sheet on which small type is still 8 points, and mm to a unit on it."""
    short, long = A4
    size, scale = (long, short), 0.0
    for _ in range(_SHEETS):
        size = (long, short)
        scale = min((long - 2 * _EDGE) / picture.width, (short - _HEAD - _FOOT) / picture.height,
                    LARGEST / MM)
        if scale * MM * SMALL >= LEAST_PT:
            break
        short, long = long, 2 * short
    return size, scale


def _draw_head(paper: Paper, sheet: GraphSheet, size: Point) -> None:
    room = size[0] - 2 * _EDGE
    for line in break_lines(spelled_out(sheet.title), Type(16, Face.BOLD), room, anywhere=True)[:1]:
        paper.text(_EDGE, 14, line, Type(16, Face.BOLD))
    for line in break_lines(spelled_out(sheet.together), Type(10), room, anywhere=True)[:1]:
        paper.text(_EDGE, 20.5, line, Type(10))
    foot = size[1] - 7
    paper.text(_EDGE, foot, spelled_out(sheet.printed), Type(8))
    head = f"journal head at entry {sheet.entry:,}: {sheet.journal_head[:16]} …"
    paper.text(size[0] - _EDGE, foot, head, Type(8, Face.CODE), "right")
