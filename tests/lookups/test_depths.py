"""How deep a lot is: as weighed, else as written, else not known."""

import pytest

from app.lookups.depths import depths
from app.work.additions import Addition, addition
from app.work.recipes import ComponentIn, ZoneIn
from app.work.weigh_lines import LineIn, begin_line
from tests.dyehouse import ACID, DYES, Dyehouse
from tests.lookups.waters import NAVY, PALE, RED, lot_of, recipe_of


def depth(studio, lot):
    return studio.book.ask(depths, [lot]).get(lot)


@pytest.mark.parametrize(("components", "words", "pale", "deep"), [
    (PALE, "0.055 %", True, False), (RED, "1.70 %", False, True), (NAVY, "2.00 %", False, False),
    ((ComponentIn("N1 navy", "owf", 16_000), ComponentIn("K1 black", "owf", 18_000)),
     "3.40 %", False, True),
    ((*PALE, ComponentIn("citric acid", "owf", 20_000, "assistant")), "0.055 %", True, False),
])
def test_by_its_recipe_where_nothing_was_weighed(studio, components, words, pale, deep):
    found = depth(studio, lot_of(studio, "A", components)[1])
    assert (found.words, found.pale, found.deep, found.weighed) == (words, pale, deep, False)


def test_a_recipe_that_is_not_written_or_goes_by_the_litre_is_not_known(studio):
    assert depth(studio, studio.dye(studio.wind(studio.cone(), 2))) is None
    per_litre = (ComponentIn("R2 scarlet", "bath", 500),)
    assert depth(studio, lot_of(studio, "B", per_litre)[1]) is None


def test_what_was_weighed_counts_more_than_the_recipe(studio):
    house = Dyehouse(studio, (*DYES, ACID))
    weighing = house.weighed()  # 5.117 + 1.324 + 0.602 g
    found = depth(studio, house.dye(weighing, 6))
    assert (found.millionths, found.weighed) == (round(7_043 * 1_000_000 / (6 * 103_125)), True)
    assert found.dyes["B1 turquoise"] == round(5_117 * 1_000_000 / (6 * 103_125))


def test_what_was_added_at_the_pot_counts_and_an_open_cup_is_not_known(studio):
    house = Dyehouse(studio)
    weighing = house.begin()
    house.take(weighing, house.fills[1], 5_117)
    lot = house.dye(weighing, 6)
    before = depth(studio, lot).millionths
    studio.do(addition, Addition(1, fill=house.fills[2], mg=619))
    assert depth(studio, lot).millionths - before == round(619 * 1_000_000 / (6 * 103_125))
    studio.do(begin_line, LineIn(weighing, fill=house.fills[2]))
    assert depth(studio, lot).weighed is False


def test_zones_count_what_is_poured_of_each(studio):
    version = recipe_of(studio, "Z", (
        ComponentIn("A", "bottle", 5_000, zone="A"), ComponentIn("B", "bottle", 10_000, zone="B")),
        look="zones", zones=(ZoneIn("A", 500, 60), ZoneIn("B", 500, 45)))
    studio.recipe = version
    found = depth(studio, studio.dye(studio.wind(studio.cone(), 2)))
    assert found.millionths == 3_000 + 4_500
