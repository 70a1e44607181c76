"""A weigh-out: for yarn by its weight from winding, begun, left, gone on with, and closed."""

import pytest

from app.lookups.weighings import open_weighings
from app.problems import NotFound, Refused
from app.work.recipes import RecipeIn, correct_recipe
from app.work.weigh_lines import LineIn, begin_line
from app.work.weighing import WeighingIn, begin_weighing, close_weighing
from tests.dyehouse import DYES, Dyehouse
from tests.makers import EACH_MG, Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars and a recipe of three dyes."""
    return Dyehouse(studio)


def test_the_dry_mass_is_that_of_the_yarn_as_wound(house: Dyehouse) -> None:
    groups = [house.studio.wind(1, count) for count in (4, 2)]
    done = house.studio.done(begin_weighing, WeighingIn("bath", house.recipe, (*groups, groups[0])))
    out = house.out(done.answer)
    assert (out.dry_mg, out.dry_basis, out.yarn) == (6 * EACH_MG, "wound", tuple(groups))
    assert done.said == (
        "began to weigh out Sluice Keeper's Glove, version 1 for 618.75 g")
    assert done.findings == ()


def test_a_damp_weight_is_reckoned_back_and_marked(house: Dyehouse) -> None:
    done = house.studio.done(begin_weighing, WeighingIn(
        "bath", house.recipe, weighed_mg=1_083_000, pick_up_permille=800))
    out = house.out(done.answer)
    assert (out.dry_mg, out.dry_basis, out.pick_up_permille) == (601_667, "weighed damp", 800)
    assert done.findings == ("Reckoned from a damp weight at 80 % pick-up: 601.7 g dry. The weight "
                             "from winding is surer.",)
    dry = house.out(house.begin())
    assert (dry.dry_mg, dry.dry_basis, dry.pick_up_permille) == (602_000, "weighed dry", None)


def test_a_recipe_stands_from_its_first_weigh_out_and_not_before(house: Dyehouse) -> None:
    house.begin()
    with pytest.raises(Refused, match="was used and stays as it is"):
        house.studio.do(correct_recipe, house.recipe, RecipeIn(1, DYES[:1]))
    house.studio.undo()
    house.studio.do(correct_recipe, house.recipe, RecipeIn(1, DYES[:1]))


def test_what_is_missing_is_noted_and_the_weigh_out_closed(house: Dyehouse) -> None:
    weighing = house.begin()
    house.take(weighing, house.fills[2], 1_324)
    done = house.studio.done(close_weighing, weighing)
    assert (done.said, done.findings) == (
        f"closed weigh-out {weighing}", ("Not weighed: B1 turquoise, K1 black.",))
    assert house.studio.book.ask(open_weighings) == ()
    with pytest.raises(Refused, match=f"Weigh-out {weighing} is closed"):
        house.studio.do(close_weighing, weighing)
    house.studio.undo()
    assert [out.id for out in house.studio.book.ask(open_weighings)] == [weighing]
    house.studio.check()


def test_a_weigh_out_is_not_closed_over_a_cup_on_the_balance(house: Dyehouse) -> None:
    weighing = house.begin()
    house.studio.do(begin_line, LineIn(weighing, fill=house.fills[1]))
    with pytest.raises(Refused, match="B1 turquoise is not weighed yet"):
        house.studio.do(close_weighing, weighing)
    assert not house.out(weighing).closed


def test_an_unwritten_recipe_takes_every_jar_and_says_so(studio: Studio) -> None:
    done = studio.done(begin_weighing, WeighingIn("bath", studio.recipe, weighed_mg=1000))
    assert done.findings == (
        "No dye is written in this recipe: every jar is taken as it is scanned.",)


@pytest.mark.parametrize(("wrong", "what"), [
    (WeighingIn("soup", 1), "Nothing is weighed for a soup"),
    (WeighingIn("bath", 99, weighed_mg=5), "This recipe is not in the book"),
    (WeighingIn("bath", 1), "Nobody said for how much yarn"),
    (WeighingIn("bath", 1, weighed_mg=0), "Yarn weighs something"),
    (WeighingIn("bath", 1, weighed_mg=9, pick_up_permille=-1), "Yarn weighs something"),
])
def test_what_cannot_be_weighed_for_is_not_begun(
    house: Dyehouse, wrong: WeighingIn, what: str
) -> None:
    with pytest.raises((Refused, NotFound), match=what):
        house.studio.do(begin_weighing, wrong)
    with pytest.raises(NotFound, match="This weigh-out is not in the book"):
        house.studio.do(close_weighing, 99)
    assert house.studio.book.ask(open_weighings) == ()


def test_yarn_that_was_divided_is_not_weighed_for(house: Dyehouse) -> None:
    group = house.studio.wind(1, 4)
    house.studio.split(group, 2, 2)
    with pytest.raises(Refused, match="Scan what it became"):
        house.begin(group)
