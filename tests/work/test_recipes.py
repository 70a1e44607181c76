"""Recipes: written once, frozen at first use, changed only into a next version with its reason."""

from dataclasses import replace

import pytest
from sqlalchemy import func, select

from app.lookups.recipe_amounts import amounts, difference
from app.lookups.recipes import recipe_then, versions
from app.problems import NotFound, Refused
from app.records import Component, RecipeVersion
from app.work.dyeing import name_colourway
from app.work.recipes import (
    ComponentIn,
    RecipeIn,
    StepIn,
    ZoneIn,
    correct_recipe,
    depth,
    write_recipe,
)
from tests.dyehouse import ACID, BLUE, DYES, YELLOW
from tests.makers import Studio

RECIPE = RecipeIn(1, DYES, liquor_tenths=200, base_class="untreated wool",
                  steps=(StepIn("heat up", 850, 46),))
ZONES = (ZoneIn("A", 450, 60, "whey"), ZoneIn("B", 350, 45), ZoneIn("C", 80, 30),
         ZoneIn("D", 120, 12))


def test_a_named_colourway_is_written_as_its_first_version(studio: Studio) -> None:
    done = studio.done(write_recipe, RECIPE)
    assert (done.answer, done.said, done.findings) == (
        studio.recipe, "wrote version 1 of Sluice Keeper's Glove", ())
    then = studio.book.ask(recipe_then, done.answer)
    assert (then.look, then.base_class, then.liquor_tenths) == ("solid", "untreated wool", 200)
    assert [one.substance for one in then.components] == ["B1 turquoise", "Y1 lemon", "K1 black"]
    studio.undo()
    assert not studio.book.ask(recipe_then, studio.recipe).is_written
    assert studio.do(write_recipe, RECIPE) == studio.recipe
    studio.check()


def test_what_is_written_changes_only_into_a_next_version_with_its_reason(studio: Studio) -> None:
    studio.do(write_recipe, RECIPE)
    with pytest.raises(Refused, match="is written already; nothing was saved"):
        studio.do(write_recipe, replace(RECIPE, components=(BLUE,)))
    done = studio.done(write_recipe, replace(RECIPE, reason="less black"))
    assert done.said == "wrote version 2 of Sluice Keeper's Glove"
    assert studio.book.ask(recipe_then, done.answer).reason == "less black"
    studio.undo()
    again = studio.done(write_recipe, replace(RECIPE, reason="less black"))
    assert again.said == "wrote version 3 of Sluice Keeper's Glove"


def test_a_version_that_was_only_named_is_filled_in_and_keeps_its_words(studio: Studio) -> None:
    named = studio.do(name_colourway, "Ferry Ledger", None, "as in the old book")
    assert studio.do(write_recipe, replace(RECIPE, colourway=2)) == named
    assert studio.book.ask(recipe_then, named).reason == "as in the old book"


def test_what_was_dyed_unwritten_stays_unwritten(studio: Studio) -> None:
    studio.dye(studio.wind(studio.cone(), 2))
    with pytest.raises(Refused, match="Version 1 of Sluice Keeper's Glove is written already"):
        studio.do(write_recipe, RECIPE)
    assert studio.do(write_recipe, replace(RECIPE, reason="written down")) != studio.recipe


def test_four_lots_keep_their_yellow_when_it_goes_from_22_to_25(studio: Studio) -> None:
    used = studio.do(write_recipe, RECIPE)
    lots = [studio.dye(studio.wind(studio.cone(), 2)) for _ in range(4)]
    more = (BLUE, replace(YELLOW, amount=2500), DYES[2])
    with pytest.raises(Refused, match="was used and stays as it is; nothing was saved") as refused:
        studio.do(correct_recipe, used, replace(RECIPE, components=more))
    assert refused.value.next_step == "Write the next version, and say what changes."
    new = studio.do(write_recipe, replace(RECIPE, components=more, reason="a bit more yellow"))
    assert [one.amount for one in studio.book.ask(amounts, used)] == [8500, 2200, 1000]
    assert studio.book.ask(difference, used, new) == "Y1 lemon 0.22 → 0.25 %"
    after, before = studio.book.ask(versions, 1)
    assert (after.reason, after.lots, after.frozen) == ("a bit more yellow", (), False)
    assert before.frozen
    assert [code.replace("·", "") for code in before.lots] == [studio.code(lot) for lot in lots]


def test_a_slip_is_put_right_until_the_version_is_used(studio: Studio) -> None:
    version = studio.do(write_recipe, RECIPE)
    said = studio.done(correct_recipe, version, replace(RECIPE, components=(BLUE, ACID))).said
    assert said == "put version 1 of Sluice Keeper's Glove right"
    assert [one.substance for one in studio.book.ask(recipe_then, version).components] == [
        "B1 turquoise", "citric acid"]
    studio.undo()
    assert [one.amount for one in studio.book.ask(amounts, version)] == [8500, 2200, 1000]
    assert studio.book.ask(lambda c: c.execute(
        select(func.count()).select_from(Component)).scalar()) == 5
    with pytest.raises(NotFound, match="This recipe is not in the book"):
        studio.do(correct_recipe, 99, RECIPE)
    studio.check()


def test_zones_hold_their_bottles(studio: Studio) -> None:
    poured = tuple(ComponentIn("B1 turquoise", "bottle", amount, zone=letter)
                   for letter, amount in (("A", 5000), ("B", 10_000), ("C", 2500), ("D", 20_000)))
    assert sum(depth(one, ZONES) or 0 for one in poured) == 10_650  # 1.065 % of the fibre
    version = studio.do(write_recipe, RecipeIn(1, poured, "zones", zones=ZONES))
    then = studio.book.ask(recipe_then, version)
    assert [(zone.letter, zone.ml_per_100_g) for zone in then.zones] == [
        ("A", 60), ("B", 45), ("C", 30), ("D", 12)]
    assert [one.zone for one in then.components] == ["A", "B", "C", "D"]
    assert depth(ComponentIn("salt", "bath", 5), ()) is None


@pytest.mark.parametrize(("amount", "said"), [
    (50_000, ()), (50_001, ("All dyes together are 5.0001 %: even blacks take no more than 5.",)),
    (50, ()), (49, ("B1 turquoise is 0.0049 %: is the point in the right place?",)),
])
def test_very_much_and_very_little_dye_is_said_and_saved(
    studio: Studio, amount: int, said: tuple[str, ...]
) -> None:
    one = replace(BLUE, amount=amount)
    assert studio.done(write_recipe, RecipeIn(1, (one, ACID))).findings == said


@pytest.mark.parametrize(("wrong", "what"), [
    ({"components": ()}, "at least one dye or assistant"),
    ({"look": "plaid"}, "A colourway looks solid, semi-solid, zones, speckle"),
    ({"components": (replace(BLUE, substance=" "),)}, "needs its name"),
    ({"components": (replace(BLUE, amount=0),)}, "more than nothing, by fibre, bath or bottle"),
    ({"components": (replace(BLUE, unit="spoon"),)}, "more than nothing, by fibre, bath"),
    ({"components": (replace(BLUE, zone="A"),), "zones": ZONES}, "belongs to a zone"),
    ({"components": (replace(BLUE, unit="bottle"),), "zones": ZONES}, "belongs to a zone"),
    ({"components": (replace(BLUE, unit="bottle", zone="E"),), "zones": ZONES}, "to a zone"),
    ({"zones": (ZONES[0], ZONES[0])}, "a letter of its own"),
    ({"zones": (ZONES[0], replace(ZONES[1], share_permille=551))}, "more than the whole skein"),
    ({"liquor_tenths": -1}, "A liquor ratio is more than nothing"),
    ({"colourway": 9}, "This colourway is not in the book"),
])
def test_a_recipe_that_makes_no_sense_is_not_written(
    studio: Studio, wrong: dict[str, object], what: str
) -> None:
    with pytest.raises((Refused, NotFound), match=what):
        studio.do(write_recipe, replace(RECIPE, **wrong))  # type: ignore[arg-type]
    assert studio.book.ask(lambda c: c.execute(
        select(RecipeVersion.look)).scalars().all()) == [None]
