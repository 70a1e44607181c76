"""Addresses of another standard, GS1 Digital Link, are told apart from the studio's codes.

The rows were read by git in gs1-syntax-engine (dl.c); which of them is well formed is nothing the
program judges: it writes no such address and reads none, so that valid and not valid are refused
alike, with the reason.
"""

from urllib.parse import quote

import pytest

from app.calculations.codes import (
    Kind,
    is_shop_bar_code,
    is_web_address,
    numbered,
    read,
)
from app.problems import BadInput
from app.scanning.resolve import resolve
from tests.makers import Studio
from tests.published.published_values import rows_of

ROWS = rows_of("gs1_digital_link")
ESCAPES = rows_of("gs1_digital_link_escape")
OURS = ("2615R6F", "2615R6F-7M", numbered(Kind.CONE, 114).text)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["uri"])
def test_an_address_is_named_as_what_it_is_and_is_no_code(row: dict[str, str]) -> None:
    assert is_web_address(row["uri"])
    assert not is_shop_bar_code(row["uri"])
    with pytest.raises(BadInput, match="is a web address") as said:
        read(row["uri"])
    assert "the studio's own tag" in said.value.next_step


@pytest.mark.parametrize("code", OURS)
def test_a_code_of_ours_inside_an_address_is_not_taken_out_of_it(
    studio: Studio, code: str
) -> None:
    """What an address says stands in another maker's book: nothing is guessed from it."""
    address = f"https://id.gs1.org/01/09520123456788/10/{code}"
    for typed in (False, True):
        answer = studio.book.ask(resolve, address, typed)
        assert (answer.found, answer.choices) == (None, ())
        assert "web address" in answer.sentence


def test_an_element_string_is_no_code_either() -> None:
    strings = [row["element_string"] for row in ROWS if row["element_string"]]
    assert len(strings) == 16
    for text in strings:
        with pytest.raises(BadInput):
            read(text)


@pytest.mark.parametrize("row", ESCAPES, ids=lambda row: row["value"])
def test_our_codes_would_stand_in_an_address_unchanged(row: dict[str, str]) -> None:
    """They are made of signs that need no escape; the table says which do."""
    assert quote(row["value"], safe="-._~") == row["path_component"]
    needs = {sign for sign in row["value"] if quote(sign, safe="-._~") != sign}
    assert not needs & set("".join(OURS))
