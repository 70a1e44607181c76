"""The reel by itself: what is counted, joined, taken off and tied on."""

from dataclasses import replace
from decimal import Decimal

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.now import NOW
from app.lookups.reel import AsWound, on_reel
from app.problems import BadInput
from app.window.benches.winding.lengths import read_length
from app.window.benches.winding.reel import Join, Reel, Skeins, left_on
from app.window.benches.winding.said import code_said
from app.window.benches.winding.winding_words import long
from app.work.winding import Drawn, Wound
from tests.makers import LONG_MM


@pytest.fixture
def cones(studio):
    """Three fresh cones as they come on one reel: red, yellow, blue."""
    studio.cones(3)
    ties, found = [], []
    for number in (1, 2, 3):
        code = numbered(Kind.CONE, number).text
        found.append(studio.book.ask(on_reel, code, NOW, ties))
        ties.append(found[-1].tie)
    return found


@pytest.fixture
def reel(cones):
    """The first cone on the reel, nothing counted yet."""
    empty = Reel()
    empty.put_on(cones[0])
    return empty


def counts(reel):
    return [(group.tie, group.put_up, group.count) for group in reel.groups]


def test_a_cone_with_nothing_counted_gives_way_to_the_next(reel, cones):
    reel.put_on(cones[1])
    assert counts(reel) == [("yellow", "skein", 0)]


def test_while_a_count_is_open_the_next_cone_comes_beside_it(reel, cones):
    reel.count(4)
    reel.put_on(cones[1])
    reel.count(2)
    assert counts(reel) == [("red", "skein", 4), ("yellow", "skein", 2)]
    assert (reel.total, reel.ties()) == (6, ("red", "yellow"))


def test_a_cone_that_is_on_the_reel_is_taken_in_hand_again(reel, cones):
    reel.count(4)
    reel.put_on(cones[1])
    reel.put_on(cones[0])
    reel.count(5)
    assert counts(reel) == [("red", "skein", 5), ("yellow", "skein", 0)]


def test_nothing_is_booked_of_what_was_not_counted(reel, cones):
    reel.count(4)
    reel.put_on(cones[1])
    assert reel.wound() == [Wound((Drawn(cones[0].facts.id, 4 * LONG_MM),), 4, "skein", "red")]


def test_minis_beside_counted_skeins_of_one_cone_are_a_group_of_their_own(reel, cones):
    reel.count(1)
    reel.wind_as("mini")
    reel.count(3)
    assert counts(reel) == [("red", "skein", 1), ("red", "mini", 3)]
    reel.wind_as("skein")
    assert reel.in_hand.count == 1
    assert left_on(reel, cones[0]) == cones[0].facts.left_mm - LONG_MM - 3 * 82_500


def test_a_cone_that_was_not_counted_is_simply_wound_in_the_other_form(reel):
    reel.wind_as("mini")
    assert counts(reel) == [("red", "mini", 0)]


def test_a_base_without_skeins_is_wound_in_its_first_form(cones):
    reel = Reel()
    reel.put_on(replace(cones[0], put_ups=(AsWound("cake", 275, 1500), AsWound("ball", 137, 1500))))
    assert (reel.in_hand.put_up, reel.in_hand.other_form) == ("cake", "ball")
    reel.wind_as("ball")
    assert reel.in_hand.other_form == "cake"


def test_a_form_the_base_is_not_described_in_is_never_booked(reel, cones):
    reel.renew(replace(cones[0], put_ups=()))
    reel.count(6)
    assert reel.wound() == []


def test_another_thread_is_for_all_of_that_cone(reel, cones):
    reel.count(2)
    reel.wind_as("mini")
    reel.tie_with("green")
    reel.put_on(cones[1])
    assert counts(reel) == [("green", "skein", 2), ("green", "mini", 0), ("yellow", "skein", 0)]


def test_a_skein_over_a_join_has_two_draws_two_threads_and_its_shares(reel, cones):
    reel.join(reel.in_hand, 255_200, cones[1])
    join = reel.in_hand
    assert isinstance(join, Join)
    assert [round(share, 2) for share in join.shares] == [Decimal("0.62"), Decimal("0.38")]
    first, second = (cone.facts.id for cone in cones[:2])
    assert reel.wound() == [
        Wound((Drawn(first, 255_200), Drawn(second, 157_300)), 1, "skein", "red and yellow")]
    assert counts(reel) == [("red and yellow", "skein", 1), ("yellow", "skein", 0)]


def test_two_cones_of_one_colour_leave_the_second_thread_of_their_join_to_be_asked(reel, cones):
    reel.join(reel.in_hand, 255_200, replace(cones[1], tie="red"))
    assert counts(reel) == [("red", "skein", 1), ("red", "skein", 0)]


def test_what_was_counted_before_the_join_stays_beside_it(reel, cones):
    reel.count(4)
    reel.join(reel.in_hand, 255_200, cones[1])
    assert counts(reel) == [
        ("red", "skein", 4), ("red and yellow", "skein", 1), ("yellow", "skein", 0)]


def test_a_count_after_a_join_is_of_the_cone_that_went_on(reel, cones):
    reel.join(reel.in_hand, 255_200, cones[1])
    reel.count(3)
    assert counts(reel) == [("red and yellow", "skein", 1), ("yellow", "skein", 3)]


def test_the_second_thread_of_a_join_changes_the_join_alone(reel, cones):
    reel.join(reel.in_hand, 255_200, cones[1])
    reel.tie_with("red and white")
    assert counts(reel) == [("red and white", "skein", 1), ("yellow", "skein", 0)]


def test_what_hangs_on_a_disc_leaves_the_reel_and_its_cones_stay(reel, cones):
    reel.count(2)
    reel.wind_as("mini")
    reel.count(3)
    reel.join(reel.groups[0], 100_000, cones[1])
    reel.count(4)
    reel.tied_on(reel.wound())
    assert counts(reel) == [("red", "skein", 0), ("yellow", "skein", 0)]
    assert reel.in_hand.tie == "yellow"


def test_what_was_counted_while_a_deed_was_being_saved_is_not_lost(reel):
    reel.count(6)
    saved = reel.wound()
    reel.count(2)
    reel.tied_on(saved)
    assert counts(reel) == [("red", "skein", 2)]


def test_a_cone_the_book_knows_more_of_keeps_its_count_and_its_thread(reel, cones):
    reel.tie_with("green")
    reel.count(4)
    reel.renew(replace(cones[0], facts=replace(cones[0].facts, drawn_mm=LONG_MM), tie="blue"))
    assert counts(reel) == [("green", "skein", 4)]
    assert isinstance(reel.in_hand, Skeins)
    assert reel.in_hand.cone.facts.drawn_mm == LONG_MM


def test_the_one_in_hand_stays_in_hand_when_another_leaves_the_reel(reel, cones):
    reel.count(4)
    reel.put_on(cones[1])
    reel.take_off(reel.groups[0])
    assert reel.in_hand.tie == "yellow"
    reel.take_off(reel.in_hand)
    assert reel.in_hand is None


@pytest.mark.parametrize(("written", "mm"), [
    ("255.2", 255_200), ("255,2 m", 255_200), ("170 turns", 255_000), ("170t", 255_000),
    ("12", 12_000), ("1 turn", 1_500)])
def test_a_length_is_metres_or_turns_off_the_counter(written, mm):
    assert read_length(written, 1500) == mm


@pytest.mark.parametrize("written", ["", "  ", "much", "-3", "1,462", "12.3456", "5 feet"])
def test_what_is_no_length_or_might_be_two_is_told_and_not_guessed(written):
    with pytest.raises(BadInput):
        read_length(written, 1500)


@pytest.mark.parametrize(("words", "code"), [
    ("C114", numbered(Kind.CONE, 114)), ("cone 114", numbered(Kind.CONE, 114)),
    ("d 031", numbered(Kind.DISC, 31)), ("Disc 31", numbered(Kind.DISC, 31)),
    ("114", None), ("Sluice", None), ("D", None)])
def test_cones_and_discs_may_be_said_by_their_number(words, code):
    assert code_said(words) == code


def test_long_lengths_are_told_in_metres_and_short_ones_to_the_tenth():
    assert (long(5_617_652), long(255_152), long(0)) == ("5,618 m", "255.2 m", "0.0 m")
