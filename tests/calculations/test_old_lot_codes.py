"""Codes from before the book: any text, but none that reads as something else of ours."""

import pytest

from app.calculations.codes import Kind, bare_characters, check_character, numbered
from app.calculations.old_lot_codes import LONGEST, no_old_lot, reads_as_another


@pytest.mark.parametrize("bare", ["FL25118", "7", "GRÜN12", "2619K44", "2619K45"])
def test_an_old_lot_may_have_any_code_that_is_no_other_thing(bare: str) -> None:
    assert no_old_lot(bare) is None


@pytest.mark.parametrize("bare", ["C0114F", "2619K447M", numbered(Kind.DISC, 31).text])
def test_what_stands_for_something_else_is_no_old_lot(bare: str) -> None:
    assert no_old_lot(bare) == ("reads as the code of something else",
                                f"Put letters before it, like OLD{bare}.")


def test_an_old_lots_code_says_something_and_has_room_on_a_tag() -> None:
    assert no_old_lot("X" * LONGEST) is None
    assert (no_old_lot("X" * (LONGEST + 1)) or ("",))[0] == "is longer than 24 characters"
    assert (no_old_lot("") or ("",))[0] == "says nothing"


def test_what_nobody_sees_is_no_part_of_a_code() -> None:
    assert bare_characters("FL\u200b25\ufeff118\u2060") == "FL25118"


def test_a_mark_that_without_its_dash_is_another_code_is_told() -> None:
    cone = "C12" + "3" + check_character("C123")
    assert not reads_as_another(f"{cone[:-2]}-{cone[-2:]}")  # no cone has so short a number
    disc = numbered(Kind.DISC, 123).text
    assert reads_as_another(f"{disc[:-2]}-{disc[-2:]}")
    assert not reads_as_another("2619K44-7M")
