"""What the winder sees of a cone and of a disc."""

from datetime import timedelta
from decimal import Decimal

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.reel import disc_now, on_reel, put_ups, tied_on_since
from app.work.bundling import take_off
from app.work.holding import hold, lift_hold
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.makers import LONG_MM


def cone(number):
    return numbered(Kind.CONE, number).text


def disc(number):
    return numbered(Kind.DISC, number).text


@pytest.fixture
def look(studio):
    """Asks for a cone by its number, beside ties that are on the reel already."""
    return lambda number, *ties: studio.book.ask(on_reel, cone(number), studio.clock(), ties)


def test_a_cone_of_1462_g_gives_13_skeins_and_3_minis_and_the_rest_is_said(studio, look):
    studio.do(
        receive,
        DeliveryIn(
            "Aske Mill",
            "2241",
            "Tarnfield 4-ply",
            studio.clock.now,
            (ConeIn(1_462_000, 64_000, "A-203", moisture_permille=130),),
        ),
    )
    found = look(1)
    gives = found.gives(found.facts.left_mm)
    assert (gives.skeins, gives.minis) == (13, 3)
    assert round(gives.rest_m, 1) == Decimal("255.2")
    assert round(gives.tail_m, 1) == Decimal("7.7")
    assert [(one.name, one.turns, one.reel_mm) for one in found.put_ups] == [
        ("skein", 275, 1500),
        ("mini", 55, 1500),
    ]
    assert found.form("mini").mm == 82_500
    assert found.form("ball") is None


def test_a_code_that_is_no_cone_or_unknown_is_no_cone_on_the_reel(studio):
    at = studio.clock()
    assert studio.book.ask(on_reel, cone(9), at) is None
    assert studio.book.ask(on_reel, disc(31), at) is None


def test_four_fresh_cones_on_one_reel_are_handed_four_ties(studio, look):
    studio.cones(4)
    ties = []
    for number in (1, 2, 3, 4):
        ties.append(look(number, *ties).tie)
    assert ties == ["red", "yellow", "blue", "green"]


def test_a_cone_keeps_the_tie_it_wears_even_beside_the_same_colour(studio, look):
    first, _ = studio.cones(2)
    studio.wind(first, 6, "blue")
    assert look(1, "blue", "red").tie == "blue"


def test_a_fresh_cone_passes_over_what_others_of_its_base_wear(studio, look):
    first, second, _ = studio.cones(3)
    studio.wind(first, 2, "yellow")
    studio.wind(second, 2, "red")
    assert look(3).tie == "blue"
    assert look(3, "blue").tie == "green"


def test_a_ninth_open_cone_is_told_whose_ties_it_shares(studio, look):
    cones = studio.cones(9)
    colours = ("red", "yellow", "blue", "green", "orange", "violet", "black", "white")
    for one, tie in zip(cones, colours, strict=False):
        studio.wind(one, 1, tie)
    found = look(9)
    assert (found.tie, found.tie_worn_by) == ("red", "C·0001·" + cone(1)[-1])
    assert look(9, "red").tie == "yellow"


def test_a_cone_on_hold_says_why_until_the_hold_is_lifted(studio, look):
    held = studio.do(hold, "cone", studio.cone(), "oil stain")
    assert [one.why for one in look(1).holds] == ["oil stain"]
    studio.do(lift_hold, held, "clean under the lamp")
    assert look(1).holds == ()


def test_the_trail_of_a_cone_comes_with_it(studio, look):
    studio.cone()
    assert [stop.kind for stop in look(1).stops] == ["delivery", "cone"]


def test_the_forms_of_a_base_come_longest_first(studio):
    assert [one.name for one in studio.book.ask(put_ups, studio.version)] == ["skein", "mini"]


def test_a_disc_says_what_it_hangs_on_and_a_strange_one_is_none(studio):
    studio.wind(studio.cone(), 6, "red", studio.discs[0])
    hanging = studio.book.ask(disc_now, disc(31), studio.clock())
    assert (hanging.number, hanging.bundle.count, hanging.bundle.cones) == (
        "031",
        6,
        ("C·0001·" + cone(1)[-1],),
    )
    assert studio.book.ask(disc_now, disc(32), studio.clock()).bundle is None
    assert studio.book.ask(disc_now, disc(99), studio.clock()) is None
    assert studio.book.ask(disc_now, cone(1), studio.clock()) is None


def test_bundles_of_today_are_those_whose_disc_was_tied_on_since_and_is_still_on(studio):
    one = studio.cone()
    studio.wind(one, 2, "red", studio.discs[0])
    morning = studio.clock() + timedelta(seconds=1)
    studio.wind(one, 3, "red", studio.discs[1])
    studio.wind(one, 4, "red", studio.discs[2])
    studio.wind(one, 1, "red", studio.discs[3])
    studio.do(take_off, studio.discs[3])
    found = studio.book.ask(tied_on_since, morning, studio.clock())
    assert [(bundle.number, bundle.count) for bundle in found] == [("033", 4), ("032", 3)]


def test_a_join_gives_neither_cone_its_colour(studio, look):
    first, second = studio.cones(2)
    studio.join([(first, LONG_MM - 1000), (second, 1000)])
    assert look(2, "red").tie == "yellow"
