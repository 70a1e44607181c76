"""The trace of one thing as a paper: answers, its yarn, where it comes from, where it went."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.documents.sheet import LEFT, RIGHT, Column, Sheet, SheetFoot, SheetHead
from app.documents.trail import Station, draw_band, lay_out
from app.documents.typesetting import Face, Type
from app.documents.yarn import Certainty, draw_question, draw_yarn

_TRAIL_HEIGHT = 225.0  # the most a page holds below its head

_ORIGINS = (
    Column("comes from", 0, 56),
    Column("how sure", 58, 29),
    Column("least to most", 112, 24, "right", Face.CODE),
    Column("expected", 128, 15, "right", Face.CODE),
    Column("basis", 131, 17),
)
_STATES = (Column("now", 0, 59), Column("skeins", 74, 14, "right", Face.CODE_BOLD))
_GRAMS = Column("grams", 92, 17, "right", Face.CODE)
_BOUNDS = (
    Column("at least", 111, 16, "right", Face.CODE),
    Column("at most", 129, 16, "right", Face.CODE),
    Column("expected", 148, 16, "right", Face.CODE),
)
_HOLDERS = (
    Column("who holds it", 0, 40),
    Column("order", 42, 26),
    Column("skeins", 79, 10, "right", Face.CODE),
    Column("lot", 83, 22, "left", Face.CODE_BOLD),
    Column("how sure", 107, 41),
)
_KEY = (
    (Certainty.KNOWN, "known"),
    (Certainty.PARTLY, "partly, with its share"),
    (Certainty.POOL, "one of a pool"),
    (Certainty.UNKNOWN, "not known"),
)


@dataclass(frozen=True, slots=True)
class OriginRow:
    """One thing it comes from: how sure that is, and of `of` members how many carry it."""

    thing: str
    certainty: str
    least: int
    most: int
    of: int
    expected: Decimal | None
    basis: str


@dataclass(frozen=True, slots=True)
class StateRow:
    """What is now in one state; the bounds tell how many of these come from the thing traced."""

    state: str
    skeins: int
    grams: Decimal
    least: int | None = None
    most: int | None = None
    expected: Decimal | None = None


@dataclass(frozen=True, slots=True)
class HolderRow:
    """A buyer, or a place, and what is held there."""

    holder: str
    order: str
    skeins: int
    lot: str
    certainty: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TraceReport:
    """All that a trace says of one thing, ready to be set."""

    head: SheetHead
    foot: SheetFoot
    answers: tuple[tuple[str, str], ...]
    stations: tuple[Station, ...] = ()
    origins: tuple[OriginRow, ...] = ()
    states: tuple[StateRow, ...] = ()
    together: StateRow | None = None
    holders: tuple[HolderRow, ...] = ()


def trace_report_pdf(report: TraceReport) -> bytes:
    """The report, on as many pages as it needs, with the journal's head at the foot of each."""
    pages = _set(report, pages=1).page
    return _set(report, pages).finish()


def _set(report: TraceReport, pages: int) -> Sheet:
    sheet = Sheet(report.head, report.foot, pages)
    sheet.answers(report.answers)
    if report.stations:
        _draw_trail(sheet, report.stations)
    if report.origins:
        sheet.table("Where from", _ORIGINS, [_origin_cells(row) for row in report.origins])
    if report.states:
        _draw_states(sheet, report.states, report.together)
    if report.holders:
        sheet.table("Who holds", _HOLDERS, [_holder_cells(row) for row in report.holders])
    return sheet


def _draw_trail(sheet: Sheet, stations: Sequence[Station]) -> None:
    trail = lay_out(stations, RIGHT - LEFT, _TRAIL_HEIGHT)
    for band, height in enumerate(trail.band_heights):
        sheet.keep_together(height + 4)
        draw_band(sheet.paper, trail, band, (LEFT, sheet.y + 2))
        sheet.y += height + 4
    if trail.left_out:
        sheet.words(
            "",
            f"The yarn parts further: {trail.left_out} stations more than a page holds "
            "are not drawn; the tables name them all.",
        )
    _draw_key(sheet)


def _draw_key(sheet: Sheet) -> None:
    """How the yarn tells certainty."""
    sheet.keep_together(8)
    x = LEFT
    for certainty, words in _KEY:
        length = 20 if certainty is Certainty.POOL else 17.5
        ends = (x, sheet.y - 1), (x + length, sheet.y - 1)
        draw_yarn(sheet.paper, ends, certainty)
        if certainty is Certainty.UNKNOWN:
            draw_question(sheet.paper, *ends)
        x = sheet.paper.text(x + 20, sheet.y, words, Type(8)) + 10
    sheet.y += 9


def _draw_states(sheet: Sheet, rows: Sequence[StateRow], together: StateRow | None) -> None:
    all_rows = [*rows, together] if together else list(rows)
    bounded = any(row.most is not None for row in all_rows)
    columns = (*_STATES, _GRAMS, *(_BOUNDS if bounded else ()))
    cells = [_state_cells(row, bounded) for row in rows]
    sheet.table("Where now", columns, cells, _state_cells(together, bounded) if together else ())
    if together and not _adds_up(rows, together):
        sheet.words(
            "",
            "These rows do not add up to what is said together. Nothing was left out "
            "to make them fit: compare with the book before anything is decided.",
        )


def _adds_up(rows: Sequence[StateRow], together: StateRow) -> bool:
    skeins, grams = sum(row.skeins for row in rows), sum(row.grams for row in rows)
    return (skeins, grams) == (together.skeins, together.grams)


def _origin_cells(row: OriginRow) -> tuple[str, ...]:
    span = str(row.least) if row.least == row.most else f"{row.least} to {row.most}"
    return row.thing, row.certainty, f"{span} of {row.of}", _tenths(row.expected), row.basis


def _state_cells(row: StateRow, bounded: bool) -> tuple[str, ...]:
    cells = (row.state, f"{row.skeins:,}", f"{row.grams:,.1f}")
    if not bounded:
        return cells
    return (*cells, _count(row.least), _count(row.most), _tenths(row.expected))


def _holder_cells(row: HolderRow) -> tuple[str, ...]:
    return row.holder, row.order, f"{row.skeins:,}", row.lot, row.certainty


def _count(number: int | None) -> str:
    return "" if number is None else f"{number:,}"


def _tenths(number: Decimal | None) -> str:
    return "" if number is None else f"{number:,.1f}"
