"""What looks wrong before yarn meets in a bath, and how it is told afterwards."""

import pytest

from app.calculations.codes import shown
from app.lookups.cones import cone_facts
from app.lookups.meeting import before_bath, heap, rows_in_bath
from app.lookups.pots import pots_now
from app.work.bases import describe_base
from app.work.holding import hold
from tests.makers import tarnfield


def test_ties_of_one_colour_from_two_cones_are_warned_of_with_their_counts(studio):
    one, other = studio.cones(2)
    studio.wind(one, 7, "red", studio.discs[0])
    studio.wind(other, 5, "red", studio.discs[1])
    assert studio.book.ask(before_bath, studio.discs[:2], studio.pot) == (
        "Red ties of two cones, 7 + 5: keep their cords closed, else each skein is one of two.",
    )


def test_other_ties_or_the_same_cone_are_no_reason_to_warn(studio):
    one, other = studio.cones(2)
    studio.wind(one, 7, "red", studio.discs[0])
    studio.wind(other, 5, "yellow", studio.discs[1])
    studio.wind(one, 2, "red", studio.discs[2])
    assert studio.book.ask(before_bath, studio.discs[:3], studio.pot) == ()


def test_two_bases_make_companion_lots(studio):
    studio.do(describe_base, tarnfield(name="Downholm Sock", fibre="80 % wool, 20 % polyamide"))
    studio.wind(studio.cone(), 4, "red", studio.discs[0])
    studio.wind(studio.cones(1, "Downholm Sock")[0], 4, "red", studio.discs[1])
    assert studio.book.ask(before_bath, studio.discs[:2], None) == (
        "Tarnfield 4-ply and Downholm Sock in one bath: companion lots, each with its own code.",
    )


def test_a_hold_an_overdye_and_a_pot_that_is_full_are_said(studio):
    cone = studio.cone()
    group = studio.wind(cone, 4, "red", studio.discs[0])
    lot = shown(studio.code(studio.dye(group, pot=studio.pot)))
    studio.do(hold, "cone", cone, "oil stain")
    assert studio.book.ask(before_bath, [studio.discs[0]], studio.pot) == (
        f"{lot} was not lifted out of this pot: which bucket is it in?",
        "HOLD lies on disc 031: in the bath it goes on, marked.",
        f"Disc 031 is {lot} already: in again makes another lot, an overdye.",
    )


def test_the_card_of_a_pile_is_no_cord_for_the_pot(studio):
    group = studio.wind(studio.cone(), 4, "red", studio.discs[0])
    studio.dye(group)
    studio.finish(group, red=4)
    assert studio.book.ask(before_bath, [studio.discs[0]], None) == (
        "Disc 031 is the card of a pile that was counted: is it the right disc?",
    )


def test_a_heap_of_two_cones_says_one_of_two_with_the_counts(studio):
    one, other = studio.cones(2)
    rows = [
        studio.wind(one, 7, "red", studio.discs[0]),
        studio.wind(other, 5, "red", studio.discs[1]),
    ]
    found = studio.book.ask(heap, rows)
    assert (found.told, found.counts) == ("one of two, 7 + 5", (7, 5))
    assert (found.discs, found.bases) == (("031", "032"), 1)
    assert studio.book.ask(heap, [studio.mix(*rows)]).told == "one of two, 7 + 5"


def test_a_heap_of_one_cone_is_known(studio):
    cone = studio.cone()
    rows = [studio.wind(cone, 7), studio.wind(cone, 5)]
    code = shown(studio.book.ask(cone_facts, cone).code)
    assert studio.book.ask(heap, rows).told == f"known: all of {code}"


@pytest.mark.parametrize("mixed", [False, True])
def test_what_lies_in_a_pot_is_found_also_after_it_was_mixed_there(studio, mixed):
    one, other = studio.cones(2)
    rows = [studio.wind(one, 7), studio.wind(other, 5)]
    studio.dye(*rows, pot=studio.pot)
    (pot,) = studio.book.ask(pots_now)
    wanted = (studio.mix(*rows),) if mixed else tuple(rows)
    assert studio.book.ask(rows_in_bath, pot.bath) == wanted
