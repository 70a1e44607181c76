"""Fields of a row, and what is wrong with them, by the headings of the list."""

from decimal import Decimal

from app.exchange.cells import Formula, Row, Table
from app.exchange.columns import propose
from app.exchange.rows import RowReader

HEADINGS = Row(1, ("Note", "Base", "Batch"))


def reader(**given: str) -> RowReader:
    return RowReader(match=propose(Table((HEADINGS,)), {}), given=given)


def test_a_field_is_read_from_its_column_else_as_it_was_said_for_all() -> None:
    read = reader(supplier="Aske Mill")
    row = Row(2, (Decimal("2241"), "Tarnfield"))
    assert (read.words(row, "note"), read.words(row, "base"), read.words(row, "batch")) == (
        "2241", "Tarnfield", "")
    assert (read.words(row, "supplier"), read.troubles) == ("Aske Mill", [])


def test_what_is_needed_and_what_reckons_is_trouble_once() -> None:
    read = reader()
    row = Row(3, (Formula("=A1"),))
    assert (read.needed(row, "note"), read.needed(row, "base")) == ("", "")
    assert [(one.row, one.column, one.kept) for one in read.troubles] == [
        (3, "Note", "=A1"), (3, "Base", "")]
    read.trouble(row, "cone", "it is no number.", "x")
    assert read.troubles[-1].sentence == "Row 3, the cone's number: it is no number. It says: x"
