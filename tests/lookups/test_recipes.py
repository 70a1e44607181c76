"""Recipes as they stood, and who was dyed by which version."""

from app.lookups.recipes import ComponentThen, StepThen, ZoneThen, recipe_then, versions
from app.work.dyeing import name_colourway
from app.work.recipes import ComponentIn, RecipeIn, StepIn, ZoneIn, write_recipe
from tests.dyehouse import ACID, BLUE, Dyehouse
from tests.makers import Studio


def test_a_recipe_is_read_as_it_was_written_in_its_order(studio: Studio) -> None:
    poured = ComponentIn("Y1 lemon", "bottle", 5_000, zone="A")
    version = studio.do(write_recipe, RecipeIn(
        1, (ACID, poured, BLUE), "zones", "untreated wool", 150,
        (ZoneIn("B", 350, 45), ZoneIn("A", 450, 60, "whey", "#AACCEE")),
        (StepIn("soak"), StepIn("heat up", 850, 46))))
    then = studio.book.ask(recipe_then, version)
    assert then.zones == (ZoneThen("A", "whey", 450, 60, "#AACCEE"),
                          ZoneThen("B", "", 350, 45, None))
    assert then.components == (
        ComponentThen(1, "assistant", "citric acid", "", "owf", None),
        ComponentThen(2, "dye", "Y1 lemon", "", "bottle", "A"),
        ComponentThen(3, "dye", "B1 turquoise", "", "owf", None))
    assert then.steps == (StepThen(1, "soak", None, None), StepThen(2, "heat up", 850, 46))
    assert (then.look, then.base_class, then.liquor_tenths, then.person) == (
        "zones", "untreated wool", 150, "OW")
    assert then.is_written


def test_a_colourway_that_was_only_named_is_not_written(studio: Studio) -> None:
    version = studio.do(name_colourway, "Ferry Ledger", "#22304F", "navy")
    then = studio.book.ask(recipe_then, version)
    assert (then.name, then.swatch, then.reason, then.is_written) == (
        "Ferry Ledger", "#22304F", "navy", False)
    assert studio.book.ask(recipe_then, 99) is None
    assert studio.book.ask(versions, 99) == ()


def test_a_weigh_out_alone_makes_a_version_stand(studio: Studio) -> None:
    house = Dyehouse(studio)
    assert [(one.number, one.frozen, one.lots) for one in studio.book.ask(versions, 1)] == [
        (1, False, ())]
    house.begin()
    assert studio.book.ask(versions, 1)[0].frozen
