"""The trail of one thing: a yarn that parts and meets, with its stations hanging from it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from app.documents.paper import Paper, Point
from app.documents.typesetting import Type, spelled_out, width_mm
from app.documents.yarn import (
    Certainty,
    Hanging,
    draw_question,
    draw_yarn,
    hang_tag,
    hanging_height,
    set_station,
)

ACROSS = 8  # stations side by side
_WIDEST_TAG, _NARROWEST_TAG = 24.0, 20.5
_ROW_GAP = 4.5
_NOTE = Type(8)

Yarn = tuple[Certainty, list[Point], str | None]  # what it tells, its stops, the note at its end


@dataclass(frozen=True, slots=True)
class Station:
    """One stop of the trail, and what is known of the yarn that leads to it.

    `after` counts the stations it comes from, from 0, in the order they are given; nothing means
    that a thread begins here. `note` stands at that yarn: a share, or the counts of a pool.
    """

    what: str
    code: str
    count: str
    after: tuple[int, ...] = ()
    certainty: Certainty = Certainty.KNOWN
    note: str = ""
    in_hand: bool = False
    hold: Literal["", "placed", "below"] = ""


@dataclass(frozen=True, slots=True)
class Trail:
    """The stations with their places: column and row for each, and the size of their tags."""

    stations: tuple[Station, ...]
    places: tuple[tuple[int, int], ...]
    tag: tuple[float, float]
    spacing: float
    left_out: int = 0

    @property
    def band_heights(self) -> list[float]:
        """The height of each stretch of the trail that fits a page's width."""
        rows: dict[int, int] = {}
        for column, row in self.places:
            band = column // ACROSS
            rows[band] = max(rows.get(band, 0), row + 1)
        return [rows[band] * self.row_height for band in sorted(rows)]

    @property
    def row_height(self) -> float:
        """From thread to thread."""
        return self.tag[1] + _ROW_GAP


def lay_out(stations: Sequence[Station], width: float, height: float) -> Trail:
    """Stations in columns by their distance from the beginning, threads in rows.

    The first that comes from a station stays on its row, others begin rows of their own. Rows
    that no page of this height can hold are left out, and counted.
    """
    places = _places(stations)
    columns = min(ACROSS, 1 + max(column for column, _ in places))
    spacing = width / columns
    least_gap = 1.7 if all(row == 0 for _, row in places) else 9.0
    tag = min(_WIDEST_TAG, max(_NARROWEST_TAG, spacing - least_gap))
    stations = [
        _with_note_placed(station, places, n, spacing) for n, station in enumerate(stations)
    ]
    lines = max(len(set_station(_words(station), tag)) for station in stations)
    trail = Trail(tuple(stations), _closed_up(places), (tag, hanging_height(lines)), spacing)
    rows = [row for _, row in trail.places]
    kept = [n for n, row in enumerate(rows) if (row + 1) * trail.row_height <= height]
    if len(kept) == len(stations):
        return trail
    shorter = lay_out(_renumbered(stations, kept), width, height)
    return replace(shorter, left_out=len(stations) - len(shorter.stations))


def draw_band(paper: Paper, trail: Trail, band: int, at: Point) -> None:
    """One stretch of the trail from its upper left: the yarns first, then what hangs from them."""
    for certainty, stops, note in _yarns(trail, band, at):
        draw_yarn(paper, stops, certainty)
        if note is not None:
            _explain(paper, certainty, stops[-2:], note)
    for station, (column, row) in zip(trail.stations, trail.places, strict=True):
        if column // ACROSS == band:
            lines = set_station(_words(station), trail.tag[0])
            hanging = Hanging(lines, station.in_hand, station.hold)
            hang_tag(paper, _point(trail, column, row, at), hanging, trail.tag)


def _places(stations: Sequence[Station]) -> tuple[tuple[int, int], ...]:
    places: list[tuple[int, int]] = []
    filled: list[int] = []  # the last column taken in each row
    for station in stations:
        column = max((places[n][0] + 1 for n in station.after), default=0)
        parent = places[station.after[0]] if station.after else None
        if parent and filled[parent[1]] == parent[0]:
            row = parent[1]
            filled[row] = column
        else:
            row = len(filled)
            filled.append(column)
        places.append((column, row))
    return tuple(places)


def _closed_up(places: Sequence[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    """The places without the rows that are empty in a stretch."""
    rows: dict[int, set[int]] = {}
    for column, row in places:
        rows.setdefault(column // ACROSS, set()).add(row)
    return tuple((column, sorted(rows[column // ACROSS]).index(row)) for column, row in places)


def _with_note_placed(
    station: Station, places: Sequence[tuple[int, int]], number: int, spacing: float
) -> Station:
    """A note too long for its yarn, or at a yarn that bends, stands on the tag."""
    straight = all(places[parent][1] == places[number][1] for parent in station.after)
    if straight and width_mm(spelled_out(station.note), _NOTE) <= 0.6 * spacing:
        return station
    return replace(station, count=f"{station.count}|{station.note}", note="")


def _renumbered(stations: Sequence[Station], kept: Sequence[int]) -> list[Station]:
    new = {old: n for n, old in enumerate(kept)}
    return [
        replace(stations[old], after=tuple(new[n] for n in stations[old].after if n in new))
        for old in kept
    ]


def _explain(paper: Paper, certainty: Certainty, part: Sequence[Point], note: str) -> None:
    """What stands at a yarn: its note above, and its question mark where it is not known."""
    (x1, _), (x2, y) = part
    paper.text((x1 + x2) / 2, y - 2.2, spelled_out(note), _NOTE, "centre")
    if certainty is Certainty.UNKNOWN:
        draw_question(paper, (x1, y), (x2, y))


def _words(station: Station) -> tuple[str, str, str]:
    return station.what, station.code, station.count


def _point(trail: Trail, column: int, row: int, at: Point) -> Point:
    x = at[0] + trail.spacing * (column % ACROSS + 0.5)
    return x, at[1] + row * trail.row_height


def _yarns(trail: Trail, band: int, at: Point) -> Iterator[Yarn]:
    half = trail.spacing / 2
    parents = {n for station in trail.stations for n in station.after}
    for n, (station, place) in enumerate(zip(trail.stations, trail.places, strict=True)):
        x, y = here = _point(trail, *place, at)
        inside = place[0] // ACROSS == band
        if inside and not station.after:
            yield station.certainty, [(x - half, y), here], station.note
        if inside and n not in parents:
            tail = Certainty.POOL if station.certainty is Certainty.POOL else Certainty.KNOWN
            yield tail, [here, (x + half, y)], None
        for count, parent in enumerate(dict.fromkeys(station.after)):
            stops, arrives = _between(trail, band, at, (parent, n))
            if stops:
                yield station.certainty, stops, station.note if arrives and not count else None


def _between(trail: Trail, band: int, at: Point, ends: tuple[int, int]) -> tuple[list[Point], bool]:
    """The stops of the yarn between two stations inside a stretch, and whether it arrives there.

    A thread that parts turns at once, one that joins turns last, both in the gap between tags;
    one that is not known is not led across rows.
    """
    (column, row), (to_column, to_row) = (trail.places[n] for n in ends)
    start, end = _point(trail, column, row, at), _point(trail, to_column, to_row, at)
    leaves, arrives = column // ACROSS == band, to_column // ACROSS == band
    half, reach = trail.spacing / 2, trail.spacing * 0.3
    if not arrives:
        return ([start, (start[0] + half, start[1])] if leaves else []), False
    if not leaves:
        return [(end[0] - half, end[1]), end], True
    if row == to_row:
        return [start, end], True
    if trail.stations[ends[1]].certainty is Certainty.UNKNOWN:
        return [(end[0] - half, end[1]), end], True
    parts = trail.stations[ends[1]].after[0] == ends[0]
    gap = start[0] + half if parts else end[0] - half
    turn = [(gap - half + reach, start[1]), (gap + half - reach, end[1])]
    return [start, *turn, end], True
