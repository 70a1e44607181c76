"""The nearest of very many readings: the same as the library pair by pair, and much faster."""

from math import inf, nan
from time import perf_counter

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.nearest_shades import Near, Shades, differences, nearest, shades
from app.calculations.shade import Colour, Viewing
from app.calculations.shade_difference import Lab, ciede2000
from app.problems import BadInput
from tests.calculations.shades import COLOURS, DRY, LABS, SHOP, TEAL, WET, colour

GLOVE = colour(48.3, -36.6, 3.3)
MANY = 100_000
TIMES_FASTER = 500


def many(count: int, seed: int = 19) -> list[Lab]:
    """Readings of all colours a pot can give."""
    chance = np.random.default_rng(seed)
    return list(zip(
        chance.uniform(5, 95, count).tolist(), chance.uniform(-60, 60, count).tolist(),
        chance.uniform(-60, 60, count).tolist(), strict=True,
    ))


def pair_by_pair(colour: Colour, labs: list[Lab], within: float = inf) -> list[tuple[int, float]]:
    far = [(place, ciede2000(colour.lab, lab)) for place, lab in enumerate(labs)]
    return sorted((one for one in far if one[1] <= within), key=lambda one: one[1])


def test_the_lots_of_a_colourway_come_nearest_first() -> None:
    found = nearest(TEAL["P"], shades([one.lab for one in TEAL.values()], DRY))
    assert [list(TEAL)[near.place] for near in found] == list("PUQRWSTV")
    assert found[0] == Near(0, 0.0)
    assert f"{found[1].ciede2000:.2f}" == "0.30"


def test_what_is_beyond_the_limit_is_left_out_and_what_is_on_it_is_not() -> None:
    lots = shades([one.lab for one in TEAL.values()], DRY)
    ranked = nearest(TEAL["P"], lots)
    assert nearest(TEAL["P"], lots, within=ranked[3].ciede2000) == ranked[:4]
    assert nearest(TEAL["P"], lots, within=ranked[3].ciede2000 - 1e-6) == ranked[:3]
    assert nearest(TEAL["P"], lots, most=3) == ranked[:3]


def test_like_readings_keep_the_order_of_the_table() -> None:
    lots = shades([(50, 1, 1), GLOVE.lab, (50, 0, 0), GLOVE.lab, GLOVE.lab], DRY)
    assert [near.place for near in nearest(GLOVE, lots)] == [1, 3, 4]
    assert [near.place for near in nearest(GLOVE, lots, most=2)] == [1, 3]


def test_as_many_as_are_wanted_are_found_though_the_first_is_the_colour_itself() -> None:
    paler = shades([(95 - step / 10, 0.0, 0.0) for step in range(900)], DRY)
    found = nearest(colour(95, 0, 0), paler, inf, most=20)
    assert [near.place for near in found] == list(range(20))


def test_nothing_to_look_among_finds_nothing() -> None:
    assert nearest(GLOVE, shades([], DRY)) == ()


@pytest.mark.parametrize("viewing", [WET, SHOP])
def test_a_table_that_was_looked_at_otherwise_is_refused(viewing: Viewing) -> None:
    table = shades([GLOVE.lab], viewing)
    with pytest.raises(BadInput):
        nearest(GLOVE, table)


@pytest.mark.parametrize("wrong", [(101, 0, 0), (50, -201, 0), (50, 0, 366), (50, nan, 0)])
def test_a_reading_that_cannot_be_is_named_by_its_place(wrong: Lab) -> None:
    with pytest.raises(BadInput, match="Reading 2 cannot be a colour of yarn"):
        shades([GLOVE.lab, wrong, wrong], DRY)


def test_not_even_one_wanted_is_refused() -> None:
    with pytest.raises(BadInput, match="number of readings wanted"):
        nearest(GLOVE, shades([GLOVE.lab], DRY), most=0)


@pytest.mark.parametrize("seen", [GLOVE, colour(25.1, 8.0, -20.5), colour(65.5, 6.6, 4.0)])
def test_the_whole_table_is_ranked_as_the_library_ranks_it_pair_by_pair(seen: Colour) -> None:
    labs = many(3000)
    expected = pair_by_pair(seen, labs)
    found = nearest(seen, shades(labs, DRY), inf)
    assert [near.place for near in found] == [place for place, _ in expected]
    assert max(
        abs(near.ciede2000 - far) for near, (_, far) in zip(found, expected, strict=True)
    ) < 1e-11


@given(COLOURS, st.lists(LABS, min_size=1, max_size=30), st.floats(0, 40), st.integers(1, 5))
def test_the_box_and_the_number_wanted_never_hide_one_that_is_near(
    seen: Colour, labs: list[Lab], within: float, most: int
) -> None:
    table = shades(labs, DRY)
    far = differences(seen, table.lightness, table.a, table.b)
    order = [place for place in np.argsort(far, kind="stable").tolist() if far[place] <= within]
    assert [near.place for near in nearest(seen, table, within)] == order
    assert [near.place for near in nearest(seen, table, within, most)] == order[:most]


@pytest.mark.parametrize("within", [0.5, 2.0, 4.0, 12.0])
@pytest.mark.parametrize("lab", [
    (95, 0, 0), (5, 0, 0), (50, 0, 0), (30, 40, -80), (30, 10, -60), (60, -20, -30), (50, 80, 70),
    (80, 0, 90), (8, 3, -2), (50, 1, 1),
])
def test_nor_does_the_box_hide_a_neighbour_on_its_edge(lab: Lab, within: float) -> None:
    """Walked out in every direction, plain lightness and the long way of the blues among them."""
    chance = np.random.default_rng(7)
    ways = np.vstack([np.eye(3), -np.eye(3), chance.normal(size=(100, 3))])
    ways[50:, 0] = 0
    ways /= np.linalg.norm(ways, axis=1)[:, None]
    steps = ways[:, None, :] * np.linspace(0, 12 * within, 80)[None, :, None]
    around = np.clip(np.array(lab) + steps.reshape(-1, 3), (0, -200, -200), (100, 200, 200))
    table, seen = shades(map(tuple, around.tolist()), DRY), colour(*lab)
    inside = differences(seen, table.lightness, table.a, table.b) <= within
    assert {near.place for near in nearest(seen, table, within)} == set(np.flatnonzero(inside))


@pytest.fixture(scope="module")
def great_table() -> Shades:
    return shades(many(MANY), DRY)


def test_the_20_nearest_of_100000_come_500_times_faster_than_pair_by_pair(
    great_table: Shades,
) -> None:
    """The library is timed on a part, as its pairs all cost the same; usually it is 1000 times."""
    part = many(MANY)[:4000]
    begun = perf_counter()
    pair_by_pair(GLOVE, part)
    library = (perf_counter() - begun) * MANY / len(part)
    ours = []
    for _ in range(15):
        begun = perf_counter()
        found = nearest(GLOVE, great_table, inf, most=20)
        ours.append(perf_counter() - begun)
    assert len(found) == 20
    assert library > TIMES_FASTER * min(ours)


def test_those_20_are_the_first_of_the_whole_ranking(great_table: Shades) -> None:
    assert nearest(GLOVE, great_table, inf, most=20) == nearest(GLOVE, great_table, inf)[:20]
