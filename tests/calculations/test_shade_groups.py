"""Shade sorting: every pair of a group within the limit, as few groups as can be, never a chain."""

from collections.abc import Iterator, Mapping
from itertools import combinations
from random import Random
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.shade import Colour
from app.calculations.shade_difference import ciede2000
from app.calculations.shade_groups import Group, Sorted, shade_groups
from app.problems import BadInput
from tests.calculations.shades import CLOSE, TEAL, WET, colour

LOTS = st.lists(CLOSE, max_size=7).map(lambda colours: dict(zip("ABCDEFG", colours, strict=False)))


def named(found: Sorted) -> list[str]:
    return ["".join(group.lots) for group in found.groups]


def test_the_eight_teal_lots_give_four_groups() -> None:
    found = shade_groups(TEAL, 1.0)
    assert named(found) == ["PQU", "RS", "TV", "W"]
    assert found.fewest
    assert [f"{group.worst:.2f}" for group in found.groups] == ["0.77", "0.66", "0.38", "0.00"]


def test_lots_are_not_chained_though_each_is_near_the_next() -> None:
    chain = ["U", "P", "Q", "R", "S", "T", "V"]
    steps = [ciede2000(TEAL[a].lab, TEAL[b].lab) for a, b in zip(chain, chain[1:], strict=False)]
    assert max(steps) < 1.0 < ciede2000(TEAL["U"].lab, TEAL["V"].lab)
    assert all(not {"U", "V"} <= set(group.lots) for group in shade_groups(TEAL, 1.0).groups)


def test_the_order_in_which_lots_are_given_is_nothing_to_the_groups() -> None:
    names = list(TEAL)
    for seed in range(20):
        Random(seed).shuffle(names)
        assert shade_groups({name: TEAL[name] for name in names}, 1.0) == shade_groups(TEAL, 1.0)


def test_a_new_lot_may_cut_the_groups_anew() -> None:
    between = {**TEAL, "X": colour(48.8, -36.05, 4.1)}
    assert shade_groups(between, 1.0) != shade_groups(TEAL, 1.0)


def test_no_lots_make_no_group_and_a_wide_limit_makes_one() -> None:
    assert shade_groups({}, 1.0) == Sorted((), True)
    assert shade_groups({"P": TEAL["P"]}, 1.0) == Sorted((Group(("P",), 0.0),), True)
    assert named(shade_groups(TEAL, 5.0)) == ["PQRSTUVW"]
    assert len(shade_groups(TEAL, 0.1).groups) == 8


def test_a_pair_just_on_the_limit_may_stay_together() -> None:
    far = ciede2000(TEAL["P"].lab, TEAL["Q"].lab)
    pair = {name: TEAL[name] for name in "PQ"}
    assert named(shade_groups(pair, far)) == ["PQ"]
    assert named(shade_groups(pair, far - 1e-9)) == ["P", "Q"]


@pytest.mark.parametrize("limit", [0, -1, float("nan")])
def test_a_limit_of_nothing_is_refused(limit: float) -> None:
    with pytest.raises(BadInput, match="limit of a shade group"):
        shade_groups(TEAL, limit)


def test_a_wet_card_among_dry_ones_is_refused() -> None:
    with pytest.raises(BadInput, match="one dry"):
        shade_groups({**TEAL, "X": colour(42, -36, 3, at=WET)}, 1.0)


def test_when_the_search_is_cut_short_the_groups_still_hold_and_say_they_are_not_proven() -> None:
    found = shade_groups(TEAL, 1.0, most_steps=3)
    assert not found.fewest
    assert pairs_hold(found, TEAL, 1.0)


def cloud(lots: int, width: float, seed: int) -> dict[str, Colour]:
    """Lots of one colourway by dyers who are more or less steady."""
    chance = Random(seed)
    return {
        f"{lot:02}": colour(*(middle + chance.gauss(0, width) for middle in (48, -36, 4)))
        for lot in range(lots)
    }


def drifting(lots: int, seed: int) -> dict[str, Colour]:
    """Lots of which each was compared with the last."""
    chance = Random(seed)
    lab, made = [48.0, -36.0, 4.0], {}
    for lot in range(lots):
        lab = [value + chance.gauss(0.05, 0.4) for value in lab]
        made[f"{lot:02}"] = colour(*lab)
    return made


@pytest.mark.parametrize("width", [0.3, 0.6, 1, 1.5, 2.5, 4])
@pytest.mark.parametrize("limit", [0.6, 1.0, 1.5])
def test_forty_lots_of_a_colourway_are_sorted_exactly_and_at_once(
    width: float, limit: float
) -> None:
    for lots in (cloud(40, width, seed=7), drifting(40, seed=int(10 * width))):
        begun = perf_counter()
        found = shade_groups(lots, limit)
        assert perf_counter() - begun < 5  # usually a tenth of a second
        assert found.fewest
        assert pairs_hold(found, lots, limit)


@given(LOTS, st.sampled_from([0.4, 0.7, 1.0, 1.5]))
def test_there_are_never_more_groups_than_trying_every_division_finds(
    lots: dict[str, Colour], limit: float
) -> None:
    found = shade_groups(lots, limit)
    assert found.fewest
    assert pairs_hold(found, lots, limit)
    assert len(found.groups) == min(
        len(division) for division in divisions(list(lots))
        if all(near(pair, lots, limit) for group in division for pair in combinations(group, 2))
    )


def near(pair: tuple[str, str], lots: Mapping[str, Colour], limit: float) -> bool:
    return ciede2000(lots[pair[0]].lab, lots[pair[1]].lab) <= limit


def pairs_hold(found: Sorted, lots: Mapping[str, Colour], limit: float) -> bool:
    """Whether each lot is in one group, no pair is beyond the limit, and the worst is told."""
    each_once = sorted(lot for group in found.groups for lot in group.lots) == sorted(lots)
    worst_told = all(
        group.worst == max(
            (ciede2000(lots[a].lab, lots[b].lab) for a, b in combinations(group.lots, 2)),
            default=0,
        ) <= limit
        for group in found.groups
    )
    return each_once and worst_told


def divisions(names: list[str]) -> Iterator[list[list[str]]]:
    """Every way to divide the names into groups."""
    if not names:
        yield []
        return
    first, *rest = names
    for division in divisions(rest):
        yield [[first], *division]
        for place, group in enumerate(division):
            yield [*division[:place], [first, *group], *division[place + 1 :]]
