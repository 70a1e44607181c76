"""The picture of a trail drawn on paper, and the key to its yarn."""

from collections.abc import Sequence

from app.documents.paper import Paper, Pen, Point
from app.documents.signs import HOLD_SIZE, hold_sign
from app.documents.trail_picture import (
    CUT,
    STROKES,
    Picture,
    SetTag,
    SetWay,
    flattened,
    outline,
    plate,
)
from app.documents.typesetting import MM, WHITE, Type
from app.documents.yarn import Certainty

LEAST_PT, LARGEST = 8.0, 0.75  # points; points to a unit of the picture
KEY = ((Certainty.KNOWN, "known"), (Certainty.PARTLY, "partly, with its share"),
        (Certainty.POOL, "one of a pool, with its counts"), (Certainty.UNKNOWN, "not known"))


def draw_picture(paper: Paper, picture: Picture, at: Point, scale: float) -> None:
    """The picture from its upper left; `scale` in mm to one of its units."""
    for way in picture.ways:
        _draw_way(paper, way, at, scale)
    for tag in picture.tags:
        _draw_tag(paper, tag, at, scale)


def draw_key(paper: Paper, at: Point) -> None:
    """How the yarn tells certainty, in one line from its left end."""
    x, y = at
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
        kind = Type(max(LEAST_PT, line.size * scale * MM), line.face)
        paper.text(at[0] + line.x * scale, at[1] + line.y * scale, line.words, kind, "centre")
    if one.tag.held:
        x, y, width, _ = plate(one)
        corner = at[0] + (x + width) * scale - HOLD_SIZE[0], at[1] + y * scale
        hold_sign(paper, corner, placed_here=one.tag.held == "here")


def _there(points: Sequence[Point], at: Point, scale: float) -> list[Point]:
    return [(at[0] + x * scale, at[1] + y * scale) for x, y in points]
