"""The picture of a trail on paper: lying, on the smallest sheet where it can still be read."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.documents.paper import A4, Paper, Pen, Point
from app.documents.signs import HOLD_SIZE, hold_sign
from app.documents.trail_picture import (
    CUT,
    SMALL,
    STROKES,
    Picture,
    SetTag,
    SetWay,
    flattened,
    outline,
    plate,
)
from app.documents.typesetting import MM, WHITE, Face, Type, break_lines, spelled_out
from app.documents.yarn import Certainty

_EDGE, _LEAST_PT, _LARGEST = 12.0, 8.0, 0.75  # mm; points; points to a unit of the picture
_SHEETS = 5  # A4 to A0
_HEAD, _FOOT = 26.0, 16.0  # kept above and below the picture, in mm
KEY = ((Certainty.KNOWN, "known"), (Certainty.PARTLY, "partly, with its share"),
       (Certainty.POOL, "one of a pool, with its counts"), (Certainty.UNKNOWN, "not known"))


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
    paper = Paper(sheet.title, size, least_pt=_LEAST_PT, edge=4)
    _draw_head(paper, sheet, size)
    room = size[0] - 2 * _EDGE
    left = _EDGE + max(0.0, room - sheet.picture.width * scale) / 2
    draw_picture(paper, sheet.picture, (left, _HEAD), scale)
    _draw_key(paper, size)
    return paper.pdf("Fold together what is opened, and print it again.")


def draw_picture(paper: Paper, picture: Picture, at: Point, scale: float) -> None:
    """The picture from its upper left; `scale` in mm to one of its units."""
    for way in picture.ways:
        _draw_way(paper, way, at, scale)
    for tag in picture.tags:
        _draw_tag(paper, tag, at, scale)


def _sheet_for(picture: Picture) -> tuple[Point, float]:
    """The smallest sheet on which small type is still 8 points, and mm to a unit on it."""
    short, long = A4
    size, scale = (long, short), 0.0
    for _ in range(_SHEETS):
        size = (long, short)
        scale = min((long - 2 * _EDGE) / picture.width, (short - _HEAD - _FOOT) / picture.height,
                    _LARGEST / MM)
        if scale * MM * SMALL >= _LEAST_PT:
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


def _draw_key(paper: Paper, size: Point) -> None:
    x, y = _EDGE, size[1] - 12
    for certainty, words in KEY:
        _stroke(paper, [(x, y - 1), (x + 14, y - 1)], certainty, 0.26)
        x = paper.text(x + 16, y, words, Type(8)) + 9


def _draw_way(paper: Paper, way: SetWay, at: Point, scale: float) -> None:
    _stroke(paper, _there(flattened(way.points), at, scale), way.way.certainty, scale)


def _stroke(paper: Paper, points: Sequence[Point], certainty: Certainty, scale: float) -> None:
    stroke = STROKES[certainty]
    dash = tuple(length * scale for length in stroke.dash)
    paper.shape(points, Pen(stroke.weight * scale, dash=dash), closed=False)
    if stroke.opened:
        paper.shape(points, Pen(stroke.opened * scale, WHITE), closed=False)


def _draw_tag(paper: Paper, one: SetTag, at: Point, scale: float) -> None:
    for away in (8, 4) if one.tag.many else ():
        paper.shape(_there(outline(one, CUT, away), at, scale), Pen(0.2, fill=WHITE))
    paper.shape(_there(outline(one, CUT), at, scale),
                Pen(0.8 if one.tag.here else 0.2, fill=WHITE))
    for line in one.lines:
        kind = Type(max(_LEAST_PT, line.size * scale * MM), line.face)
        paper.text(at[0] + line.x * scale, at[1] + line.y * scale, line.words, kind, "centre")
    if one.tag.held:
        x, y, width, _ = plate(one)
        corner = at[0] + (x + width) * scale - HOLD_SIZE[0], at[1] + y * scale
        hold_sign(paper, corner, placed_here=one.tag.held == "here")


def _there(points: Sequence[Point], at: Point, scale: float) -> list[Point]:
    return [(at[0] + x * scale, at[1] + y * scale) for x, y in points]
