"""What is in which pot, what may be dyed, and which lots are near by their making."""

from dataclasses import replace
from datetime import timedelta

from app.lookups.pots import pots_now, recipes, relatives
from app.work.additions import Addition, addition
from app.work.bases import describe_base
from app.work.dyeing import BathIn, into_bath, lift, name_colourway
from app.work.jars import Refill, refill
from app.work.recipes import write_recipe
from tests.dyehouse import Dyehouse
from tests.makers import Studio, tarnfield
from tests.work.test_recipes import RECIPE


def two_bases(studio: Studio) -> tuple[int, int]:
    studio.do(describe_base, tarnfield(name="Gossamer Lamb", millitex=125_000))
    (other,) = studio.cones(1, "Gossamer Lamb")
    return studio.wind(studio.cone(), 4), studio.wind(other, 3)


def test_the_newest_version_of_each_recipe_is_offered_by_name(studio: Studio) -> None:
    studio.do(name_colourway, "Ferry Ledger", "#22304F", "navy")
    studio.do(write_recipe, RECIPE)
    second = studio.do(write_recipe, replace(RECIPE, reason="a little more yellow"))
    found = studio.book.ask(recipes)
    assert [(one.colourway, one.number, one.note) for one in found] == [
        ("Ferry Ledger", 1, "navy"), ("Sluice Keeper's Glove", 2, "a little more yellow")]
    assert found[1].version == second
    studio.undo()
    assert [one.number for one in studio.book.ask(recipes)] == [1, 1]


def test_a_pot_shows_its_lots_until_it_is_lifted(studio: Studio) -> None:
    a, b = two_bases(studio)
    bath = studio.do(into_bath, BathIn((a, b), studio.recipe, studio.pot), studio.random)
    (pot,) = studio.book.ask(pots_now)
    assert (pot.pot, pot.colourway, pot.since) == (
        "001", "Sluice Keeper's Glove", studio.clock.now)
    assert [(lot.base, lot.count) for lot in pot.lots] == [
        ("Tarnfield 4-ply", 4), ("Gossamer Lamb", 3)]
    assert len({lot.code for lot in pot.lots}) == 2
    studio.do(lift, bath["bath"])
    assert studio.book.ask(pots_now) == ()
    studio.undo()
    assert len(studio.book.ask(pots_now)) == 1


def test_lots_of_one_bath_are_companions_and_without_weigh_outs_nobody_knows_sisters(
    studio: Studio,
) -> None:
    a, b = two_bases(studio)
    first, companion = studio.do(
        into_bath, BathIn((a, b), studio.recipe, studio.pot), studio.random)["lots"]
    sister = studio.dye(studio.wind(studio.cone(), 2), pot=studio.pot2)
    studio.clock.now += timedelta(days=1)
    studio.dye(studio.wind(studio.cone(), 2))
    found = studio.book.ask(relatives, first)
    assert [code.replace("·", "") for code in found.companions] == [studio.code(companion)]
    assert found.sisters == ()
    assert [code.replace("·", "") for code in found.fills_not_known] == [studio.code(sister)]


def test_a_lot_that_is_not_there_has_no_relatives(studio: Studio) -> None:
    found = studio.book.ask(relatives, 99)
    assert (found.companions, found.sisters) == ((), ())


def sisters(house: Dyehouse, lot: int) -> tuple[list[str], list[str]]:
    found = house.studio.book.ask(relatives, lot)
    return ([code.replace("·", "") for code in found.sisters],
            [code.replace("·", "") for code in found.fills_not_known])


def test_sisters_are_of_one_recipe_one_day_and_the_same_fills(studio: Studio) -> None:
    house = Dyehouse(studio)
    first, sister = house.dye(house.weighed()), house.dye(house.weighed())
    unknown = house.dye()
    studio.do(refill, 1, Refill("q", 500_000))
    after = house.dye(house.weighed())
    assert sisters(house, first) == ([studio.code(sister)], [studio.code(unknown)])
    assert sisters(house, after) == ([], [studio.code(unknown)])
    studio.clock.now += timedelta(days=1)
    house.dye(house.weighed())
    assert sisters(house, after) == ([], [studio.code(unknown)])


def test_a_lot_off_its_recipe_is_nobodys_sister(studio: Studio) -> None:
    house = Dyehouse(studio)
    first, sister = house.dye(house.weighed()), house.dye(house.weighed())
    assert sisters(house, first) == ([studio.code(sister)], [])
    studio.do(addition, Addition(1, 2, house.fills[2], mg=300))
    assert sisters(house, first) == sisters(house, sister) == ([], [])
