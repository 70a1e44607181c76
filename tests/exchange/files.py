"""Files as mills send them."""

import io
from typing import Any

from openpyxl import Workbook


def workbook(*rows: tuple[Any, ...], more: tuple[tuple[str, tuple[Any, ...]], ...] = ()) -> bytes:
    """A workbook of these rows, and of more sheets with one row each."""
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in rows:
        sheet.append(row)
    for name, row in more:
        book.create_sheet(name).append(row)
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()
