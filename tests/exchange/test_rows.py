"""Fields of a row, and what is wrong with them."""

from decimal import Decimal

from app.exchange.cells import Formula, Row, Table
from app.exchange.columns import propose
from app.exchange.rows import RowReader, RowTrouble

MATCH = propose(Table((Row(1, ("Note", "Base", "Batch", "Gross", "Tare")),)), {})


def test_a_field_is_read_by_its_column_else_as_it_was_said_once() -> None:
    reader = RowReader(match=MATCH, given={"batch": "A-203"})
    row = Row(2, (Decimal("2241.0"), "Tarnfield"))
    assert reader.words(row, "note") == "2241"
    assert reader.words(row, "batch") == "A-203"
    assert reader.words(row, "moisture") == ""
    assert reader.troubles == []


def test_what_reckons_is_told_and_never_taken() -> None:
    reader = RowReader(match=MATCH)
    assert reader.words(Row(3, ("", Formula("=B2+1"))), "base") == ""
    assert reader.troubles[0].sentence == (
        "Row 3, Base: it reckons, or begins as a formula does: only values are taken. "
        "It says: =B2+1")


def test_what_must_be_there_is_missed_once() -> None:
    reader = RowReader(match=MATCH)
    reader.needed(Row(4, ("2241",)), "base")
    reader.needed(Row(5, ("2241", Formula("=1"))), "base")
    assert [trouble.what[:20] for trouble in reader.troubles] == [
        "nothing stands there", "it reckons, or begin"]


def test_a_field_without_a_column_is_named_in_words() -> None:
    reader = RowReader(match=MATCH)
    reader.trouble(Row(6, ()), "cone", "it is no cone's number.", "x")
    assert reader.troubles == [RowTrouble(6, "the cone's number", "it is no cone's number.", "x")]


def test_of_a_very_long_cell_the_beginning_is_told() -> None:
    said = RowTrouble(7, "Lot", "no lot has this code.", "x" * 100_000).sentence
    assert said == f"Row 7, Lot: no lot has this code. It says: {'x' * 80}…"
