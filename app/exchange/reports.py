"""The trace of a thing as paper: what the book says, set out for the trace report."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from decimal import Decimal
from fractions import Fraction

from sqlalchemy import Connection

from app.calculations.codes import bare_characters, code_of
from app.calculations.moments import clock_words, day_words
from app.calculations.units import grams
from app.documents.sheet import SheetFoot, SheetHead
from app.documents.trace_report import (
    ROOM,
    HolderRow,
    OriginRow,
    StateRow,
    TraceReport,
    trace_report_pdf,
)
from app.documents.trail_picture import Picture
from app.exchange.recalls import marks_together, named_twice, who
from app.exchange.tracing import KIND_WORDS, Now, Traced, sentences, traced
from app.exchange.trail_pictures import picture, title_of
from app.lookups.graph import graph
from app.lookups.graph_centre import centre_of
from app.lookups.graph_sure import how_sure
from app.lookups.origins import Origin, origins
from app.lookups.recall import WithOne, recall_list
from app.lookups.things import Found
from app.lookups.thread import thread

_RECALLED = {"cone": "cone", "lot": "lot", "skein": "yarn"}


def trace_pdf(connection: Connection, found: Found, at: datetime, person: str) -> bytes:
    """The trace report, proven, with the journal's head on every page."""
    return trace_report_pdf(trace_report(connection, found, at, person))


def trace_report(connection: Connection, found: Found, at: datetime, person: str) -> TraceReport:
    """What the book says of a thing, ready to be set; `person` prints it at that moment."""
    one = traced(connection, found, at)
    code = code_of(bare_characters(found.code))
    when = f"{day_words(at)}, {clock_words(at)}"
    kind = KIND_WORDS.get(found.kind, found.kind)
    kept = _RECALLED.get(found.kind)
    held = recall_list(connection, kept, found.id) if kept else None
    holders = held.rows if held else ()
    shred = " · holds names: shred it when it is answered" if any(
        row.name for row in holders) else ""
    return TraceReport(
        head=SheetHead("Trace", found.shown, found.words, f"Trace of a {kind}, {when}",
                       code.text if code else ""),
        foot=SheetFoot(f"{one.studio or 'studio not named'} · printed {when}, by {person}{shred}",
                       one.journal_head, one.entry),
        answers=sentences(one),
        picture=_picture(connection, found, at),
        origins=_origins(connection, one.left, one.origins),
        passed=_origins(connection, one.left, _passed(connection, one)),
        states=tuple(map(_state, one.now)),
        together=_state(one.together) if one.together else None,
        holders=tuple(map(_holder, holders)),
        named_twice=named_twice(held) if held else "",
    )


def _picture(connection: Connection, found: Found, at: datetime) -> Picture | None:
    """Its branching trail, without what it only passed: the tables name that."""
    centre = centre_of(connection, found, at)
    return None if centre is None else picture(
        graph(connection, centre, title_of(found), short=True), ROOM)


def _passed(connection: Connection, one: Traced) -> list[Origin]:
    """The loads that what came of a cone or a lot went through."""
    return [load for load in origins(connection, one.left)
            if load.kind == "load" and one.found.kind in ("cone", "lot")]


def _origins(
    connection: Connection, left: Mapping[int, int], found: Iterable[Origin]
) -> tuple[OriginRow, ...]:
    """Each in the word that the picture has: as sure as it is of what is left now."""
    above = thread(connection, left)
    return tuple(_origin(one, how_sure(above, left, [(one.kind, one.id)]).word) for one in found)


def _origin(origin: Origin, word: str) -> OriginRow:
    link = origin.link
    kind = KIND_WORDS.get(origin.kind, origin.kind)
    thing = (f"{origin.words}, load {origin.id}" if origin.kind == "load" and origin.id else
             f"{kind} {origin.code}, {origin.words}")
    return OriginRow(thing, word, link.least, link.most, link.of,
                     _tenth(link.expected), link.basis)


def _state(now: Now) -> StateRow:
    link = now.link
    bounds = (link.least, link.most, _tenth(link.expected)) if link else (None, None, None)
    return StateRow(now.words, now.count, grams(now.mg), *bounds)


def _holder(row: WithOne) -> HolderRow:
    return HolderRow(who(row), row.order or "", row.count, marks_together(row.marks), row.of_it)


def _tenth(number: Fraction) -> Decimal:
    return Decimal(number.numerator) / Decimal(number.denominator)
