"""The yarn that a trail is drawn as: two plies, and how they lie tells how sure the record is."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate, pairwise
from math import hypot, pi, sin
from typing import Literal

from app.documents.paper import Paper, Pen, Point
from app.documents.signs import HOLD_SIZE, hold_sign
from app.documents.typesetting import WHITE, Face, Type, break_lines, spelled_out

_HALF_WAVE, _SWING = 2.5, 0.8  # from crossing to crossing, and how far the plies part, in mm
_STEP = 0.4
_UNDER = Pen(0.4)
_GROUND = Pen(1, WHITE)
_THREAD = Pen(0.25)
_THREAD_MM, _LEAD_MM = 4.5, 4.2  # the loop a tag hangs on; from line to line on the tag


class Certainty(StrEnum):
    """What the record knows of a piece of the way, and how its yarn is drawn."""

    KNOWN = "known"  # whole
    PARTLY = "partly"  # opened into its plies
    POOL = "pool"  # broken
    UNKNOWN = "not known"  # a gap


@dataclass(frozen=True, slots=True)
class Hanging:
    """A station as it hangs from the yarn: what it is, its code, a count, set in lines."""

    lines: tuple[tuple[str, Type], ...]
    in_hand: bool
    hold: Literal["", "placed", "below"]


def set_station(words: tuple[str, str, str], width: float) -> tuple[tuple[str, Type], ...]:
    """What it is, its code and its count as the lines of a tag of this width."""
    types = (Type(8), Type(9, Face.CODE_BOLD), Type(8))
    return tuple(
        (line, kind)
        for part, kind in zip(words, types, strict=True)
        for line in break_lines(spelled_out(part), kind, width - 1, anywhere=True)
        if line
    )


def hanging_height(lines: int) -> float:
    """From the yarn to the foot of a tag of so many lines."""
    return _THREAD_MM + 8.6 + _LEAD_MM * (lines - 1)


def draw_yarn(paper: Paper, stops: Sequence[Point], certainty: Certainty) -> None:
    """Yarn from stop to stop, leaving and arriving level."""
    line = _centre_line(stops)
    length, count = line[-1].length, max(1, round(line[-1].length / _HALF_WAVE))
    half = length / count
    plies = [_laid(line, lambda at, side=side: side * sin(pi * at / half)) for side in _SIDES]
    for number in range(count):
        if _is_open(certainty, number, count - 1):
            continue
        piece = slice(*(_first_at(line, half * (number + n)) for n in (0, 1)))
        under, over = (ply[piece.start : piece.stop + 1] for ply in plies[:: 1 if number % 2 else -1])
        for ply, pen in ((under, _UNDER), (over, _GROUND), (over, _UNDER)):
            paper.shape(ply, pen, closed=False)
def draw_question(paper: Paper, start: Point, end: Point) -> None:
    """The question mark in the gap of a yarn that is not known."""
    middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2 + 1
    paper.text(*middle, "?", Type(8.5, Face.BOLD), "centre")


def hang_tag(paper: Paper, at: Point, station: Hanging, size: tuple[float, float]) -> None:
    """A tag with clipped corners on a loop of thread; the one in hand in bold outline."""
    (x, y), half = at, size[0] / 2
    top, foot = y + _THREAD_MM, y + size[1]
    outline = [
        (x - half + 2, top),
        (x + half - 2, top),
        (x + half, top + 2),
        (x + half, foot),
        (x - half, foot),
        (x - half, top + 2),
    ]
    paper.shape(outline, Pen(0.8 if station.in_hand else 0.2, fill=WHITE))
    paper.circle((x, top + 1.9), 0.7, _THREAD)
    for side in (-1, 1):
        loop = [(x + side * 1.1 * sin(pi * n / 20), y - 1.1 + 7.5 * n / 20) for n in range(21)]
        paper.shape(loop, _THREAD, closed=False)
    for n, (line, kind) in enumerate(station.lines):
        paper.text(x, top + 6.4 + _LEAD_MM * n, line, kind, "centre")
    if station.hold:
        corner = (x + half - HOLD_SIZE[0], top - 2.4)
        hold_sign(paper, corner, placed_here=station.hold == "placed")


def _is_open(certainty: Certainty, number: int, last: int) -> bool:
    if certainty is Certainty.POOL:
        return number % 3 == 2 or number == last
    return certainty in (Certainty.UNKNOWN, Certainty.PARTLY) and 1 < number < last - 1


def _centre_line(stops: Sequence[Point]) -> list[Point]:
    points = [stops[0]]
    for (x1, y1), (x2, y2) in pairwise(stops):
        steps = max(8, round(hypot(x2 - x1, y2 - y1) / _STEP))
        for n in range(1, steps + 1):
            t = n / steps
            points.append((x1 + (x2 - x1) * t, y1 + (y2 - y1) * t * t * (3 - 2 * t)))
    return points


def _crossings(points: Sequence[Point]) -> list[tuple[list[Point], list[Point]]]:
    """Two plies laid round the line, cut where they cross; the last crossing is at its end."""
    lengths = list(accumulate((hypot(c - a, d - b) for (a, b), (c, d) in pairwise(points))))
    half = lengths[-1] / max(1, round(lengths[-1] / _HALF_WAVE))
    pieces: list[tuple[list[Point], list[Point]]] = [([points[0]], [points[0]])]
    for ((x, y), (x2, y2)), length in zip(pairwise(points), lengths, strict=True):
        step = hypot(x2 - x, y2 - y)
        side = _SWING * sin(pi * length / half) / step
        across, down = -(y2 - y) * side, (x2 - x) * side
        pieces[-1][0].append((x2 + across, y2 + down))
        pieces[-1][1].append((x2 - across, y2 - down))
        if length > half * len(pieces) and length < lengths[-1]:
            pieces.append((pieces[-1][0][-1:], pieces[-1][1][-1:]))
    return pieces


def _draw_opened(paper: Paper, start: Point, end: Point) -> None:
    """The two plies run apart, so that a share can be told."""
    (x1, y1), (x2, y2) = start, end
    for side in (-1, 1):
        ply = [
            (x1 + (x2 - x1) * t, y1 + (y2 - y1) * t + side * 1.6 * sin(pi * t))
            for t in (n / 30 for n in range(31))
        ]
        paper.shape(ply, _UNDER, closed=False)
