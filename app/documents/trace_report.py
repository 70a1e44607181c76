"""The trace of one thing as a paper: answers, its yarn, where it comes from, where it went."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.documents.sheet import LEFT, RIGHT, Column, Sheet, SheetFoot, SheetHead
from app.documents.trail_on_paper import LARGEST, LEAST_PT, draw_key, draw_picture
from app.documents.trail_picture import MARGIN, SMALL, Picture
from app.documents.typesetting import MM, Face

_TALLEST = 225.0  # the most a page holds below its head
_KEY = 9.0  # below the picture
_CLOSEST = 0.9  # of the scale at which small type is as large as its tags were made for
ROOM = (RIGHT - LEFT) * MM * SMALL / LEAST_PT + 2 * MARGIN
"""How wide a picture may be, in its own units, with its margins that lie beside the body."""

_ORIGINS = (
    Column("comes from", 0, 56),
    Column("how sure", 58, 29),
    Column("least to most", 112, 24, "right", Face.CODE),
    Column("expected", 128, 15, "right", Face.CODE),
    Column("basis", 131, 17),
)
_PASSED = (Column("load", 0, 56), *_ORIGINS[1:])
_STATES = (Column("now", 0, 59), Column("skeins", 74, 14, "right", Face.CODE_BOLD))
_GRAMS = Column("grams", 92, 17, "right", Face.CODE)
_BOUNDS = (
    Column("at least", 111, 16, "right", Face.CODE),
    Column("at most", 129, 16, "right", Face.CODE),
    Column("expected", 148, 16, "right", Face.CODE),
)
_HOLDERS = (
    Column("who or where", 0, 33),
    Column("order", 35, 15),
    Column("skeins", 60, 10, "right", Face.CODE_BOLD),
    Column("marks", 63, 47, "left", Face.CODE),
    Column("of it", 112, 36),
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
    """A buyer, or a place, what is held there, and how many of these come from the thing."""

    holder: str
    order: str
    skeins: int
    marks: str
    of_it: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TraceReport:
    """All that a trace says of one thing, ready to be set."""

    head: SheetHead
    foot: SheetFoot
    answers: tuple[tuple[str, str], ...]
    picture: Picture | None = None
    origins: tuple[OriginRow, ...] = ()
    passed: tuple[OriginRow, ...] = ()
    """The loads that it went through, which are not in the picture."""
    states: tuple[StateRow, ...] = ()
    together: StateRow | None = None
    holders: tuple[HolderRow, ...] = ()
    named_twice: str = ""
    """Why the holders may be more than there are."""


def trace_report_pdf(report: TraceReport) -> bytes:
    """The report, on as many pages as it needs, with the journal's head at the foot of each."""
    pages = _set(report, pages=1).page
    return _set(report, pages).finish()


def _set(report: TraceReport, pages: int) -> Sheet:
    sheet = Sheet(report.head, report.foot, pages)
    sheet.answers(report.answers)
    if report.picture:
        _draw_trail(sheet, report.picture)
    if report.origins:
        sheet.table("Where from", _ORIGINS, [_origin_cells(row) for row in report.origins])
    if report.passed:
        sheet.table("Went through", _PASSED, [_origin_cells(row) for row in report.passed])
    if report.states:
        _draw_states(sheet, report.states, report.together)
    if report.holders:
        sheet.table("Who holds", _HOLDERS, [_holder_cells(row) for row in report.holders])
    if report.named_twice:
        sheet.words("", report.named_twice)
    return sheet


def _draw_trail(sheet: Sheet, picture: Picture) -> None:
    """The picture in the middle, with its key below; one that no page holds is on the screen."""
    least = _CLOSEST * LEAST_PT / SMALL / MM
    across = min(LARGEST / MM, (RIGHT - LEFT) / (picture.width - 2 * MARGIN))
    here = (sheet.room_below - _KEY - 1) / picture.height  # rather smaller than on the next page
    scale = min(across, here if here >= least else _TALLEST / picture.height)
    if scale < least:
        sheet.words("", "The trail is larger than this sheet: the Desk draws it, and prints it on "
                        "a larger one.")
        return
    width, height = picture.width * scale, picture.height * scale
    sheet.keep_together(height + _KEY)
    draw_picture(sheet.paper, picture, ((LEFT + RIGHT - width) / 2, sheet.y - 4), scale)
    draw_key(sheet.paper, (LEFT, sheet.y + height))
    sheet.y += height + _KEY


def _draw_states(sheet: Sheet, rows: Sequence[StateRow], together: StateRow | None) -> None:
    all_rows = [*rows, together] if together else list(rows)
    bounded = any(row.least not in (None, row.skeins) for row in all_rows)
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
    return row.holder, row.order, f"{row.skeins:,}", row.marks, row.of_it


def _count(number: int | None) -> str:
    return "" if number is None else f"{number:,}"


def _tenths(number: Decimal | None) -> str:
    return "" if number is None else f"{number:,.1f}"
