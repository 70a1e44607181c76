"""The trail of a lot as one line of yarn, with its stations hanging from it in their order."""

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
_WIDEST_TAG, _NARROWEST_TAG, _GAP = 24.0, 20.5, 1.7
_NOTE = Type(8)


@dataclass(frozen=True, slots=True)
class Station:
    """One stop of the trail, and what is known of the yarn that leads to it.

    `note` stands at that yarn: a share, or the counts of a pool.
    """

    what: str
    code: str
    count: str
    certainty: Certainty = Certainty.KNOWN
    note: str = ""
    in_hand: bool = False
    hold: Literal["", "placed", "below"] = ""


@dataclass(frozen=True, slots=True)
class Trail:
    """The stations in stretches that fit a page's width, and the size of their tags."""

    bands: tuple[tuple[Station, ...], ...]
    tag: tuple[float, float]
    spacing: float


def lay_out(stations: Sequence[Station], width: float) -> Trail:
    """As many side by side as there is room for, and the rest below."""
    spacing = width / min(ACROSS, len(stations))
    tag = min(_WIDEST_TAG, max(_NARROWEST_TAG, spacing - _GAP))
    placed = [_with_note_placed(station, spacing) for station in stations]
    lines = max(len(set_station(_words(station), tag)) for station in placed)
    bands = tuple(tuple(placed[n:n + ACROSS]) for n in range(0, len(placed), ACROSS))
    return Trail(bands, (tag, hanging_height(lines)), spacing)


def draw_band(paper: Paper, trail: Trail, band: int, at: Point) -> None:
    """One stretch of the trail from its upper left: the yarn first, then what hangs from it."""
    for certainty, start, end in _yarns(trail, band, at):
        draw_yarn(paper, (start, end), certainty)
    for n, station in enumerate(trail.bands[band]):
        x = at[0] + trail.spacing * (n + 0.5)
        _explain(paper, station, at[0] + trail.spacing * max(n - 0.5, 0), (x, at[1]))
        lines = set_station(_words(station), trail.tag[0])
        hang_tag(paper, (x, at[1]), Hanging(lines, station.in_hand, station.hold), trail.tag)


def _with_note_placed(station: Station, spacing: float) -> Station:
    """A note too long for its yarn stands on the tag."""
    if width_mm(spelled_out(station.note), _NOTE) <= 0.6 * spacing:
        return station
    return replace(station, count=f"{station.count}|{station.note}", note="")


def _yarns(trail: Trail, band: int, at: Point) -> Iterator[tuple[Certainty, Point, Point]]:
    """The yarn that leads to each station of a stretch, and the one that leads out of it."""
    here, after = trail.bands[band], trail.bands[band + 1:band + 2]
    stops = [0.0, *(trail.spacing * (n + 0.5) for n in range(len(here))),
             trail.spacing * len(here)]
    last = here[-1].certainty
    leaves = after[0][0].certainty if after else (
        last if last is Certainty.POOL else Certainty.KNOWN)
    leads = [station.certainty for station in here] + [leaves]
    for certainty, start, end in zip(leads, stops, stops[1:], strict=False):
        yield certainty, (at[0] + start, at[1]), (at[0] + end, at[1])


def _explain(paper: Paper, station: Station, start: float, end: Point) -> None:
    """What stands at a yarn: its note above, and its question mark where it is not known."""
    paper.text((start + end[0]) / 2, end[1] - 2.2, spelled_out(station.note), _NOTE, "centre")
    if station.certainty is Certainty.UNKNOWN:
        draw_question(paper, (start, end[1]), end)


def _words(station: Station) -> tuple[str, str, str]:
    return station.what, station.code, station.count
