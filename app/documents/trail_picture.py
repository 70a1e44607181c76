"""A branching trail set and laid out: the one picture that window, paper and file draw.

Lengths are in units of the picture: a pixel of the window at plain text size and zoom 1.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from app.calculations.graph_layout import Gaps, Point, Size, lay_out
from app.documents.typesetting import MM, Face, Type, break_lines, spelled_out, width_mm
from app.documents.yarn import Certainty

SMALL, NAME = 13.0, 16.0
MARGIN = 24.0
CUT = 10.0  # of the upper corners of a tag
_TOP, _LEAD = 8.0, 1.3
_DOWN, _BESIDE = 26.0, 10.0


@dataclass(frozen=True, slots=True)
class _Room:
    """How wide a tag may be and is at least, and how far columns lie apart."""

    widest: float
    narrowest: float
    across: float
    name: float = NAME
    pad: float = 10.0


_PLENTY = _Room(168, 96, 52)
_CLOSER = (_Room(132, 88, 46), _Room(110, 76, 40), _Room(94, 66, 34, name=14, pad=9),
           _Room(84, 58, 28, name=13, pad=7))


@dataclass(frozen=True, slots=True)
class Stroke:
    """How a yarn is drawn: its thickness, its dashes, and how far its plies lie apart."""

    weight: float
    dash: tuple[float, ...] = ()
    opened: float = 0


STROKES = {
    Certainty.KNOWN: Stroke(2.5),
    Certainty.PARTLY: Stroke(6, opened=3),
    Certainty.POOL: Stroke(2.5, (9, 6)),
    Certainty.UNKNOWN: Stroke(3, (3, 6)),
}
"""Whole is known, opened into its plies partly, dashed one of a pool, dotted not known."""


@dataclass(frozen=True, slots=True)
class Tag:
    """One station in words; `code` tells that its name is set in the face of codes."""

    key: str
    what: str
    name: str
    notes: tuple[str, ...] = ()
    code: bool = False
    here: bool = False
    held: str = ""
    """'here' where a hold was placed, 'below' on what it reaches."""
    many: bool = False
    """It stands for several that are folded into it."""


@dataclass(frozen=True, slots=True)
class Way:
    """The yarn from one station to another, and how sure it is."""

    start: str
    end: str
    certainty: Certainty


@dataclass(frozen=True, slots=True)
class Line:
    """Words centred on x, with their base line at y."""

    x: float
    y: float
    words: str
    size: float
    face: Face
    second: bool = False


@dataclass(frozen=True, slots=True)
class SetTag:
    """A station in its place."""

    tag: Tag
    x: float
    y: float
    width: float
    height: float
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class SetWay:
    """The points that the yarn goes through; it leaves and arrives level at each."""

    way: Way
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """Everything in its place, from the upper left corner."""

    width: float
    height: float
    tags: tuple[SetTag, ...]
    ways: tuple[SetWay, ...]


def set_picture(
    tags: Sequence[Tag], ways: Iterable[Way], middle: str, width: float = inf
) -> Picture:
    """Break the words into lines, and lay out the stations round the one in the middle.

    Where it would be wider than `width`, tags are narrower and nearer; it may still be too wide.
    """
    ways = tuple(ways)
    tags = sorted(tags, key=lambda tag: tag.many)  # what is left of a fold hangs below the others
    picture = _set(tags, ways, middle, _PLENTY)
    for room in _CLOSER:
        if picture.width <= width:
            break
        picture = _set(tags, ways, middle, room)
    return picture


def _set(tags: Sequence[Tag], ways: Sequence[Way], middle: str, room: _Room) -> Picture:
    lines = {tag.key: _lines(tag, room) for tag in tags}
    laid = lay_out({tag.key: _size(lines[tag.key], room) for tag in tags},
                   [(way.start, way.end) for way in ways], middle,
                   Gaps(room.across, _DOWN, _BESIDE))
    set_tags = []
    for tag in tags:
        place = laid.places[tag.key]
        x, y = place.x + MARGIN, place.y + MARGIN
        set_tags.append(SetTag(tag, x, y, place.width, place.height,
                               _hung(lines[tag.key], x + place.width / 2, y)))
    set_ways = tuple(SetWay(way, tuple((x + MARGIN, y + MARGIN)
                                       for x, y in laid.lines[way.start, way.end]))
                     for way in ways)
    return Picture(laid.width + 2 * MARGIN, laid.height + 2 * MARGIN, tuple(set_tags), set_ways)


def curve(points: Sequence[Point]) -> list[tuple[Point, Point, Point]]:
    """The yarn as pieces of a curve: two handles and an end each, level at every point."""
    pieces = []
    for (x1, y1), (x2, y2) in pairwise(points):
        half = (x2 - x1) / 2
        pieces.append(((x1 + half, y1), (x2 - half, y2), (x2, y2)))
    return pieces


def _lines(tag: Tag, room: _Room) -> list[tuple[str, float, Face, bool]]:
    face = Face.CODE_BOLD if tag.code else Face.BOLD
    parts = [(tag.what, SMALL, Face.WORDS, True), (tag.name, room.name, face, False),
             *((note, SMALL, Face.WORDS, False) for note in tag.notes)]
    return [(line, size, kind, second)
            for words, size, kind, second in parts if words
            for line in break_lines(spelled_out(words), Type(size, kind),
                                    (room.widest - 2 * room.pad) / MM, anywhere=True)]


def _size(lines: Sequence[tuple[str, float, Face, bool]], room: _Room) -> Size:
    widest = max(width_mm(words, Type(size, face)) * MM for words, size, face, _ in lines)
    return Size(max(room.narrowest, widest + 2 * room.pad),
                2 * _TOP + sum(_LEAD * size for _, size, _, _ in lines))


def _hung(
    lines: Sequence[tuple[str, float, Face, bool]], x: float, top: float
) -> tuple[Line, ...]:
    hung, y = [], top + _TOP
    for words, size, face, second in lines:
        hung.append(Line(x, y + _LEAD * size * 0.76, words, size, face, second))
        y += _LEAD * size
    return tuple(hung)


def outline(one: SetTag, cut: float, away: float = 0) -> list[Point]:
    """A tag with its two upper corners clipped; `away` to the lower right of its place."""
    x, y = one.x + away, one.y + away
    right, foot = x + one.width, y + one.height
    return [(x + cut, y), (right - cut, y), (right, y + cut), (right, foot), (x, foot),
            (x, y + cut)]


def plate(one: SetTag) -> tuple[float, float, float, float]:
    """Where HOLD hangs: over the upper right corner; left, top, width and height."""
    return one.x + one.width - 48, one.y - 13, 56, 22


def flattened(points: Sequence[Point], steps: int = 16) -> list[Point]:
    """The yarn as a line from point to point, for what draws no curves."""
    way = [points[0]]
    for (x1, y1), (x2, y2) in pairwise(points):
        for n in range(1, steps + 1):
            t = n / steps
            across = 1.5 * t * (1 - t) ** 2 + 1.5 * t * t * (1 - t) + t ** 3
            way.append((x1 + (x2 - x1) * across, y1 + (y2 - y1) * t * t * (3 - 2 * t)))
    return way
