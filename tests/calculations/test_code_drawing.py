"""What is drawn: codes of lots that betray no count, and the marks of a lot."""

from itertools import product
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.code_drawing import BUSY_WEEK, draw_lot_code, draw_mark
from app.calculations.codes import CHARACTERS, DIGITS, LETTERS, read
from app.problems import Refused
from tests.calculations.code_makers import lots_of_week


def test_a_week_gives_its_171_codes_with_a_letter_before_any_other_would_be_needed() -> None:
    assert len(LETTERS) * len(CHARACTERS) == 171
    random, taken = Random(19), []
    for _ in range(BUSY_WEEK):
        taken.append(draw_lot_code(2026, 19, taken, random).text)
    assert len(set(taken)) == BUSY_WEEK
    assert all(read(code).lot == code and code.startswith("2619") for code in taken)
    assert {code[4] for code in taken} <= set(LETTERS)


def test_after_150_lots_the_fifth_may_be_a_digit_and_the_week_holds_361() -> None:
    random, taken = Random(19), []
    for _ in range(361):
        taken.append(draw_lot_code(2026, 19, taken, random).text)
    assert len(set(taken)) == 361
    assert {code[4] for code in taken[BUSY_WEEK:]} & set(DIGITS)
    with pytest.raises(Refused, match="All 361 lot codes of week 19"):
        draw_lot_code(2026, 19, taken, random)
    assert draw_lot_code(2026, 20, taken, random).text.startswith("2620")


def test_the_digits_are_kept_back_until_150_lots_of_the_week_are_there() -> None:
    assert BUSY_WEEK == 150
    week = [code.text for code in lots_of_week("2619") if code.text[4] in LETTERS]
    fifths = {
        count: {draw_lot_code(2026, 19, week[:count], Random(n)).text[4] for n in range(40)}
        for count in (BUSY_WEEK - 1, BUSY_WEEK)
    }
    assert fifths[BUSY_WEEK - 1] <= set(LETTERS)
    assert fifths[BUSY_WEEK] & set(DIGITS)


def test_the_last_year_a_lot_code_can_say_is_2099() -> None:
    assert draw_lot_code(2099, 52, (), Random(1)).text.startswith("9952")


def test_codes_are_drawn_and_never_counted_up() -> None:
    first = [draw_lot_code(2026, 19, [], Random(seed)).text for seed in range(600)]
    assert len(set(first)) > 150
    assert draw_lot_code(2026, 19, [], Random(7)) == draw_lot_code(2026, 19, [], Random(7))


@pytest.mark.parametrize(("year", "week"), [(1999, 19), (2100, 1), (2026, 54), (2027, 53)])
def test_no_lot_code_is_drawn_for_a_week_it_could_not_say(year: int, week: int) -> None:
    with pytest.raises(ValueError, match="year|week"):
        draw_lot_code(year, week, [], Random(1))


def test_a_lot_has_361_marks_and_no_more() -> None:
    random, taken = Random(4), set()
    for _ in range(361):
        taken.add(draw_mark("2619K44", taken, random).text)
    assert taken == {f"2619K44-{a}{b}" for a, b in product(CHARACTERS, CHARACTERS)}
    with pytest.raises(Refused, match="All 361 marks of lot 2619K44"):
        draw_mark("2619K44", taken, random)


@given(st.integers(0, 99), st.integers(1, 52), st.randoms(use_true_random=False))
def test_a_lot_drawn_for_a_week_is_read_as_a_lot_of_that_week(
    year: int, week: int, random: Random
) -> None:
    code = draw_lot_code(2000 + year, week, (), random)
    assert read(code.text) == code
    assert code.text[:4] == f"{year:02}{week:02}"
