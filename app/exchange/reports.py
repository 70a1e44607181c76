"""The trace of a thing as paper: what the book says, set out for the trace report."""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from app.calculations.codes import bare_characters, code_of
from app.calculations.moments import clock_words, day_words
from app.calculations.units import grams
from app.documents.sheet import SheetFoot, SheetHead
from app.documents.trace_report import OriginRow, StateRow, TraceReport, trace_report_pdf
from app.documents.trail import Station
from app.documents.yarn import Certainty
from app.exchange.tracing import KIND_WORDS, Now, Traced, sentences
from app.lookups.certainty import KNOWN, NOT_KNOWN, PARTLY, POOL
from app.lookups.origins import Origin
from app.lookups.trail import Stop

_CERTAINTY = {KNOWN: Certainty.KNOWN, PARTLY: Certainty.PARTLY, POOL: Certainty.POOL,
              NOT_KNOWN: Certainty.UNKNOWN}
_HELD: Mapping[str, Literal["", "placed", "below"]] = {"": "", "here": "placed", "below": "below"}


def trace_pdf(one: Traced, person: str) -> bytes:
    """The trace report, proven, with the journal's head on every page."""
    return trace_report_pdf(trace_report(one, person))


def trace_report(one: Traced, person: str) -> TraceReport:
    """What the book says of a thing, ready to be set; `person` prints it."""
    code = code_of(bare_characters(one.found.code))
    when = f"{day_words(one.at)}, {clock_words(one.at)}"
    kind = KIND_WORDS.get(one.found.kind, one.found.kind)
    return TraceReport(
        head=SheetHead("Trace", one.found.shown, one.found.words, f"Trace of a {kind}, {when}",
                       code.text if code else ""),
        foot=SheetFoot(f"{one.studio} · printed {when}, by {person}", one.journal_head, one.entry),
        answers=sentences(one),
        stations=tuple(station(number, stop) for number, stop in enumerate(one.stops)),
        origins=tuple(map(_origin, one.origins)),
        states=tuple(map(_state, one.now)),
        together=_state(one.together) if one.together else None,
    )


def station(number: int, stop: Stop) -> Station:
    """A stop of a trail as it hangs from the yarn, after the one before."""
    return Station(stop.kind, stop.code, stop.count, (number - 1,) if number else (),
                   _CERTAINTY[stop.certainty], stop.note, stop.here, _HELD[stop.held])


def _origin(origin: Origin) -> OriginRow:
    link = origin.link
    kind = KIND_WORDS.get(origin.kind, origin.kind)
    words = "" if origin.kind == "load" else f", {origin.words}"
    return OriginRow(f"{kind} {origin.code}{words}", link.word, link.least, link.most, link.of,
                     _tenth(link.expected), link.basis)


def _state(now: Now) -> StateRow:
    link = now.link
    bounds = (link.least, link.most, _tenth(link.expected)) if link else (None, None, None)
    return StateRow(now.words, now.count, grams(now.mg), *bounds)


def _tenth(number: Fraction) -> Decimal:
    return Decimal(number.numerator) / Decimal(number.denominator)
