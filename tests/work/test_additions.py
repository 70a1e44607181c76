"""What is added at the pot is a line of the bath; a dye among it takes the lot off its recipe."""

import pytest

from app.lookups.recipe_amounts import amounts
from app.lookups.weighings import weighed_with
from app.problems import NotFound, Refused
from app.work.additions import Addition, addition
from app.work.holding import hold
from tests.dyehouse import ACID, DYES, Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """A lot that was dyed by its recipe, as bath 1."""
    house = Dyehouse(studio, (*DYES, ACID))
    assert house.dye(house.weighed()) == 1
    return house


def test_a_bit_more_yellow_is_a_line_of_the_lot_and_the_recipe_stays(house: Dyehouse) -> None:
    before = house.studio.book.ask(amounts, house.recipe)
    done = house.studio.done(addition, Addition(1, 2, house.fills[2], mg=300, why="too blue"))
    assert done.said == "added 0.3 g Y1 lemon to bath 1"
    assert done.findings == (
        "Y1 lemon was added at the pot: this lot is off its recipe, and no sister of others.",)
    found = house.studio.book.ask(weighed_with, 1)
    assert [(one.kind, one.mg) for one in found.lines][-1] == ("addition", 300)
    assert found.lines[-1].why == "too blue"
    assert found.off_recipe == ("dye was added at the pot",)
    assert house.studio.book.ask(amounts, house.recipe) == before
    assert house.jar(2).left_mg == 500_000 - 1_324 - 300
    house.studio.undo()
    assert house.studio.book.ask(weighed_with, 1).off_recipe == ()
    house.studio.check()


def test_more_acid_leaves_the_lot_on_its_recipe(house: Dyehouse) -> None:
    done = house.studio.done(addition, Addition(1, 4, mg=6_000))
    assert (done.said, done.findings) == ("added 6 g citric acid to bath 1", ())
    assert house.studio.done(addition, Addition(1, ul=90_000, why="vinegar 5 %")).said == (
        "added 90 mL vinegar 5 % to bath 1")
    assert house.studio.book.ask(weighed_with, 1).off_recipe == ()


def test_a_dye_of_no_known_jar_leaves_it_open_what_the_lot_was_dyed_of(house: Dyehouse) -> None:
    assert house.studio.book.ask(weighed_with, 1).known
    house.studio.do(addition, Addition(1, 2, mg=300))
    found = house.studio.book.ask(weighed_with, 1)
    assert (found.known, found.off_recipe) == (False, ("dye was added at the pot",))


def test_a_held_jar_is_said_and_recorded(house: Dyehouse) -> None:
    house.studio.do(hold, "fill", house.fills[2], "damp")
    done = house.studio.done(addition, Addition(1, 2, house.fills[2], mg=300))
    assert done.findings[0].startswith("HOLD lies on jar 2, fill 1.")


@pytest.mark.parametrize(("wrong", "what"), [
    (Addition(99, mg=5, why="salt"), "This bath is not in the book"),
    (Addition(1, mg=5), "Nobody said what was added"),
    (Addition(1, why="salt"), "One weight or one volume"),
    (Addition(1, fill=99, mg=5), "This jar or bottle is not in the book"),
    (Addition(1, fill=1, stock=1, mg=5), "A line has one source"),
])
def test_an_addition_says_what_where_and_how_much(
    house: Dyehouse, wrong: Addition, what: str
) -> None:
    lines = house.studio.book.ask(weighed_with, 1).lines
    with pytest.raises((Refused, NotFound), match=what):
        house.studio.do(addition, wrong)
    assert house.studio.book.ask(weighed_with, 1).lines == lines
