"""Amounts in the words of a recipe, and the line of what changed."""

from dataclasses import replace

import pytest

from app.lookups.recipe_amounts import amounts, difference, history, to_write_on
from app.work.recipes import ComponentIn, RecipeIn, StepIn, ZoneIn, write_recipe
from tests.dyehouse import ACID, BLUE, DYES, YELLOW, Dyehouse
from tests.makers import Studio

SALT = ComponentIn("sodium sulphate", "bath", 2_500, "assistant", "anhydrous")


def test_amounts_are_said_by_fibre_bath_and_bottle(studio: Studio) -> None:
    bottle = ComponentIn("K1 black", "bottle", 5_000, zone="A")
    version = studio.do(write_recipe, RecipeIn(
        1, (BLUE, SALT, bottle), zones=(ZoneIn("A", 500, 60),)))
    assert [(one.named, one.words) for one in studio.book.ask(amounts, version)] == [
        ("B1 turquoise", "0.85 %"), ("sodium sulphate (anhydrous)", "2.5 g/L"),
        ("K1 black", "0.5 % in A")]
    assert studio.book.ask(amounts, 99) == ()


@pytest.mark.parametrize(("changes", "line"), [
    ({}, ""),
    ({"components": (BLUE, replace(YELLOW, amount=2_500), DYES[2], ACID)},
     "Y1 lemon 0.22 → 0.25 %, citric acid new 2 %"),
    ({"components": DYES[:2]}, "K1 black left out"),
    ({"components": (DYES[1], DYES[0], DYES[2])}, "poured in another order"),
    ({"components": (replace(BLUE, unit="bath"), *DYES[1:])}, "B1 turquoise 0.85 % → 8.5 g/L"),
    ({"components": (*DYES, BLUE)}, "B1 turquoise new 0.85 %"),
    ({"components": (replace(BLUE, form="crystals"), *DYES[1:])},
     "B1 turquoise as it is → crystals"),
    ({"liquor_tenths": 150, "base_class": "superwash"},
     "liquor 20 : 1 → 15 : 1, for not said → superwash"),
    ({"look": "speckle", "steps": (StepIn("steam"),)}, "look solid → speckle, steps changed"),
    ({"zones": (ZoneIn("A", 500, 60),)}, "zones changed"),
])
def test_what_changed_is_one_line(studio: Studio, changes: dict[str, object], line: str) -> None:
    recipe = RecipeIn(1, DYES, liquor_tenths=200)
    before = studio.do(write_recipe, recipe)
    after = studio.do(write_recipe, replace(recipe, reason="tried", **changes))  # type: ignore[arg-type]
    assert studio.book.ask(difference, before, after) == line
    assert studio.book.ask(difference, before, 99) == ""


def test_a_version_comes_with_its_amounts_and_none_with_nothing(studio: Studio) -> None:
    house = Dyehouse(studio)
    then, found, stands = studio.book.ask(to_write_on, house.recipe)
    assert not stands
    house.weighed()
    assert studio.book.ask(to_write_on, house.recipe)[2]
    assert then is not None
    assert [one.words for one in found] == ["0.85 %", "0.22 %", "0.1 %"]
    assert studio.book.ask(to_write_on, 99) == (None, (), False)


def test_all_versions_are_seen_each_against_the_one_before(studio: Studio) -> None:
    house = Dyehouse(studio)
    lot = house.dye(house.weighed())
    studio.do(write_recipe, RecipeIn(1, (BLUE, replace(YELLOW, amount=2_500), DYES[2]),
                                     liquor_tenths=200, steps=(StepIn("heat up", 850, 46),),
                                     reason="warmer"))
    new, old = studio.book.ask(history, 1)
    assert (new.use.number, new.changed, new.use.lots) == (2, "Y1 lemon 0.22 → 0.25 %", ())
    assert (old.use.number, old.changed) == (1, "")
    assert [code.replace("·", "") for code in old.use.lots] == [studio.code(lot)]
    assert [one.words for one in old.amounts] == ["0.85 %", "0.22 %", "0.1 %"]
