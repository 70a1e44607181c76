"""The hand of a deed: rows and their numbers, stays and their neighbours, what never is told."""

from datetime import datetime, timedelta
from typing import Any

import pytest
from sqlalchemy import select

from app.calculations.moments import moment_words
from app.problems import Refused
from app.records import Bundle, Person, Personal, Plate, PlateStay, Yarn
from app.store.deed import Deed
from app.work.bundling import take_off, tie_on
from app.work.people import personal
from tests.makers import Studio


def stays(studio: Studio, disc: int) -> list[Any]:
    question = (
        select(PlateStay.bundle, PlateStay.since, PlateStay.until, PlateStay.ended_by)
        .where(PlateStay.plate == disc, PlateStay.struck.is_(None))
        .order_by(PlateStay.since)
    )
    return [tuple(row) for row in studio.book.ask(lambda c: c.execute(question).all())]


def at(studio: Studio, minutes: int) -> datetime:
    return studio.clock.now + timedelta(minutes=minutes)


def test_rows_of_one_kind_are_numbered_on_without_a_gap(studio: Studio) -> None:
    def three(deed: Deed) -> list[int]:
        return [deed.add(Bundle()), *deed.add_all([Bundle(), Bundle()])]

    assert studio.do(three) == [1, 2, 3]
    assert studio.do(three) == [4, 5, 6]


def test_nothing_to_add_is_nothing(studio: Studio) -> None:
    assert studio.do(lambda deed: deed.add_all([])) == []


def test_every_row_names_the_deed_that_wrote_it(studio: Studio) -> None:
    done = studio.done(lambda deed: deed.add(Bundle()))
    row = studio.book.ask(lambda c: c.execute(select(Bundle.deed, Bundle.struck)).one())
    assert tuple(row) == (done.seq, None)


def test_a_row_that_is_not_there_cannot_be_changed(studio: Studio) -> None:
    with pytest.raises(LookupError, match="yarn 99 is not in the book"):
        studio.do(lambda deed: deed.change(Yarn, 99, closed=1))


def test_a_change_keeps_what_stood_there(studio: Studio) -> None:
    def rename(deed: Deed) -> Any:
        deed.change(Plate, studio.pot, words="the big one")
        return [[c.table, c.row, c.before, c.after] for c in deed.changes]

    assert studio.do(rename) == [["plate", studio.pot, {"words": ""}, {"words": "the big one"}]]


def test_a_secret_never_enters_the_changes_and_its_emptying_does(studio: Studio) -> None:
    def told(deed: Deed) -> Any:
        person = deed.add(Person(initials="AN"))
        row = deed.add(personal(deed, "name", "Ada Nygård", person=person))
        deed.change(Personal, row, value=None, salt=None)
        return [[c.before, c.after] for c in deed.changes if c.table == "personal"]

    added, emptied = studio.do(told)
    assert added[1].keys() == {"deed", "struck", "customer", "person", "field", "digest"}
    assert emptied == [{}, {"value": None, "salt": None}]


def test_at_the_desk_it_refuses_and_entered_late_it_notes(studio: Studio) -> None:
    def strict(deed: Deed) -> str:
        deed.refuse("Not so.", "Do it so.")
        return "written"

    with pytest.raises(Refused, match=r"Not so\. Do it so\."):
        studio.do(strict)
    late = studio.done(strict, happened=at(studio, -30))
    assert (late.answer, late.findings) == ("written", ("Not so.",))


def test_a_stay_begins_when_it_happened_and_ends_the_one_before(studio: Studio) -> None:
    a, b, disc = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2), studio.discs[0]
    first = studio.do(tie_on, disc, [a])
    begun = studio.clock.now
    off = studio.done(take_off, disc)
    ended = studio.clock.now
    second = studio.do(tie_on, disc, [b])
    assert stays(studio, disc) == [
        (first, begun, ended, off.seq),
        (second, studio.clock.now, None, None),
    ]


def test_what_was_over_at_a_moment_is_not_ended_again_at_the_same_moment(studio: Studio) -> None:
    a, b, disc = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2), studio.discs[0]
    studio.do(tie_on, disc, [a])
    off = studio.done(take_off, disc)
    studio.clock.now -= timedelta(minutes=1)  # the next look reads the very same moment
    studio.do(tie_on, disc, [b])
    first, second = stays(studio, disc)
    assert (first[2], first[3]) == (second[1], off.seq)
    studio.check()


def test_a_late_stay_is_fitted_between_its_neighbours(studio: Studio) -> None:
    a, b, c = (studio.wind(studio.cone(), 2) for _ in range(3))
    disc, noon = studio.discs[0], studio.clock.now
    first = studio.do(tie_on, disc, [a])
    studio.do(take_off, disc)
    freed = studio.clock.now
    studio.clock.now += timedelta(hours=3)
    last = studio.done(tie_on, disc, [c])
    begun = studio.clock.now
    studio.clock.now += timedelta(hours=1)
    middle = studio.done(tie_on, disc, [b], happened=noon + timedelta(hours=1))
    assert stays(studio, disc)[1:] == [
        (middle.answer, noon + timedelta(hours=1), begun, last.seq),
        (last.answer, begun, None, None),
    ]
    assert stays(studio, disc)[0][0::2] == (first, freed)
    assert middle.findings == (f"Entered late: it had gone on already on {moment_words(begun)}.",)
    studio.check()


def test_a_late_stay_inside_one_that_ended_ends_with_it(studio: Studio) -> None:
    a, b, disc = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2), studio.discs[0]
    first = studio.do(tie_on, disc, [a])
    studio.clock.now += timedelta(hours=2)
    off = studio.done(take_off, disc)
    freed = studio.clock.now
    between = freed - timedelta(hours=1)
    late = studio.done(tie_on, disc, [b], happened=between)
    assert [(row[0], *row[2:]) for row in stays(studio, disc)] == [
        (first, between, late.seq),
        (late.answer, freed, off.seq),
    ]
    assert any("hangs on a live bundle" in finding for finding in late.findings)
    studio.check()


def test_the_database_itself_keeps_stays_of_one_thing_apart(studio: Studio) -> None:
    disc = studio.discs[0]
    bundle = studio.do(tie_on, disc, [studio.wind(studio.cone(), 2)])
    moment = studio.clock.now

    def overlap(deed: Deed) -> None:
        stay = PlateStay(plate=disc, bundle=bundle)
        stay.since, stay.until = moment - timedelta(hours=1), moment + timedelta(minutes=30)
        deed.add(stay)

    with pytest.raises(Refused, match="done already"):
        studio.do(overlap)
    assert len(stays(studio, disc)) == 1


def test_a_moment_without_a_time_zone_is_a_fault(studio: Studio) -> None:
    with pytest.raises(TypeError, match="offset-naive"):
        studio.do(lambda deed: None, happened=datetime(2026, 4, 6, 7))  # noqa: DTZ001
