"""A day and a month as they are said over a counter."""

from datetime import date, datetime

import pytest

from app.problems import BadInput
from app.window.parts.days import day_said, end_of, month_said

MONDAY = date(2026, 4, 6)


@pytest.mark.parametrize(("said", "day"), [
    ("7 days", (2026, 4, 13)), ("1 day", (2026, 4, 7)), ("10", (2026, 4, 16)),
    ("friday", (2026, 4, 10)), ("Mon", (2026, 4, 13)), ("tomorrow", (2026, 4, 7)),
    ("4 May", (2026, 5, 4)), ("May 4.", (2026, 5, 4)), ("2 apr", (2027, 4, 2)),
    ("4 May 2027", (2027, 5, 4)), ("2026-05-04", (2026, 5, 4)),
])
def test_a_day_is_read_as_it_is_said(said, day):
    assert day_said(said, MONDAY) == date(*day)


@pytest.mark.parametrize("said", ["", "soon", "31 june", "2026-13-01", "4 5 6 may", "fr", "may"])
def test_what_is_no_day_is_asked_for_again(said):
    with pytest.raises(BadInput, match="no day that can be read"):
        day_said(said, MONDAY)


def test_a_put_by_until_a_day_holds_all_that_day():
    assert end_of(MONDAY).date() == MONDAY
    assert end_of(MONDAY) > datetime(2026, 4, 6, 20).astimezone()


@pytest.mark.parametrize(("said", "first", "following", "rest"), [
    ("april glove", (2026, 4, 1), (2026, 5, 1), "glove"),
    ("Glove dec tarn", (2025, 12, 1), (2026, 1, 1), "glove tarn"),
    ("apr 2024 glove", (2024, 4, 1), (2024, 5, 1), "glove"),
])
def test_a_month_is_the_last_such_that_began(said, first, following, rest):
    assert month_said(said, MONDAY) == (date(*first), date(*following), rest)


@pytest.mark.parametrize("said", ["april", "glove tarn", "ap glove"])
def test_a_month_needs_other_words_beside_it(said):
    assert month_said(said, MONDAY) is None


def test_a_month_alone_is_read_where_one_word_is_enough():
    assert month_said("april", MONDAY, 1) == (date(2026, 4, 1), date(2026, 5, 1), "")
    assert month_said("may", MONDAY, 1) == (date(2025, 5, 1), date(2025, 6, 1), "")
    assert month_said("osk", MONDAY, 1) is None
