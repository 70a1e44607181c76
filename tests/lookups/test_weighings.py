"""Weigh-outs as they are and were: who took what from which jar, when, and how far off."""

from fractions import Fraction

import pytest

from app.calculations.codes import Kind
from app.lookups.weighings import net, open_weighings, weigh_out, weighed_with
from app.store.deed import By
from app.work.bundling import make_plates
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars and a recipe of three dyes."""
    return Dyehouse(studio)


def test_a_lot_keeps_every_line_with_its_jar_person_time_and_how_far_off(house: Dyehouse) -> None:
    studio, weighing = house.studio, house.begin()
    (balance,) = studio.do(make_plates, Kind.VESSEL, [9], "0.01 g")
    line = studio.do(begin_line, LineIn(weighing, fill=house.fills[1], target_mg=5_117,
                                        balance=balance))
    studio.do(take_weight, line, 5_120, by=By("DA", "weighing"))
    at = studio.clock.now
    house.take(weighing, house.fills[2], 1_330)
    studio.do(tip_back, line, 3)
    lot = house.dye(weighing)
    first, second, back = studio.book.ask(weighed_with, lot).lines
    assert (first.asked, first.source, first.mg, first.person, first.taken, first.balance) == (
        "B1 turquoise", "jar 1, fill 1", 5_120, "DA", at, "0.01 g")
    assert (first.off, second.off, back.off) == (Fraction(3, 5_117), None, None)
    assert (back.kind, back.mg, back.fill) == ("tipped back", -3, house.fills[1])
    found = studio.book.ask(weighed_with, lot)
    assert (found.fills, found.known, found.off_recipe) == (
        {house.fills[1], house.fills[2]}, True, ())
    out = house.out(weighing)
    assert net(out.lines, 1) == 5_117
    assert net(out.lines, 3) == 0


def test_what_is_open_is_found_again_after_a_stop_the_oldest_first(house: Dyehouse) -> None:
    first = house.begin()
    second = house.studio.do(begin_weighing, WeighingIn("stock"))
    found = house.studio.book.ask(open_weighings)
    assert [(one.id, one.purpose, one.colourway, one.version, one.missing) for one in found] == [
        (first, "bath", "Sluice Keeper's Glove", 1, ("B1 turquoise", "Y1 lemon", "K1 black")),
        (second, "stock", None, None, ())]
    assert house.studio.book.ask(weigh_out, 99) is None


def test_of_a_lot_without_a_weigh_out_nothing_is_known(house: Dyehouse) -> None:
    found = house.studio.book.ask(weighed_with, house.dye())
    assert (found.lines, found.known, found.fills) == ((), False, frozenset())
    assert house.studio.book.ask(weighed_with, 99).lines == ()
