"""A file of any kind as rows, or a sentence."""

import time
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.exchange.reading import MOST_ROWS, read_table
from app.problems import BadInput
from tests.exchange.test_workbooks import workbook


def test_csv_and_xlsx_of_one_list_give_the_same_rows() -> None:
    lines = [("Cone", "Batch"), ("T-0114", "A-203"), ("T-0115", "A-203")]
    text = "\n".join(";".join(line) for line in lines)
    assert read_table(text.encode()) == read_table(workbook(*lines))


def test_rows_are_numbered_as_a_spreadsheet_shows_them_and_empty_ones_left_out() -> None:
    table = read_table(b"\n\nCone;Gross\n;\n1;1462;;\n")
    assert [(row.number, row.cells) for row in table.rows] == [
        (3, ("Cone", "Gross")), (5, ("1", "1462"))]


@pytest.mark.parametrize(("data", "what"), [
    (b"", "empty"), (b" \r\n\t", "empty"), (b"\0\0\0", "empty"),
    (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "old form, or one locked"),
    (b"%PDF-1.7 ...", "This is a PDF"), (b";;\n;;\n", "Nothing stands"),
    (b"\x89PNG\r\n\x1a\n\0", "neither a spreadsheet"), (b"PK\x03\x04....", "no XLSX workbook"),
])
def test_what_cannot_be_read_is_refused_with_what_to_do(data: bytes, what: str) -> None:
    with pytest.raises(BadInput, match=what) as refused:
        read_table(data)
    assert refused.value.next_step


def test_a_list_may_be_long_but_not_endless() -> None:
    line = b"2241;Tarnfield 4-ply;A-203;1.462,5;64\n"
    assert len(read_table(line * MOST_ROWS).rows) == MOST_ROWS
    with pytest.raises(BadInput, match=r"more than 20,000 rows; nothing was taken"):
        read_table(line * (MOST_ROWS + 1))


def test_a_hundred_thousand_rows_are_refused_within_seconds() -> None:
    begun = time.perf_counter()
    with pytest.raises(BadInput, match="more than 20,000 rows"):
        read_table(b"2241;Tarnfield 4-ply;A-203;1.462,5;64\n" * 100_000)
    assert time.perf_counter() - begun < 10  # a tenth of it on a quiet machine


@pytest.mark.long
def test_a_workbook_of_a_hundred_thousand_rows_is_refused_without_reading_it_all() -> None:
    data = workbook(*[("2241", "Tarnfield 4-ply", "A-203", 1462.5, 64)] * 100_000)
    begun = time.perf_counter()
    with pytest.raises(BadInput, match="more than 20,000 rows"):
        read_table(data)
    assert time.perf_counter() - begun < 30


def test_a_file_of_many_megabytes_is_refused_unread() -> None:
    with pytest.raises(BadInput, match="The file has 51 MB"):
        read_table(b"x" * 51_000_000)


@given(st.binary(max_size=200), st.sampled_from([b"", b"PK\x03\x04", b"\xff\xfe", b"\xef\xbb\xbf"]))
def test_any_file_is_rows_or_a_sentence(data: bytes, start: bytes) -> None:
    with suppress(BadInput):
        assert read_table(start + data).rows
