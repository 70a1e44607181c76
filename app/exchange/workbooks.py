"""Workbooks (XLSX): the values that were saved in the first sheet with anything on it."""

import re
import zlib
from collections.abc import Iterator
from datetime import date, datetime, time
from decimal import Decimal
from io import BytesIO
from math import isfinite
from typing import Any
from zipfile import BadZipFile, ZipFile

from openpyxl import load_workbook

from app.exchange.cells import Cell, Formula, read_cell
from app.problems import BadInput

MOST_UNPACKED = 400_000_000
_BROKEN = (BadZipFile, KeyError, ValueError, TypeError, AttributeError, IndexError, OSError,
           SyntaxError, EOFError, NotImplementedError, RuntimeError, zlib.error)
_LITERAL = re.compile(r'"[^"]*"|\\.')  # of a number's format: what is only written beside it
_ERRORS = ("#N/A", "#DIV/0!", "#REF!", "#NAME?", "#VALUE!", "#NUM!", "#NULL!")


def workbook_rows(data: bytes) -> tuple[Iterator[tuple[Cell, ...]], list[str]]:
    """The cells of each row, and notes that grow while they are read; raises BadInput."""
    reckons = _looked_into(data)
    notes: list[str] = []
    return _sheet_rows(data, reckons, notes), notes


def _no_workbook() -> BadInput:
    return BadInput("This is no XLSX workbook, or it is damaged.",
                    "Open it in the program it came from and save it as XLSX or CSV.")


def _looked_into(data: bytes) -> bool:
    """Whether any cell reckons; refused where the file would unpack to more than a list can be."""
    try:
        with ZipFile(BytesIO(data)) as packed:
            if "xl/workbook.xml" not in packed.namelist():
                raise _no_workbook()
            if sum(part.file_size for part in packed.infolist()) > MOST_UNPACKED:
                raise BadInput("This workbook unpacks to more than any list of a studio holds.",
                               "Save the one sheet that is meant as CSV.")
            sheets = [n for n in packed.namelist() if n.startswith("xl/worksheets/")]
            return any(b"<f>" in part or b"<f " in part
                       for name in sheets for part in _pieces(packed, name))
    except _BROKEN as error:
        raise _no_workbook() from error


def _pieces(packed: ZipFile, name: str) -> Iterator[bytes]:
    """A part of the file in pieces that overlap, so that no tag falls between two."""
    before = b""
    with packed.open(name) as part:
        while piece := part.read(1_000_000):
            yield before + piece
            before = piece[-3:]


def _sheet_rows(data: bytes, reckons: bool, notes: list[str]) -> Iterator[tuple[Cell, ...]]:
    try:
        yield from _first_with_anything(data, reckons, notes)
    except _BROKEN as error:
        raise _no_workbook() from error


def _first_with_anything(
    data: bytes, reckons: bool, notes: list[str]
) -> Iterator[tuple[Cell, ...]]:
    values = load_workbook(BytesIO(data), read_only=True, data_only=True)
    written = load_workbook(BytesIO(data), read_only=True) if reckons else None
    for sheet in values.worksheets:
        rows = _cells(sheet, written and written[sheet.title])
        for blank, row in enumerate(rows):
            if any(cell != "" for cell in row):
                notes += _other_sheets(sheet.title, len(values.worksheets))
                yield from ((),) * blank
                yield row
                yield from rows
                return


def _other_sheets(read: str, sheets: int) -> list[str]:
    return [f"Only the sheet “{read}” was read; there are {sheets}."] if sheets > 1 else []


def _cells(values: Any, written: Any) -> Iterator[tuple[Cell, ...]]:
    """Each row's cells; where some reckon, beside what was written in them."""
    values.reset_dimensions()  # what a file says of its own size may be wrong
    if written is None:
        return (tuple(map(_shown, row)) for row in values.iter_rows())
    written.reset_dimensions()
    both = zip(values.iter_rows(), written.iter_rows(), strict=True)
    return (tuple(map(_reckoned, saw, said)) for saw, said in both)


def _reckoned(saw: Any, said: Any) -> Cell:
    """The saved value of a cell that reckons, else its formula, which is not taken."""
    if said.data_type == "f" and saw.value is None:
        return Formula(str(getattr(said.value, "text", said.value)))
    return _shown(saw)


def _shown(cell: Any) -> Cell:
    """A cell's value; a number that is shown as per cent says so, for 0.85 % is kept as 0.0085."""
    value = _cell(cell.value)
    if not isinstance(value, Decimal) or "%" not in _LITERAL.sub("", cell.number_format or ""):
        return value
    return f"{(value * 100).normalize():f} %"


def _cell(value: Any) -> Cell:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int) or (isinstance(value, float) and isfinite(value)):
        return Decimal(repr(value))
    if isinstance(value, datetime | date):
        return value
    if isinstance(value, time):
        return value.isoformat()
    return Formula(value) if value in _ERRORS else read_cell(str(value))
