"""Which cautions a recipe asks for."""

from app.calculations.cautions import Step
from app.exchange.dye_cautions import CLASS_NOT_KEPT, cautions_of
from app.lookups.recipes import recipe_then
from app.work.recipes import ComponentIn
from tests.dyehouse import ACID, BLUE, Dyehouse
from tests.makers import Studio


def test_acid_in_a_recipe_asks_for_its_caution_and_none_without(studio: Studio) -> None:
    house = Dyehouse(studio, (BLUE, ACID))
    with_acid = cautions_of(studio.book.ask(recipe_then, house.recipe), (Step.POT,))
    assert any("never water into acid" in words for words in with_acid)
    assert not any("never water into acid" in words for words in cautions_of(None, (Step.POT,)))


def test_a_class_is_gone_by_where_the_name_says_it(studio: Studio) -> None:
    house = Dyehouse(studio, (ComponentIn("R4 reactive red", "owf", 5_000),))
    said = cautions_of(studio.book.ask(recipe_then, house.recipe), (Step.WEIGH,))
    assert any("asthma" in words for words in said)


def test_each_is_said_once_and_that_the_class_is_not_kept() -> None:
    said = cautions_of(None, (Step.WEIGH, Step.POT, Step.DRAIN))
    assert len(set(said)) == len(said)
    assert said[-1] == CLASS_NOT_KEPT
