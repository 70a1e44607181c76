"""Ratings by instrument: what holds for every pair; the steps are checked as published."""

from math import cos, radians, sin

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from app.calculations.grey_scales import (
    Step,
    change,
    change_rating,
    change_step,
    staining,
    staining_rating,
    staining_step,
)
from app.calculations.shade import Colour
from app.problems import BadInput
from tests.calculations.shades import COLOURS, SHOP, WET, colour

STEPS = list(Step)


@given(COLOURS)
def test_what_has_not_changed_is_a_five(seen: Colour) -> None:
    for rated in (change(seen, seen), staining(seen, seen)):
        assert (rated.difference, rated.rating, rated.step) == (0, 5, Step.FIVE)


@given(st.floats(0, 60), st.floats(0, 60))
def test_a_greater_difference_is_never_rated_better(one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert 1 <= change_rating(more) <= change_rating(less) + 0.001 <= 5.001  # the halves meet
    assert 1 <= staining_rating(more) <= staining_rating(less) + 0.001 <= 5.001
    assert STEPS.index(change_step(less)) <= STEPS.index(change_step(more))
    assert STEPS.index(staining_step(staining_rating(less))) <= STEPS.index(
        staining_step(staining_rating(more))
    )


@given(st.floats(1, 99), st.floats(1, 90), st.floats(0, 359), st.floats(0.1, 10))
def test_the_hue_is_met_the_shorter_way_round(
    lightness: float, chroma: float, hue: float, turned: float
) -> None:
    """A small turn is a small change, even over the seam where the angles begin anew."""
    one, other = (
        colour(lightness, chroma * cos(radians(angle)), chroma * sin(radians(angle)))
        for angle in (hue, hue + turned)
    )
    assume(one.lab != other.lab)
    assert change(one, other).difference <= 2 * chroma * sin(radians(turned / 2)) + 1e-9


@pytest.mark.parametrize("odd", [colour(50, 0, 0, at=WET), colour(50, 0, 0, at=SHOP)])
def test_only_what_was_looked_at_alike_is_rated(odd: Colour) -> None:
    for rate in (change, staining):
        with pytest.raises(BadInput):
            rate(colour(50, 0, 0), odd)
