"""Separated text (CSV): its encoding, its separator and its quotation marks found out."""

import csv
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from io import StringIO

from app.exchange.cells import Cell, read_cell
from app.problems import BadInput

_SEPARATORS = (";", "\t", ",", "|")
_LOOKED_AT = 40  # lines
_BYTE_ORDER = {b"\xef\xbb\xbf": "utf-8-sig", b"\xff\xfe": "utf-16", b"\xfe\xff": "utf-16"}
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\ufffe\uffff]")
_LINE_END = re.compile(r"\r\n|\r|\n")
_HINT = re.compile(r"sep=(.)\s*$")
_UNCLOSED = ("A quotation mark in this file is not closed or stands inside a cell: "
             "it was read line by line.")


def separated_rows(data: bytes) -> tuple[Iterator[tuple[Cell, ...]], list[str]]:
    """The cells of each line, and what was seen; raises BadInput where this is no text."""
    text = decoded(data)
    hint = _HINT.match(text.partition("\n")[0])
    separator = hint[1] if hint else _separator(text)
    records = _quoted(text, separator)
    notes = []
    if records is None:
        records, notes = _line_by_line(text, separator), [_UNCLOSED]
    skipped = [()] if hint else []
    return _cells([*skipped, *records[len(skipped):]]), notes


def _cells(records: Iterable[Iterable[str]]) -> Iterator[tuple[Cell, ...]]:
    return (tuple(map(read_cell, record)) for record in records)


def decoded(data: bytes) -> str:
    """The text of a file in any usual encoding; raises BadInput where this is no text."""
    for encoding in _encodings(data):
        try:
            text = data.decode(encoding)
        except UnicodeError:
            continue
        if not _CONTROL.search(text):
            return text
    raise BadInput("This is neither a spreadsheet nor a list in plain text.",
                   "Choose the list itself, saved as XLSX or CSV.")


def _encodings(data: bytes) -> Iterator[str]:
    """Marked ones as they are marked; else two bytes a character, UTF-8, or Western Windows."""
    marked = next((name for mark, name in _BYTE_ORDER.items() if data.startswith(mark)), None)
    if marked:
        yield marked
        return
    even, odd = data[0:4000:2].count(0), data[1:4000:2].count(0)
    if (even + odd) * 8 > len(data[:4000]):
        yield "utf-16-le" if odd > even else "utf-16-be"
    else:
        yield from ("utf-8", "cp1252")


def _separator(text: str) -> str:
    """The one that cuts the most of the first lines into equally many cells."""
    some = _LINE_END.split(text[:200_000])
    lines = [line[:5_000] for line in some if line.strip()][:_LOOKED_AT]

    def evenness(separator: str) -> tuple[int, int]:
        widths = Counter(len(record) for record in csv.reader(lines, delimiter=separator)
                         if len(record) > 1)
        width, times = max(widths.items(), key=lambda one: (one[1], one[0]), default=(0, 0))
        return times, width

    return max(_SEPARATORS, key=evenness)


def _quoted(text: str, separator: str) -> list[list[str]] | None:
    """The records with their quotation marks; none where a mark swallowed other lines."""
    try:
        records = list(csv.reader(StringIO(text, newline=""), delimiter=separator, strict=True))
    except csv.Error:
        return None
    width = max(map(len, records[:_LOOKED_AT]), default=0)
    swallowed = any(
        line.count(separator) >= max(2, width - 2)
        for record in records for cell in record if "\n" in cell or "\r" in cell
        for line in _LINE_END.split(cell)
    )
    return None if swallowed else records


def _line_by_line(text: str, separator: str) -> list[list[str]]:
    try:
        return [[cell.strip().strip('"') for cell in record] for record in csv.reader(
            _LINE_END.split(text), delimiter=separator, quoting=csv.QUOTE_NONE)]
    except csv.Error as error:
        raise BadInput(f"This list cannot be read: {error}.",
                       "Save it again as XLSX or CSV.") from error
