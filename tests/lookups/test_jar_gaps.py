"""Two jars off by as much the other way: the wrong one was scanned, and the lot is named."""

from decimal import Decimal

import pytest

from app.calculations.codes import shown
from app.lookups.jar_gaps import jars_that_were_swapped
from app.work.jars import weigh_jar
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    return Dyehouse(studio)


def test_a_pair_of_opposite_gaps_names_the_jars_and_the_lot(house: Dyehouse) -> None:
    lot = house.dye(house.weighed(jars=(1, 2, 3)))
    house.studio.do(weigh_jar, 1, 500_000)
    house.studio.do(weigh_jar, 4, 494_883)
    (pair,) = house.studio.book.ask(jars_that_were_swapped)
    assert (pair.taken_from, pair.booked_on, pair.about_g) == ("4", "1", Decimal("5.117"))
    assert [use.lot for use in pair.uses] == [shown(house.studio.code(lot) or "")]


def test_jars_that_weigh_what_their_lines_say_name_nothing(house: Dyehouse) -> None:
    house.weighed(jars=(1, 2, 3))
    house.studio.do(weigh_jar, 1, 494_883)
    assert house.studio.book.ask(jars_that_were_swapped) == ()
