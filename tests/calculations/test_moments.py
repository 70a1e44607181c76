from datetime import UTC, datetime, timedelta, timezone

import pytest

from app.calculations.moments import (
    board_words,
    clock_words,
    day_words,
    moment_words,
    short_day,
    took_words,
)

MOMENT = datetime(2026, 4, 6, 23, 5, tzinfo=UTC)
EAST = timezone(timedelta(hours=2))


def test_a_moment_is_told_by_the_clock_on_the_wall():
    assert moment_words(MOMENT, UTC) == "6 Apr 23:05"
    assert moment_words(MOMENT, EAST) == "7 Apr 01:05"


def test_day_and_clock_can_be_told_alone():
    assert (day_words(MOMENT, EAST), short_day(MOMENT, EAST)) == ("7 Apr 2026", "7 Apr")
    assert clock_words(MOMENT, EAST) == "01:05"


def test_a_moment_is_told_as_on_the_white_board():
    assert board_words(MOMENT, UTC) == "Mon 6 Apr 23:05"
    assert board_words(MOMENT, EAST) == "Tue 7 Apr 01:05"


@pytest.mark.parametrize(("seconds", "words"), [
    (0, "under a second"), (1, "1 second"), (119, "119 seconds"), (120, "2 minutes"),
    (240, "4 minutes"), (269, "4 minutes"), (270, "5 minutes"), (7199, "120 minutes"),
    (7200, "2 hours"), (9_000_000, "2,500 hours"),
])
def test_how_long_it_took_is_told_the_finer_the_shorter(seconds, words):
    assert took_words(seconds) == words
