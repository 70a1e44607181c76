"""Readings of an instrument as CGATS.17 text: keywords, a data format, and sets of data.

The form is that of the open standard ANSI CGATS.17 (ISO 28178), from memory: words apart by
spaces or tabs, texts in double quotation marks, comments from # to the end of the line.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from app.exchange.cells import Cell, Row, Table, read_cell
from app.exchange.separated import decoded
from app.problems import BadInput

_BEGINS = re.compile(rb"BEGIN_DATA_FORMAT|B\x00E\x00G\x00I\x00N\x00_\x00D\x00A\x00T\x00A\x00_")
_WORD = re.compile(r'"([^"]*)"|(#.*)|([^\s"]\S*)')
_LINES = re.compile(r"\r\n|\r|\n")
_COMMA = re.compile(r"[-+]?\d+,\d+")
_NUMBER = re.compile(r"[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,2})?")
_LAMP = re.compile(r"\bIllumin\w*\W+(D\d\d|A|F\d{1,2}|LED-B\d)\b", re.IGNORECASE)
_OBSERVER = re.compile(r"\bObserver\w*\W+(2|10)\b", re.IGNORECASE)
_SAY = "Save the readings again as CGATS text, or as CSV."
MOST_SETS = 20_000


@dataclass(slots=True)
class _File:
    """What was met so far."""

    above: dict[str, str] = field(default_factory=dict)
    names: list[str] = field(default_factory=list)
    sets: list[Row] = field(default_factory=list)
    promised: dict[str, str] = field(default_factory=dict)
    tables: int = 0
    heads_at: int = 0


def is_cgats(data: bytes) -> bool:
    """Whether a file is of this form, by its own words."""
    return _BEGINS.search(data[:200_000]) is not None


def cgats_table(data: bytes) -> Table:
    """The sets as rows under their headings; above them what the file says of lamp and observer.

    Raises BadInput, naming the line, for anything that cannot be read: nothing half.
    """
    file, inside = _File(), ""
    for number, line in enumerate(_LINES.split(decoded(data)), 1):
        words = _words(line, number)
        inside = _line(file, words, inside, number)
    if inside:
        raise BadInput(f"The file ends within its {'sets' if inside == 'DATA' else 'data format'}: "
                       "it was cut off; nothing was taken.", _SAY)
    _must_be_whole(file)
    above = [Row(0, (label, words)) for label, words in file.above.items()]
    heads = Row(file.heads_at, tuple(file.names))
    return Table((*above, heads, *file.sets))


def _line(file: _File, words: list[str], inside: str, number: int) -> str:
    """Takes one line in; within what the next one stands."""
    if not words:
        return inside
    keyword = words[0].upper()
    if keyword in ("BEGIN_DATA_FORMAT", "BEGIN_DATA", "END_DATA_FORMAT", "END_DATA"):
        return _border(file, words, inside, number)
    if inside == "DATA_FORMAT":
        file.names += words
    elif inside == "DATA":
        file.sets.append(_set(file.names, words, number))
    else:
        _keyword(file, keyword, words[1:])
    return inside


def _border(file: _File, words: list[str], inside: str, number: int) -> str:
    """Where the format or the data begin or end."""
    does, _, what = words[0].upper().partition("_")
    if len(words) > 1 or inside != ("" if does == "BEGIN" else what):
        raise _wrong(number, f"{does}_{what} does not stand where it may")
    if does == "END":
        return ""
    file.tables += what == "DATA"
    file.heads_at = file.heads_at or number
    return what


def _keyword(file: _File, keyword: str, words: Sequence[str]) -> None:
    said = " ".join(words)
    if keyword in ("NUMBER_OF_SETS", "NUMBER_OF_FIELDS"):
        file.promised[keyword] = said
    elif keyword == "INSTRUMENTATION":
        file.above["instrument"] = said
    if lamp := _LAMP.search(said):
        file.above["lamp"] = lamp[1].upper()
    if observer := _OBSERVER.search(said):
        file.above["observer"] = observer[1]


def _set(names: Sequence[str], words: list[str], number: int) -> Row:
    if not names:
        raise _wrong(number, "data stand before their format")
    if len(words) != len(names):
        raise _wrong(number, f"{len(words)} values stand where {len(names)} fields are named")
    for name, word in zip(names, words, strict=True):
        if not name.upper().startswith("LAB_"):
            continue
        if _COMMA.fullmatch(word):
            raise _wrong(number, f"{name} has a decimal comma, {word}, and this form of file "
                                 "knows points only")
        if not _NUMBER.fullmatch(word):
            raise _wrong(number, f"{name} is no number, {word[:40]}")
    cells: tuple[Cell, ...] = tuple(map(read_cell, words))
    return Row(number, cells)


def _words(line: str, number: int) -> list[str]:
    words: list[str] = []
    at = 0
    for match in _WORD.finditer(line):
        if '"' in line[at:match.start()]:
            raise _wrong(number, "a quotation mark is not closed")
        at = match.end()
        if match[2] is not None:
            return words
        words.append(match[3] if match[1] is None else match[1])
    if '"' in line[at:]:
        raise _wrong(number, "a quotation mark is not closed")
    return words


def _must_be_whole(file: _File) -> None:
    if file.tables != 1:
        raise BadInput(f"The file has {file.tables or 'no'} tables of data, and one is needed; "
                       "nothing was taken.", _SAY)
    if len(file.sets) > MOST_SETS:
        raise BadInput(f"The file has more than {MOST_SETS:,} sets; nothing was taken.",
                       "Choose the right file, or cut it into parts.")
    if not file.sets:
        raise BadInput("No readings stand in this file; nothing was taken.", _SAY)
    for keyword, there in (("NUMBER_OF_SETS", len(file.sets)),
                           ("NUMBER_OF_FIELDS", len(file.names))):
        promised = file.promised.get(keyword, str(there))
        if promised != str(there):
            raise BadInput(f"The file says {keyword} {promised[:20]}, and {there} are there; "
                           "nothing was taken.", _SAY)


def _wrong(number: int, what: str) -> BadInput:
    return BadInput(f"Line {number}: {what}. Nothing was taken.", _SAY)
