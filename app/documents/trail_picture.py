"""A branching trail set and laid out: the one picture that window, paper and file draw.

Lengths are in units of the picture: a pixel of the window at plain text size and zoom 1.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from app.calculations.graph_layout import Gaps, Point, Size, lay_out
from app.documents.typesetting import MM, Face, Type, break_lines, spelled_out, width_mm
from app.documents.yarn import Certainty

SMALL, NAME = 13.0, 16.0
MARGIN = 24.0
CUT = 10.0  # of the upper corners of a tag
_WIDEST, _NARROWEST = 168.0, 96.0
_PAD, _TOP = 10.0, 8.0
_LEAD = {SMALL: 17.0, NAME: 21.0}
_GAPS = Gaps(across=52.0, down=26.0, beside=10.0)


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


def set_picture(tags: Sequence[Tag], ways: Iterable[Way], middle: str) -> Picture:
    """Break the words into lines, and lay out the stations round the one in the middle."""
    lines = {tag.key: _lines(tag) for tag in tags}
    ways = tuple(ways)
    tags = sorted(tags, key=lambda tag: tag.many)  # what is left of a fold hangs below the others
    laid = lay_out({tag.key: _size(lines[tag.key]) for tag in tags},
                   [(way.start, way.end) for way in ways], middle, _GAPS)
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


def _lines(tag: Tag) -> list[tuple[str, float, Face, bool]]:
    face = Face.CODE_BOLD if tag.code else Face.BOLD
    parts = [(tag.what, SMALL, Face.WORDS, True), (tag.name, NAME, face, False),
             *((note, SMALL, Face.WORDS, False) for note in tag.notes)]
    return [(line, size, kind, second)
            for words, size, kind, second in parts if words
            for line in break_lines(spelled_out(words), Type(size, kind),
                                    (_WIDEST - 2 * _PAD) / MM, anywhere=True)]


def _size(lines: Sequence[tuple[str, float, Face, bool]]) -> Size:
    widest = max(width_mm(words, Type(size, face)) * MM for words, size, face, _ in lines)
    return Size(max(_NARROWEST, widest + 2 * _PAD),
                2 * _TOP + sum(_LEAD[size] for _, size, _, _ in lines))


def _hung(
    lines: Sequence[tuple[str, float, Face, bool]], x: float, top: float
) -> tuple[Line, ...]:
    hung, y = [], top + _TOP
    for words, size, face, second in lines:
        hung.append(Line(x, y + _LEAD[size] * 0.76, words, size, face, second))
        y += _LEAD[size]
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
