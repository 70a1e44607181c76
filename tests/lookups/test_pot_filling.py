"""The bath against the pot, by the numbers of a pot of 602 g, and weigh-outs not poured yet."""

from decimal import Decimal

import pytest

from app.calculations.codes import Kind
from app.lookups.now import NOW
from app.lookups.pot_filling import bath_asked, pot_filling
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath
from app.work.loading import into_load
from app.work.mixing import split
from app.work.weighing import close_weighing
from tests.dyehouse import Dyehouse


@pytest.fixture
def house(studio):
    """A recipe at 20 : 1, and a pot of 20 L."""
    house = Dyehouse(studio)
    (house.pot,) = studio.do(make_plates, Kind.POT, [7], "20 L, gas")
    return house


def asked(house, *rows, pot="its own", version="its own", weighing=None):
    return house.studio.book.ask(
        bath_asked, rows, house.pot if pot == "its own" else pot,
        house.recipe if version == "its own" else version, weighing, NOW)


def wind(house, count):
    return house.studio.wind(house.studio.cone(), count)


def test_seven_skeins_are_the_most_at_20_to_1_in_20_litres(house):
    bath = asked(house, wind(house, 7))
    assert (bath.ratio, round(bath.level_l, 2), bath.usable_l) == (20, Decimal("14.99"), 15)
    assert (bath.too_much, bath.pots) == (False, (7,))
    eight = asked(house, wind(house, 8))
    assert (eight.too_much, eight.pots, eight.widest) == (True, (4, 4), 17)


def test_fourteen_skeins_are_two_pots_and_two_lots(house):
    assert asked(house, wind(house, 14)).pots == (7, 7)


def test_soaked_yarn_brings_its_weight_in_water_and_spun_yarn_half_of_it(house):
    row = wind(house, 6)  # 618.75 g, 12.375 L
    assert asked(house, row).to_add_l == Decimal("12.375")
    house.studio.do(into_load, "soak", yarn=[row])
    assert asked(house, row).to_add_l == Decimal("11.75625")
    house.studio.do(into_load, "spin", yarn=[row])
    assert asked(house, row).to_add_l == Decimal("12.065625")


def test_what_nobody_said_is_not_claimed(house):
    row = wind(house, 8)
    assert asked(house, row, version=None) is None
    assert asked(house) is None
    for pot in (None, house.studio.pot):
        bath = asked(house, row, pot=pot)
        assert (bath.usable_l, bath.too_much, bath.pots, bath.widest) == (None, False, (), 0)


def test_one_skein_that_fits_no_pot_has_no_split(house):
    (tiny,) = house.studio.do(make_plates, Kind.POT, [8], "1,5 L")
    bath = asked(house, wind(house, 2), pot=tiny)
    assert (bath.too_much, bath.pots) == (True, ())


def filling(house, *rows):
    return house.studio.book.ask(pot_filling, rows, None, None, None, NOW).weighed


def test_a_weigh_out_is_for_its_bundles_until_it_is_poured(house):
    row, other = wind(house, 2), wind(house, 3)
    weighing = house.begin(row)
    assert filling(house, row) == ()
    house.studio.do(close_weighing, weighing)
    (one,) = filling(house, row)
    assert (one.weighing, one.for_all, one.recipe.version) == (weighing, True, house.recipe)
    assert [one.for_all for one in filling(house, row, other)] == [False]
    assert filling(house, other) == ()
    house.studio.do(into_bath, BathIn((row,), house.recipe, None, weighing), house.studio.random)
    assert filling(house, row) == ()


def test_half_a_cord_that_was_weighed_for_finds_its_weigh_out(house):
    row = wind(house, 4)
    weighing = house.begin(row)
    house.studio.do(close_weighing, weighing)
    half, _ = house.studio.do(split, row, (2, 2))
    assert [(one.weighing, one.for_all) for one in filling(house, half)] == [(weighing, False)]


def test_a_pot_that_is_too_full_is_noted_with_the_bath(house):
    row = wind(house, 9)
    done = house.studio.done(
        into_bath, BathIn((row,), house.recipe, house.pot), house.studio.random)
    assert done.findings == (
        "19.27 L with the yarn is more than the 15.00 L this pot takes: stir it more, for it dyes "
        "unlevel.",)
