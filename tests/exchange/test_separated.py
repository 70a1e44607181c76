"""Separated text in every usual writing."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.exchange.cells import Formula
from app.exchange.separated import separated_rows
from app.problems import BadInput

PLAIN = "Cone;Hülse g;Qualité\n114;64;Garn „Döll“\n"


def rows(data: bytes | str) -> list[tuple[object, ...]]:
    return list(separated_rows(data.encode() if isinstance(data, str) else data)[0])


@pytest.mark.parametrize("encoding", [
    "utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
def test_every_usual_encoding_is_read(encoding: str) -> None:
    assert rows(PLAIN.encode(encoding)) == [("Cone", "Hülse g", "Qualité"),
                                           ("114", "64", "Garn „Döll“")]


@pytest.mark.parametrize("separator", [";", ",", "\t", "|"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_the_separator_is_found_out(separator: str, end: str) -> None:
    lines = [("Cone", "Gross", "Batch"), ("114", "1462", "A-203"), ("115", "1470", "A-203")]
    text = end.join(separator.join(line) for line in lines) + end
    assert [row for row in rows(text) if row] == lines


def test_decimal_commas_do_not_count_as_separators() -> None:
    assert rows("Cone;Gross\n1;1462,5\n2;1470,5\n3;1400,0\n")[1] == ("1", "1462,5")
    assert rows('Cone,Gross\n1,"1,462.5"\n2,"1,470.5"\n')[2] == ("2", "1,470.5")


def test_a_title_above_the_table_does_not_hide_its_separator() -> None:
    text = "Aske Mill, Tolling Weir, delivery note 2241\n\nCone;Gross\n1;1462\n2;1470\n"
    assert rows(text)[2:4] == [("Cone", "Gross"), ("1", "1462")]


def test_a_spreadsheets_hint_names_the_separator_and_counts_as_a_row() -> None:
    assert rows("sep=|\nCone|Gross, g\n1|1462\n") == [(), ("Cone", "Gross, g"), ("1", "1462")]


def test_a_cell_in_quotation_marks_may_hold_a_separator_and_a_line_end() -> None:
    found, notes = separated_rows(b'Cone;Remark\n1;"knots; 2\nby hand"\n')
    assert list(found) == [("Cone", "Remark"), ("1", "knots; 2\nby hand")]
    assert notes == []


@pytest.mark.parametrize("broken", [
    'Cone;Gross;Batch\n1;"1462;A\n2;1470;A\n3;1480;A\n',
    'Cone;Gross;Batch\n1;"1462;A\n2;1470;A\n3;1480";A\n',
    'Cone;Gross;Batch\n1;"1462"x;A\n2;1470;A\n3;1480;A\n',
])
def test_an_open_quotation_mark_never_swallows_the_other_rows(broken: str) -> None:
    found, notes = separated_rows(broken.encode())
    assert ("2", "1470", "A") in list(found)
    assert "read line by line" in notes[0]


def test_formulas_are_told_apart_from_values() -> None:
    assert rows("Cone;Gross\n1;=A1*2\n")[1] == ("1", Formula("=A1*2"))


@pytest.mark.parametrize("junk", [
    b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", bytes(range(256)), b"\xff\xfe\x00\xd8",
    b"Cone;Gross\n1;\x81\x8d\n", b"\xff\xfea", b"Cone\x00;Gross\n",
    b"\xff\xfe\x00\x00C\x00\x00\x00",
])
def test_what_is_no_text_is_refused_with_a_sentence(junk: bytes) -> None:
    with pytest.raises(BadInput, match="neither a spreadsheet nor a list"):
        rows(junk)


def test_a_cell_longer_than_any_list_has_is_refused_with_a_sentence() -> None:
    with pytest.raises(BadInput, match="cannot be read"):
        rows("Cone;Gross\n1;" + "9" * 200_000 + "\n")


@given(st.binary(max_size=300))
def test_any_bytes_are_rows_or_a_sentence(data: bytes) -> None:
    with suppress(BadInput):
        assert all(isinstance(cell, str | Formula) for row in rows(data) for cell in row)
