"""What the inspecting bench asks the book: which lot is meant, and all that is known of its look.
"""

from dataclasses import dataclass
from typing import Any

from app.calculations.codes import bare_characters, shown
from app.calculations.shade_words import Bands
from app.lookups.lot_lines import LotLine, lot_line
from app.lookups.lot_shade import LotShade, lot_shade
from app.lookups.now import NOW
from app.lookups.reel import disc_now
from app.lookups.shade_bands import shade_bands
from app.lookups.shade_map import colourway_of
from app.lookups.things import Found, by_code
from app.lookups.to_inspect import lot_before
from app.lookups.untagged import lot_meant
from app.problems import NotFound
from app.scanning.resolve import resolve

KINDS = frozenset({"lot", "skein", "tag", "disc"})


@dataclass(frozen=True, slots=True)
class Inspected:
    """A lot in the inspector's hand."""

    lot: int
    code: str
    shown: str
    colourway: str
    base: str
    swatch: str | None
    """Of the colourway, chosen by eye."""
    shade: LotShade
    standard: tuple[int, int]
    """The colourway and base that its standard is of."""
    before: LotLine | None
    """The lot that was dyed before it, read or not."""
    bands: Bands
    """How far apart the studio says what."""


def inspected(connection: Any, lot: int) -> Inspected:
    """All that is known of how this lot looks."""
    line = lot_line(connection, lot)
    return Inspected(lot, line.code or "", line.shown, line.colourway, line.base, line.swatch,
                     lot_shade(connection, lot), colourway_of(connection, lot),
                     lot_before(connection, lot), shade_bands(connection))


def scanned(connection: Any, code: str, typed: bool) -> Inspected:
    """The lot of a disc, a tag or a lot's code; raises NotFound where there is none."""
    answer = resolve(connection, code, typed, KINDS) if typed else None
    found = by_code(connection, code) if answer is None else answer.found
    if found is None and answer is not None:
        raise NotFound(answer.sentence, answer.next_step)
    if found is None:
        raise NotFound(f"{shown(code)} is not in the book.", "Scan a disc, a tag or a lot's card.")
    return inspected(connection, _lot_of(connection, found))


def _lot_of(connection: Any, found: Found) -> int:
    if found.kind == "disc":
        on = disc_now(connection, found.code, NOW)
        cord = None if on is None else on.bundle
        if cord is None or cord.lot is None:
            what = "on nothing" if cord is None else "on yarn that was not dyed"
            raise NotFound(f"Disc {shown(found.code)} hangs {what}.",
                           "Scan the disc of a dyed cord, or a tag.")
        lot = by_code(connection, bare_characters(cord.lot))
        if lot is None:
            raise NotFound(f"The lot on disc {shown(found.code)} has no code yet.",
                           "Give it its code at the pot first.")
        return lot.id
    meant = lot_meant(connection, found)
    if meant is None:
        raise NotFound(f"{found.shown} is of no lot.", "Scan a disc, a tag or a lot's card.")
    return meant.found.id
