"""Recipes: a letter a zone, an amount that is some, and a bottle that has its zone."""

from typing import Any

from app.records import Component, RecipeVersion, Zone
from app.records.recipes import LOOKS
from tests.makers import Studio
from tests.records.forbidden import allows_after_undo, forbids, forbids_twice


def component(**changes: Any) -> Component:
    return Component(**{"recipe_version": 1, "place": 1, "role": "dye", "substance": "N1",
                        "unit": "owf", "amount": 1, **changes})


def zone(**changes: Any) -> Zone:
    return Zone(**{"recipe_version": 1, "letter": "A", "share_permille": 400, "ml_per_100_g": 60,
                   **changes})


def test_a_letter_is_one_zone_of_a_version(studio: Studio) -> None:
    forbids_twice(studio, zone)
    allows_after_undo(studio, zone)
    forbids(studio, "pours_something", zone(letter="B", ml_per_100_g=-1))


def test_a_component_is_some_of_a_known_role_and_unit(studio: Studio) -> None:
    forbids(studio, "is_some", component(amount=0))
    forbids(studio, "ck_component_role", component(role="hope"))
    forbids(studio, "ck_component_unit", component(unit="spoon"))


def test_what_is_poured_from_a_bottle_has_its_zone_and_only_that(studio: Studio) -> None:
    one = studio.do(lambda deed: deed.add(zone()))
    forbids(studio, "bottle_has_a_zone", component(unit="bottle"))
    forbids(studio, "bottle_has_a_zone", component(zone=one))
    studio.do(lambda deed: deed.add(component(unit="bottle", zone=one)))


def test_a_look_is_one_of_four(studio: Studio) -> None:
    forbids(studio, "ck_recipe_version_look", RecipeVersion(colourway=1, number=2, look="plaid"))
    assert LOOKS == ("solid", "semi-solid", "zones", "speckle")
