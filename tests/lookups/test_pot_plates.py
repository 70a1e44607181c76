"""A pot by its plate, and its lots with their relatives."""

from app.calculations.codes import Kind, numbered, shown
from app.lookups.pot_plates import dyed, pot_with
from app.work.dyeing import BathIn, into_bath, lift

POT_1 = numbered(Kind.POT, 1).text


def test_an_empty_pot_has_no_bath_and_a_disc_is_no_pot(studio):
    pot = studio.book.ask(pot_with, POT_1)
    assert (pot.id, pot.number, pot.bath) == (studio.pot, 1, None)
    assert studio.book.ask(pot_with, numbered(Kind.DISC, 31).text) is None


def test_a_pot_holds_its_bath_until_it_is_lifted(studio):
    bath = studio.do(
        into_bath,
        BathIn((studio.wind(studio.cone(), 4),), studio.recipe, studio.pot),
        studio.random,
    )["bath"]
    assert studio.book.ask(pot_with, POT_1).bath == bath
    studio.do(lift, bath)
    assert studio.book.ask(pot_with, POT_1).bath is None
    assert studio.book.ask(dyed, bath) is None


def test_of_two_baths_in_one_pot_the_newer_counts(studio):
    cone = studio.cone()
    baths = [
        studio.do(
            into_bath, BathIn((studio.wind(cone, 2),), studio.recipe, studio.pot), studio.random
        )["bath"]
        for _ in range(2)
    ]
    assert studio.book.ask(pot_with, POT_1).bath == baths[1]


def test_a_lot_names_those_of_its_recipe_and_day_and_hangs_on_its_trail(studio):
    cone = studio.cone()
    sister = studio.dye(studio.wind(cone, 2), pot=studio.pot2)
    studio.dye(studio.wind(cone, 4), pot=studio.pot)
    found = studio.book.ask(dyed, studio.book.ask(pot_with, POT_1).bath)
    assert (found.sisters, found.fills_not_known) == ((), (shown(studio.code(sister)),))
    assert "dye lot" in [stop.kind for stop in found.stops]
