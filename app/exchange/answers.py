"""What the command line answers about a thing: lines for a person, plain data for a program."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from app.exchange.delivery_note import DeliveryNote
from app.exchange.orders_file import OrdersList
from app.exchange.rows import RowTrouble
from app.exchange.tracing import Now, Traced, sentences
from app.lookups.certainty import Link
from app.lookups.things import Found

Data = dict[str, Any]
_LABEL = 10  # characters, so that the words stand under each other


def found_data(found: Found) -> Data:
    """A thing by its code."""
    return {"kind": found.kind, "code": found.code, "shown": found.shown, "words": found.words,
            "swatch": found.swatch, "void": found.void, "successor": found.successor}


def short_lines(one: Traced) -> Iterator[str]:
    """Where a thing is now, and what stops it."""
    return (line for label, line in _labelled(one) if label in ("Now", "HOLD"))


def trace_lines(one: Traced) -> Iterator[str]:
    """The whole answer, and then the trail, a station a line."""
    yield from (line for _, line in _labelled(one))
    for place, stop in enumerate(one.stops):
        sure = "" if stop.certainty == "known" else f"  ({stop.certainty}"
        sure += f": {stop.note})" if sure and stop.note else ")" if sure else ""
        held = "  HOLD" if stop.held else ""
        label = "Trail" if place == 0 else ""
        yield f"{label:<{_LABEL}}{stop.kind} {stop.code}, {stop.count}{sure}{held}".rstrip()


def trace_data(one: Traced) -> Data:
    """The whole answer as data; weights in grams, shares of the metres as decimals."""
    return {
        **found_data(one.found),
        "answers": dict(sentences(one)),
        "origins": [
            {"kind": origin.kind, "code": origin.code, "words": origin.words,
             "basis": origin.link.basis, **_link_data(origin.link)} for origin in one.origins
        ],
        "went_into": [{"code": lot.code, "words": lot.words, **_link_data(lot.link)}
                      for lot in one.went_into],
        "now": [_now_data(now) for now in one.now],
        "together": _now_data(one.together) if one.together else None,
        "trail": [
            {"station": stop.kind, "code": stop.code, "count": stop.count, "note": stop.note,
             "certainty": stop.certainty, "held": stop.held} for stop in one.stops
        ],
        "holds": [{"on": hold.on, "why": hold.why, "ask": hold.person} for hold in one.holds],
        "journal": {"entry": one.entry, "head": one.journal_head},
    }


def note_data(note: DeliveryNote) -> Data:
    """A delivery note as it was understood."""
    return {
        "deliveries": [
            {"supplier": delivery.supplier, "note": delivery.note_no, "base": delivery.base,
             "arrived": delivery.arrived.isoformat(), "cones": len(delivery.cones),
             "batches": sorted({cone.batch or "not stated" for cone in delivery.cones})}
            for delivery in note.deliveries
        ],
        "troubles": [_trouble_data(trouble) for trouble in note.troubles],
        "notes": list(note.notes),
    }


def orders_data(orders: OrdersList) -> Data:
    """A list of orders as it was understood, without what it says of the customers."""
    return {
        "orders": [
            {"number": order.number, "placed": order.placed.isoformat(),
             "customer": "none" if order.buyer is None else "known" if order.buyer.known else "new",
             "lines": [{"what": line.wanted.what, "count": line.wanted.count,
                        "read": not line.doubt} for line in order.lines]}
            for order in orders.orders
        ],
        "left_out": list(orders.out),
        "in_the_book_already": list(orders.before),
        "troubles": [_trouble_data(trouble) for trouble in orders.troubles],
        "notes": list(orders.notes),
    }


def _trouble_data(trouble: RowTrouble) -> Data:
    return {"row": trouble.row, "column": trouble.column, "what": trouble.what,
            "kept": trouble.kept}


def _labelled(one: Traced) -> Iterator[tuple[str, str]]:
    return ((label, f"{label:<{_LABEL}}{words}") for label, words in sentences(one))


def _now_data(now: Now) -> Data:
    bounds = _link_data(now.link) if now.link else {}
    return {"state": now.state, "put_up": now.put_up, "count": now.count, "grams": now.mg / 1000,
            **bounds}


def _link_data(link: Link) -> Data:
    return {"certainty": link.word, "least": link.least, "most": link.most, "of": link.of,
            "expected": _decimal(link.expected), "share": _decimal(link.share)}


def _decimal(number: Fraction) -> float:
    return round(float(number), 6)
