"""Rows of cells that say something, or reckon."""

import pytest

from app.exchange.cells import Formula, Row, read_cell


@pytest.mark.parametrize("text", ["=1+1", "+41", "@SUM(A1)", "-64", "  =A1", "=cmd|' /C x'!A0"])
def test_what_begins_as_a_formula_does_is_one(text: str) -> None:
    assert read_cell(text) == Formula(text.strip())
    assert str(read_cell(text)) == text.strip()


@pytest.mark.parametrize("text", ["", " ", "-", "–", "—", "\u00a0", "\ufeff"])
def test_a_lone_dash_or_space_says_nothing(text: str) -> None:
    assert read_cell(text) == ""


def test_words_lose_the_spaces_round_them_alone() -> None:
    assert read_cell("\u00a0Tarnfield  4-ply\t") == "Tarnfield  4-ply"


def test_a_row_is_empty_where_it_is_shorter() -> None:
    assert Row(3, ("a", "b"))[1] == "b"
    assert Row(3, ("a", "b"))[7] == ""


def test_what_nobody_sees_is_no_part_of_the_words() -> None:
    assert read_cell("10\u200b42\u2060") == "1042"
    assert read_cell("\u200e=1+1") == Formula("=1+1")
