"""A computer that wakes in the year 2000: everything is kept, in order, and no code is guessed."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from sqlalchemy import select

from app.lookups.discs import yarn_on_disc
from app.lookups.now import NOW
from app.problems import Refused
from app.records import DeedRow, Head
from app.work.bundling import take_off, tie_on
from app.work.dyeing import BathIn, into_bath, name_lot
from app.work.studio import confirm_day
from tests.makers import Studio

BATTERY_DEAD = datetime(2000, 1, 1, tzinfo=UTC)


def bathe(studio: Studio, *yarn: int) -> Any:
    return studio.done(into_bath, BathIn(yarn, studio.recipe), studio.random)


def entry(studio: Studio, seq: int) -> Any:
    return studio.book.ask(lambda c: c.execute(select(DeedRow).where(DeedRow.seq == seq)).one())


def test_the_bath_is_kept_and_its_lot_waits_for_its_code(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.clock.now = BATTERY_DEAD
    done = bathe(studio, group)
    assert done.answer["codes"] == [None]
    assert done.findings == (
        "The clock is behind the last entry: the lot gets its code when the day is sure. See to "
        "it at the Desk, under Book.",)
    assert done.said == "a lot still without a code: 4 skeins of Sluice Keeper's Glove"
    assert studio.origins(group, "lot")[0].word == "known"
    studio.check()


def test_no_deed_of_that_night_gives_a_code_however_many_there_are(studio: Studio) -> None:
    groups = [studio.wind(studio.cone(), 2) for _ in range(3)]
    studio.clock.now = BATTERY_DEAD
    assert [bathe(studio, group).answer["codes"] for group in groups] == [[None]] * 3
    with pytest.raises(Refused, match="The clock is still behind the last entry"):
        studio.do(name_lot, 1, studio.random)


def test_the_order_of_entries_and_of_stays_is_not_turned(studio: Studio) -> None:
    disc, a, b = studio.discs[0], studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2)
    studio.do(tie_on, disc, [a])
    sure = studio.clock.now
    studio.clock.now = BATTERY_DEAD
    studio.do(take_off, disc)
    tied = studio.done(tie_on, disc, [b])
    assert studio.book.ask(yarn_on_disc, disc, NOW) == [b]
    row = entry(studio, tied.seq)
    assert (row.happened, row.written.year) == (sure, 2000)
    studio.clock.now = sure + timedelta(days=1)
    assert studio.book.ask(yarn_on_disc, disc, studio.clock.now) == [b]
    studio.do(take_off, disc)
    assert studio.book.ask(yarn_on_disc, disc, NOW) == []
    seqs = studio.book.ask(lambda c: c.execute(select(DeedRow.seq)).scalars().all())
    assert list(seqs) == list(range(1, studio.last() + 1))
    studio.check()


def test_when_the_clock_is_right_again_codes_are_given_and_the_lot_is_named(
    studio: Studio,
) -> None:
    group, other = studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 4)
    sure = studio.clock.now
    studio.clock.now = BATTERY_DEAD
    (lot,) = bathe(studio, group).answer["lots"]
    studio.clock.now = sure + timedelta(days=7)
    assert bathe(studio, other).answer["codes"][0][:4] == "2616"
    named = studio.do(name_lot, lot, studio.random, happened=sure + timedelta(hours=1))
    assert named[:4] == "2615"  # the week of the bath, as the person says
    assert studio.code(lot) == named
    studio.check()


def test_a_clock_that_was_ahead_once_is_put_right_by_a_persons_word(studio: Studio) -> None:
    sure, groups = studio.clock.now, [studio.wind(studio.cone(), 2) for _ in range(2)]
    studio.clock.now = sure.replace(year=2031)
    studio.cone()
    studio.clock.now = sure + timedelta(hours=1)
    assert bathe(studio, groups[0]).answer["codes"] == [None]
    studio.do(confirm_day)
    assert bathe(studio, groups[1]).answer["codes"][0][:4] == "2615"
    head = studio.book.ask(lambda c: c.execute(select(Head.written)).scalar_one())
    assert head == studio.clock.now
    studio.check()


def test_two_deeds_at_one_moment_are_in_no_doubt(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2)
    studio.clock.now -= timedelta(minutes=1)  # the next look reads the very same moment
    assert bathe(studio, group).answer["codes"][0]
    assert entry(studio, studio.last()).written == entry(studio, studio.last() - 1).written


def test_an_hour_that_comes_twice_in_autumn_turns_nothing(studio: Studio) -> None:
    studio.clock.now = datetime(2026, 10, 25, 0, 30, tzinfo=UTC)  # clocks go back at 01:00 UTC
    group, other = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2)
    first = bathe(studio, group).answer["codes"]
    studio.clock.now = datetime(2026, 10, 25, 1, 15, tzinfo=UTC)
    second = bathe(studio, other).answer["codes"]
    assert all(code is not None for code in (*first, *second))
