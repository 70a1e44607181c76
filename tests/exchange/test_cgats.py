"""Readings as CGATS.17 text: read whole, or refused with the line that is wrong."""

from contextlib import suppress

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.exchange.cgats import cgats_table, is_cgats
from app.problems import BadInput

GOOD = '''CGATS.17
ORIGINATOR "a north window"   # who read it
INSTRUMENTATION "Sphere 8"
MEASUREMENT_SOURCE "Illumination=D65\tObserverAngle=10 degrees"
KEYWORD "SAMPLE_NAME"
NUMBER_OF_FIELDS 5
BEGIN_DATA_FORMAT
SAMPLE_ID SAMPLE_NAME
LAB_L LAB_A LAB_B
END_DATA_FORMAT
NUMBER_OF_SETS 2
BEGIN_DATA
1\t"26 15 R6F"\t48.3 -36.6 3.3
# the next card was wound anew
2 2606H3W 48.2 -3.66e1 3.3
END_DATA
'''


def test_sets_are_rows_under_their_headings_with_lamp_and_observer_above() -> None:
    assert is_cgats(GOOD.encode())
    table = cgats_table(GOOD.encode())
    assert [(row.number, tuple(map(str, row.cells))) for row in table.rows] == [
        (0, ("instrument", "Sphere 8")), (0, ("lamp", "D65")), (0, ("observer", "10")),
        (7, ("SAMPLE_ID", "SAMPLE_NAME", "LAB_L", "LAB_A", "LAB_B")),
        (13, ("1", "26 15 R6F", "48.3", "-36.6", "3.3")),
        (15, ("2", "2606H3W", "48.2", "-3.66e1", "3.3"))]


@pytest.mark.parametrize("end", ["\r\n", "\r", "\n"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "cp1252"])
def test_any_line_end_and_encoding_is_read_alike(end: str, encoding: str) -> None:
    data = GOOD.replace("\n", end).encode(encoding)
    assert is_cgats(data)
    assert cgats_table(data).rows == cgats_table(GOOD.encode()).rows


@pytest.mark.parametrize(("old", "new", "why"), [
    ("48.3", "48,3", "Line 13: LAB_L has a decimal comma, 48,3"),
    ("48.3", "none", "Line 13: LAB_L is no number, none"),
    ("48.3", "NaN", "Line 13: LAB_L is no number"),
    ("48.3", "", "Line 13: 4 values stand where 5 fields are named"),
    ('F"', "F", "Line 13: a quotation mark is not closed"),
    ("SETS 2", "SETS 3", "NUMBER_OF_SETS 3, and 2 are there"),
    ("FIELDS 5", "FIELDS 4", "NUMBER_OF_FIELDS 4, and 5 are there"),
    ("END_DATA\n", "", "cut off"),
    ("END_DATA_FORMAT\n", "", "does not stand where it may"),
    ("BEGIN_DATA\n", "", "END_DATA does not stand where it may"),
    ("BEGIN_DATA_FORMAT\n", "BEGIN_DATA\n", "data stand before their format"),
    ("END_DATA\n", "END_DATA\nBEGIN_DATA\nEND_DATA\n", "has 2 tables of data"),
])
def test_what_is_wrong_is_named_and_nothing_is_taken(old: str, new: str, why: str) -> None:
    with pytest.raises(BadInput, match=why) as refused:
        cgats_table(GOOD.replace(old, new, 1).encode())
    assert "othing was taken" in refused.value.what
    assert refused.value.next_step


def test_a_file_without_sets_and_one_of_no_text_are_refused() -> None:
    with pytest.raises(BadInput, match="No readings"):
        cgats_table(b"BEGIN_DATA_FORMAT\nLAB_L\nEND_DATA_FORMAT\nBEGIN_DATA\nEND_DATA\n")
    with pytest.raises(BadInput, match="neither a spreadsheet nor a list"):
        cgats_table(b"BEGIN_DATA_FORMAT\x00\x01\x02\x7f")
    assert not is_cgats(b"lot;L*;a*;b*\n")


@settings(max_examples=150)
@given(st.lists(st.tuples(st.sampled_from(range(len(GOOD))), st.text(max_size=4)), max_size=6))
def test_a_spoiled_file_is_read_or_refused_and_never_anything_else(
    spoiled: list[tuple[int, str]],
) -> None:
    text = GOOD
    for at, words in spoiled:
        text = text[:at] + words + text[at + 2:]
    with suppress(BadInput):
        table = cgats_table(text.encode("utf-8", "replace"))
        assert len({len(row.cells) for row in table.rows if row.number}) == 1
