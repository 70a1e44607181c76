"""From the bytes of a file to rows of cells: CSV in any usual writing, and XLSX."""

import warnings
from collections.abc import Iterable, Iterator
from itertools import islice
from pathlib import Path

from app.exchange.cells import Cell, Row, Table
from app.exchange.separated import separated_rows
from app.exchange.workbooks import workbook_rows
from app.problems import BadInput

MOST_ROWS = 20_000
MOST_BYTES = 50_000_000
_ZIP, _OLD_OFFICE, _PDF = b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"%PDF"


def bytes_of(path: Path) -> bytes:
    """What is in a file, no more than is looked at; raises BadInput where it cannot be opened."""
    try:
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except OSError as error:
        raise BadInput(f"{path.name} cannot be opened: {error.strerror or error}.",
                       "Look whether it is still there, then choose it again.") from error


def read_table(data: bytes) -> Table:
    """The rows of a CSV or XLSX file, told apart by what is in it, not by its name.

    Raises BadInput where it is neither, or too large to be a list of ours.
    """
    if not data.strip(b"\0 \t\r\n"):
        raise BadInput("The file is empty.", "Look whether it was saved whole.")
    if len(data) > MOST_BYTES:
        raise BadInput(f"The file has {len(data) / 1e6:.0f} MB: no list of a studio is so long.",
                       "Choose the right file, or cut it into parts.")
    if data.startswith(_OLD_OFFICE):
        raise BadInput("This is a spreadsheet in an old form, or one locked with a password.",
                       "Open it in the program it came from and save it as XLSX or CSV.")
    if data.startswith(_PDF):
        raise BadInput("This is a PDF: a picture of a list, not the list.",
                       "Ask the sender for the list as XLSX or CSV.")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of a workbook's pictures and rules for entry
        cells, notes = workbook_rows(data) if data.startswith(_ZIP) else separated_rows(data)
        rows = tuple(islice(_rows(cells), MOST_ROWS + 1))
    if len(rows) > MOST_ROWS:
        raise BadInput(f"The file has more than {MOST_ROWS:,} rows; nothing was taken from it.",
                       "Choose the right file, or cut it into parts.")
    if not rows:
        raise BadInput("Nothing stands in this file.", "Look whether it was saved whole.")
    return Table(rows, tuple(notes))


def _rows(cells: Iterable[tuple[Cell, ...]]) -> Iterator[Row]:
    for number, row in enumerate(cells, 1):
        last = max((place for place, cell in enumerate(row, 1) if cell != ""), default=0)
        if last:
            yield Row(number, row[:last])
