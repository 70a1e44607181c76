"""A code of which a part could be read: every one that fits, with what tells them apart."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sqlalchemy import Connection

from app.calculations.codes import Kind, bare_characters, places
from app.calculations.spoken_codes import written_down
from app.calculations.typed_codes import UNREADABLE
from app.lookups.lot_lines import LotLine, lot_lines
from app.lookups.recall import recall_list
from app.lookups.things import Found, by_codes
from app.scanning.how_known import BASIS_OF, Came
from app.scanning.resolve import resolve

_MOST_ASKED = 12
"""Lots whose buyers are looked up; more fits than that help nobody choose."""


@dataclass(frozen=True, slots=True)
class Fit:
    """One code that fits; `lot` says colourway, base, day and what is left, none where it is of no
    lot. `mended` characters are read otherwise than they were typed."""

    found: Found
    lot: LotLine | None
    mended: int
    said: int
    """How many of the words that were said beside the code stand in its colourway or base."""
    buyers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Fits:
    """All that fit, the best first; what to answer whoever sent it, and how a link is saved."""

    fits: tuple[Fit, ...]
    sentence: str
    next_step: str
    reply: str
    basis: str = BASIS_OF[Came.GAPS]


def what_fits(connection: Connection, text: str, said: str = "") -> Fits:
    """The codes of the book that `26?9K4?` may be, with what was `said` of the yarn: 'teal 4-ply'.

    Best first: fewest characters read otherwise than typed, most of the words said, the newest by
    its year and week. Nothing is chosen.
    """
    answer = resolve(connection, text, True)
    things = answer.choices or ((answer.found,) if answer.found else ())
    lines = lines_of(connection, things)
    lots = sorted({line.lot for line in lines.values()})
    buyers = {lot: _buyers(connection, lot) for lot in lots[-_MOST_ASKED:]}
    fits = [_fit(thing, lines.get(thing), buyers, text, said) for thing in things]
    newest = sorted(fits, key=lambda fit: fit.found.code, reverse=True)
    best = sorted(newest, key=lambda fit: (fit.mended, -fit.said))
    return Fits(tuple(best), answer.sentence, answer.next_step, reply_to(len(best)))


def said_with_gaps(text: str) -> tuple[str, str] | None:
    """A code with gaps or spelled in words, and what was said of the yarn beside it.

    None where every character of a code could be read, or no code was meant.
    """
    if written_down(text) != text:
        return text, ""
    if UNREADABLE not in text:
        return None
    words = text.split()
    for count in range(len(words), 0, -1):
        code = "".join(words[:count])
        if places(len(bare_characters(code))) and all(map(_may_be_of_a_code, words[:count])):
            return " ".join(words[:count]), " ".join(words[count:])
    return text, ""


def _may_be_of_a_code(word: str) -> bool:
    return len(word) == 1 or UNREADABLE in word or any(c.isdigit() for c in word)


def lines_of(connection: Connection, things: Iterable[Found]) -> Mapping[Found, LotLine]:
    """{thing: the lot it is or is of, with its day and what is left of it}; others are not there.
    """
    lots = _lots_of(connection, list(things))
    lines = {line.lot: line for line in lot_lines(connection, set(lots.values()))}
    return {thing: lines[lot] for thing, lot in lots.items() if lot in lines}


def _lots_of(connection: Connection, things: Iterable[Found]) -> Mapping[Found, int]:
    """{thing: the lot it is or is of}"""
    lots = {thing: thing.id for thing in things if thing.kind == Kind.LOT}
    marked = {thing: thing.code.rpartition("-")[0] for thing in things
              if thing.kind in ("skein", "tag")}
    known = {lot.code: lot.id for lot in by_codes(connection, marked.values())
             if lot.kind == Kind.LOT}
    return lots | {thing: known[code] for thing, code in marked.items() if code in known}


def _fit(thing: Found, line: LotLine | None, buyers: Mapping[int, tuple[str, ...]], text: str,
         said: str) -> Fit:
    typed, words = bare_characters(written_down(text)), thing.words.casefold()
    mended = sum(a not in (UNREADABLE, b)
                 for a, b in zip(typed, bare_characters(thing.code), strict=False))
    heard = sum(word in words for word in said.casefold().split())
    return Fit(thing, line, mended, heard, buyers.get(line.lot, ()) if line else ())


def _buyers(connection: Connection, lot: int) -> tuple[str, ...]:
    """Names of those who have some of the lot, as far as they are known."""
    rows = recall_list(connection, "lot", lot).rows
    return tuple(sorted({row.name for row in rows if row.name}))


def reply_to(fits: int) -> str:
    """What to answer whoever sent it, where so many codes fit."""
    if fits == 1:
        return ("Please photograph the tag once more, laid flat and in daylight, so that we can be "
                "sure of the lot.")
    return ("Please photograph the tag once more, laid flat and in daylight, the square code "
            "sharp. If the tag is gone: count the colours of the ties on the skein, and tell us "
            "its colourway and base.")
