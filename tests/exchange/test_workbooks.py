"""Workbooks: saved values, and formulas told."""

import io
import zipfile
from datetime import datetime
from decimal import Decimal

import pytest
from openpyxl import Workbook

from app.exchange import workbooks
from app.exchange.cells import Formula
from app.exchange.workbooks import workbook_rows
from app.exchange.written import money, pieces
from app.problems import BadInput
from tests.exchange.files import workbook

DAY = datetime(2026, 3, 13)  # noqa: DTZ001 - a spreadsheet knows no time zones


def with_saved_value(data: bytes, formula: str, value: str) -> bytes:
    """The file as a spreadsheet saves it: the formula with the value it had."""
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(file, "w") as new:
        for name in old.namelist():
            part = old.read(name)
            if name.startswith("xl/worksheets/"):
                before = f"<f>{formula}</f><v />".encode()
                assert before in part or name != "xl/worksheets/sheet1.xml"
                part = part.replace(before, f"<f>{formula}</f><v>{value}</v>".encode())
            new.writestr(name, part)
    return file.getvalue()


def rows(data: bytes) -> list[tuple[object, ...]]:
    return list(workbook_rows(data)[0])


def test_values_are_read_as_the_file_keeps_them() -> None:
    data = workbook(("Cone", "Gross", "Day", "Ok"), (114, 1462.5, DAY, True))
    assert rows(data)[1] == (Decimal(114), Decimal("1462.5"), DAY, "yes")


@pytest.mark.parametrize(("shape", "said"), [
    ("0.00%", "0.85 %"), ("0%;[Red]-0%", "0.85 %"), ('0.0000"%"', Decimal("0.0085")),
    ("0.0000\\%", Decimal("0.0085")), ("General", Decimal("0.0085"))])
def test_a_number_shown_as_per_cent_says_so(shape: str, said: object) -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet["A1"], sheet["B1"] = 0.0085, "=A1"
    sheet["A1"].number_format = shape
    file = io.BytesIO()
    book.save(file)
    assert rows(file.getvalue())[0][0] == said


def test_a_formula_without_a_saved_value_is_told_and_not_taken() -> None:
    data = workbook(("Cone", "Gross"), (114, "=1400+62"))
    assert rows(data)[1] == (Decimal(114), Formula("=1400+62"))


def test_a_formula_with_its_saved_value_gives_the_value() -> None:
    data = with_saved_value(workbook(("Cone", "Gross"), (114, "=1400+62")), "1400+62", "1462")
    assert rows(data)[1] == (Decimal(114), Decimal(1462))


def test_text_that_begins_as_a_formula_does_is_told_too() -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for place, text in enumerate(("+41", "@x", "-64", "=1"), 1):
        cell = sheet.cell(1, place, text)
        cell.data_type = "s"
    file = io.BytesIO()
    book.save(file)
    assert rows(file.getvalue())[0] == tuple(map(Formula, ("+41", "@x", "-64", "=1")))


@pytest.mark.parametrize("error", ["#REF!", "#N/A", "#DIV/0!", "#VALUE!"])
def test_a_spreadsheets_error_is_no_value(error: str) -> None:
    assert rows(workbook((error,)))[0] == (Formula(error),)


def test_the_first_sheet_with_anything_is_read_and_the_others_are_told() -> None:
    data = workbook(more=(("Note 118", ("Cone", "Gross")), ("Prices", ("a", "b"))))
    found, notes = workbook_rows(data)
    assert list(found) == [("Cone", "Gross")]
    assert notes == ["Only the sheet “Note 118” was read; there are 3."]


def test_empty_rows_above_the_table_keep_its_rows_numbers() -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet["B4"] = "Cone"
    file = io.BytesIO()
    book.save(file)
    found = rows(file.getvalue())
    assert len(found) == 4
    assert found[3][1] == "Cone"


def _zip(**parts: str) -> bytes:
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w") as packed:
        for name, text in parts.items():
            packed.writestr(name.replace("__", "/"), text)
    return file.getvalue()


@pytest.mark.parametrize("data", [
    b"PK\x03\x04 not really", _zip(mimetype="application/vnd.oasis.opendocument.spreadsheet"),
    _zip(xl__workbook_xml="x"), workbook(("Cone",))[:-200],
])
def test_what_is_no_workbook_is_refused_with_a_sentence(data: bytes) -> None:
    with pytest.raises(BadInput, match="no XLSX workbook, or it is damaged"):
        rows(data)


def test_a_workbook_with_broken_insides_is_refused_with_a_sentence() -> None:
    good = workbook(("Cone", "Gross"), (114, 1462))
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(good)) as old, zipfile.ZipFile(file, "w") as new:
        for name in old.namelist():
            part = old.read(name)
            new.writestr(name, part[: len(part) // 2] if "sheet1" in name else part)
    with pytest.raises(BadInput, match="damaged"):
        rows(file.getvalue())


def test_a_file_that_unpacks_to_far_too_much_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(workbooks, "MOST_UNPACKED", 1_000)
    with pytest.raises(BadInput, match="unpacks to more"):
        rows(workbook(("Cone",)))


@pytest.mark.parametrize("written", ["1E400", "-1E400", "9" * 4_000])
def test_a_number_that_no_cell_can_hold_is_words_or_a_number_and_no_fault(written: str) -> None:
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(workbook(("Count",), (777,)))) as old, zipfile.ZipFile(
            file, "w") as new:
        for name in old.namelist():
            new.writestr(name, old.read(name).replace(b"<v>777</v>", f"<v>{written}</v>".encode()))
    (_, (cell,)) = rows(file.getvalue())
    with pytest.raises(BadInput):
        pieces(cell, 500)
    with pytest.raises(BadInput):
        money(cell, frozenset())
