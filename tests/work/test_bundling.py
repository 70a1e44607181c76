"""Discs and cords: on, off, and never on two cords at once."""

import pytest

from app.calculations.codes import Kind
from app.lookups.discs import disc_of, yarn_on_disc
from app.problems import NotFound, Refused
from app.work.bundling import add_to_cord, make_plates, number_of, take_off, tie_on, yarn_on
from app.work.mixing import lose
from tests.makers import Studio


def on(studio: Studio, disc: int) -> list[int]:
    return studio.book.ask(yarn_on_disc, disc, studio.clock.now)


def test_plates_are_made_with_their_numbers_and_no_number_twice(studio: Studio) -> None:
    made = studio.done(make_plates, Kind.SHELF, [3, 4])
    assert made.said == "made 2 shelf plates"
    with pytest.raises(Refused, match=r"There is a shelf 004 already; nothing was saved\."):
        studio.do(make_plates, Kind.SHELF, [4, 5])
    assert studio.done(make_plates, Kind.SHELF, [5]).said == "made 1 shelf plate"
    assert studio.do(number_of, made.answer[0]) == "003"


def test_a_disc_on_a_live_bundle_is_refused_at_the_desk_with_the_way_out(studio: Studio) -> None:
    a, b, disc = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2), studio.discs[0]
    studio.do(tie_on, disc, [a])
    with pytest.raises(Refused, match="Disc 031 hangs on a live bundle") as raised:
        studio.do(tie_on, disc, [b])
    assert raised.value.next_step == "Take it off there first, or take another disc."
    assert on(studio, disc) == [a]


def test_a_disc_on_a_live_bundle_that_was_used_all_the_same_is_recorded_and_marked(
    studio: Studio,
) -> None:
    a, b, disc = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2), studio.discs[0]
    studio.do(tie_on, disc, [a])
    moment = studio.clock()
    studio.clock()
    late = studio.done(tie_on, disc, [b], happened=moment)
    assert late.findings == ("Disc 031 hangs on a live bundle.",)
    assert on(studio, disc) == [b]
    studio.check()


def test_a_freed_disc_is_tied_on_again_and_means_the_new_cord(studio: Studio) -> None:
    a, b, disc = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2), studio.discs[0]
    studio.do(tie_on, disc, [a])
    assert studio.done(take_off, disc).said == "took disc 031 off"
    studio.do(tie_on, disc, [b])
    assert on(studio, disc) == [b]
    assert studio.book.ask(disc_of, a) is None


def test_more_yarn_comes_on_the_same_cord(studio: Studio) -> None:
    a, b, c = (studio.wind(studio.cone(), 2) for _ in range(3))
    disc = studio.discs[0]
    studio.do(tie_on, disc, [a])
    studio.do(add_to_cord, disc, [b])
    assert on(studio, disc) == [a, b]
    studio.do(add_to_cord, studio.discs[1], [c])  # a free disc makes a cord of its own
    assert on(studio, studio.discs[1]) == [c]


def test_yarn_that_moves_to_another_cord_frees_the_disc_it_left(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2, disc=studio.discs[0])
    studio.do(tie_on, studio.discs[1], [group])
    assert (on(studio, studio.discs[0]), on(studio, studio.discs[1])) == ([], [group])
    studio.do(tie_on, studio.discs[0], [studio.wind(studio.cone(), 2)])


def test_a_cord_from_which_all_were_lost_frees_its_disc(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2, disc=studio.discs[0])
    studio.do(lose, group, 2)
    studio.do(tie_on, studio.discs[0], [studio.wind(studio.cone(), 2)])


def test_a_disc_that_hangs_on_nothing_cannot_be_taken_off_or_asked(studio: Studio) -> None:
    with pytest.raises(Refused, match="Disc 031 hangs on nothing; nothing was saved"):
        studio.do(take_off, studio.discs[0])
    with pytest.raises(NotFound, match="scan the disc that is on the yarn"):
        studio.do(yarn_on, studio.discs[0])


def test_a_plate_that_is_not_there_is_told_in_words(studio: Studio) -> None:
    with pytest.raises(NotFound, match="This plate is not in the book"):
        studio.do(number_of, 999)
