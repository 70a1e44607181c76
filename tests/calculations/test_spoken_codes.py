"""Codes as they are said, written down again."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.codes import Code, code_of, read
from app.calculations.spoken_codes import written_down
from tests.calculations.code_makers import all_codes


@given(all_codes)
def test_what_the_program_says_is_written_down_as_the_code(code: Code) -> None:
    assert code_of(written_down(code.spoken)) == code


@pytest.mark.parametrize("said", [
    "two six, one nine, K four four", "Two six one nine kay double four",
    "two six dot one nine dot K four four", "two six one nine K 4 4"])
def test_one_code_is_said_in_several_ways(said: str) -> None:
    assert read(written_down(said)).text == "2619K44"


def test_a_part_that_nobody_could_read_is_a_gap() -> None:
    assert written_down("two six something nine K four something") == "26?9K4?"


@pytest.mark.parametrize("words", [
    "Seven", "Seventh Buoy", "Six Seven", "26·19·K44", "2 6 1 9 K 4 4", "Ferry Ledger", "",
    "one two three four five six seven eight nine zero", "two six one nine K four sheep"])
def test_what_is_no_spelled_code_stands_as_it_is(words: str) -> None:
    assert written_down(words) == words


@given(st.text(max_size=40))
def test_any_text_is_taken_without_a_fault(text: str) -> None:
    assert isinstance(written_down(text), str)
