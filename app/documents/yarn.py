"""The yarn that a trail is drawn as: two plies, and how they lie tells how sure the record is."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate, pairwise
from math import hypot, pi, sin
from typing import Literal

from app.documents.paper import Paper, Pen, Point
from app.documents.signs import HOLD_SIZE, hold_sign
from app.documents.typesetting import WHITE, Face, Type, break_lines, spelled_out

_HALF_WAVE, _SWING, _OPENED = 2.5, 0.8, 1.6  # crossing to crossing; how far plies part; in mm
_FINE, _ROUGH = 8, 80  # points from crossing to crossing, and from stop to stop
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
    """Yarn from stop to stop, leaving and arriving level; it crosses itself at both ends."""
    line = _even_line(stops)
    last = len(line) // _FINE - 1
    for number in range(last + 1):
        if _is_open(certainty, number, last):
            continue
        first = number * _FINE
        plies = [_ply(line, first, first + _FINE, swing) for swing in (_SWING, -_SWING)]
        under, over = plies if number % 2 else plies[::-1]
        for ply, pen in ((under, _UNDER), (over, _GROUND), (over, _UNDER)):
            paper.shape(ply, pen, closed=False)
    closed = _closed(last)
    if certainty is Certainty.PARTLY and closed < last + 1 - closed:
        for swing in (_OPENED, -_OPENED):
            ply = _ply(line, closed * _FINE, (last + 1 - closed) * _FINE, swing)
            paper.shape(ply, _UNDER, closed=False)


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
    if certainty is Certainty.UNKNOWN:
        return 0 < number < last
    return certainty is Certainty.PARTLY and _closed(last) <= number <= last - _closed(last)


def _closed(last: int) -> int:
    """How many crossings stay closed at each end of a yarn that is opened."""
    return 2 if last > 3 else 1


def _even_line(stops: Sequence[Point]) -> list[Point]:
    """Points at equal distances along the way, a fixed count from one crossing to the next."""
    way = [stops[0]]
    for (x1, y1), (x2, y2) in pairwise(stops):
        for t in (n / _ROUGH for n in range(1, _ROUGH + 1)):
            way.append((x1 + (x2 - x1) * t, y1 + (y2 - y1) * t * t * (3 - 2 * t)))
    steps = (hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(way))
    reached = list(accumulate(steps, initial=0.0))
    count = _FINE * max(1, round(reached[-1] / _HALF_WAVE))
    return [_point_at(way, reached, reached[-1] * n / count) for n in range(count + 1)]


def _point_at(way: Sequence[Point], reached: Sequence[float], length: float) -> Point:
    after = min(bisect_right(reached, length), len(way) - 1)
    (x1, y1), (x2, y2) = way[after - 1], way[after]
    t = (length - reached[after - 1]) / (reached[after] - reached[after - 1])
    return x1 + (x2 - x1) * t, y1 + (y2 - y1) * t


def _ply(line: Sequence[Point], first: int, last: int, swing: float) -> list[Point]:
    """One ply that leaves the line at one point, swings out, and meets it again at another."""
    points = []
    for n in range(first, last + 1):
        (x1, y1), (x2, y2) = line[max(n - 1, 0)], line[min(n + 1, len(line) - 1)]
        out = swing * sin(pi * (n - first) / (last - first)) / hypot(x2 - x1, y2 - y1)
        points.append((line[n][0] - (y2 - y1) * out, line[n][1] + (x2 - x1) * out))
    return points
