"""Causes planted in five hundred invented studios: how often the ranking finds them.

Rates, sales and looks are drawn anew for each studio and are not those of the settings. A cause is
found by the skeins alone; nobody looks at the rest of a cone or a jar, which would tell more.
"""

from functools import cache
from random import Random

import pytest

from tests.whole.planted_causes import Studio
from tests.whole.suspect_trials import (
    Naming,
    Score,
    at_random,
    by_ranking,
    by_rates,
    by_test,
    by_what_it_decides,
    score,
    studios_with,
)

COUNTS = {1: 250, 2: 150, 3: 100}

pytestmark = pytest.mark.long


@cache
def studios(faults: int) -> list[Studio]:
    return studios_with(faults, COUNTS[faults], 1_000_000 * faults)


@cache
def kept_apart() -> list[Studio]:
    """Every case with a single cause: studios with one, and each kind of fault of the others."""
    return studios(1) + [one for n in (2, 3) for all_of_it in studios(n)
                         for one in all_of_it.kept_apart()]


@cache
def at_once(naming: Naming) -> Score:
    return score(kept_apart(), naming)


@cache
def with_looks() -> Score:
    return score(kept_apart()[::4], by_ranking, by_what_it_decides)


def test_likely_is_right_nine_times_in_ten_on_what_came_to_light_by_itself() -> None:
    ours = at_once(by_ranking)
    assert ours.called >= ours.studios / 4
    assert ours.right_when_called >= 0.9


def test_likely_is_right_nine_times_in_ten_after_looks_and_more_is_decided() -> None:
    before = score(kept_apart()[::4], by_ranking)
    assert with_looks().right_when_called >= 0.9
    assert with_looks().called >= 2 * before.called
    assert with_looks().first >= 1.1 * before.first


def test_the_ranking_names_the_cause_more_often_than_plain_rates_and_the_exact_test() -> None:
    ours, rates, test = map(at_once, (by_ranking, by_rates, by_test))
    assert ours.first >= 1.1 * test.first
    assert ours.first >= 1.5 * rates.first
    assert ours.in_three > test.in_three > rates.in_three
    assert ours.in_three >= 0.8 * ours.studios


def test_the_next_look_decides_sooner_than_looks_at_any_skeins() -> None:
    anywhere = score(kept_apart()[::4], by_ranking, at_random(Random(5)))
    assert anywhere.right_when_called >= 0.9
    assert sum(with_looks().looks) < sum(anywhere.looks)
    assert with_looks().called >= anywhere.called


def test_faults_of_several_causes_must_be_kept_apart_for_likely_to_be_right() -> None:
    """Thrown together they break the assumption of a single cause, and likely is worth less."""
    lumped = score(studios(2), by_ranking) + score(studios(3), by_ranking)
    apart = [one for n in (2, 3) for studio in studios(n) for one in studio.kept_apart()]
    assert score(apart, by_ranking).right_when_called > lumped.right_when_called
