"""Two undyed cones seen through the dye. The dyed figures are an invented studio's, with spectra.

Reckoned in three bands the estimate comes within a tenth of them.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.ecru_through_dye import seen_through_dye
from app.calculations.shade import Colour
from app.calculations.shade_difference import difference
from app.problems import BadInput
from tests.calculations.shades import COLOURS, WET, colour

USUAL, YELLOWISH = colour(89.6, -2.0, 10.8), colour(87.1, -1.6, 13.2)
PALE_PINK, NAVY = colour(70.1, 32.4, 10.3), colour(25.1, 8.0, -20.5)


def test_cones_2_3_apart_undyed_are_1_25_apart_in_pale_pink_and_0_26_in_navy() -> None:
    assert f"{difference(USUAL, YELLOWISH).ciede2000:.2f}" == "2.34"
    assert seen_through_dye(USUAL, YELLOWISH, PALE_PINK) == pytest.approx(1.25, abs=0.1)
    assert seen_through_dye(USUAL, YELLOWISH, NAVY) == pytest.approx(0.26, abs=0.1)


def test_without_dye_all_of_it_is_seen() -> None:
    undyed = difference(USUAL, YELLOWISH).ciede2000
    assert seen_through_dye(USUAL, YELLOWISH, USUAL) == pytest.approx(undyed)


@given(COLOURS, st.sampled_from([USUAL, YELLOWISH]))
def test_like_cones_stay_alike_in_every_shade(dyed: Colour, cone: Colour) -> None:
    assert seen_through_dye(cone, cone, dyed) == 0


@given(COLOURS)
def test_any_shade_gives_a_finite_estimate(dyed: Colour) -> None:
    assert 0 <= seen_through_dye(USUAL, YELLOWISH, dyed) < 100


def test_a_wet_reading_is_refused() -> None:
    with pytest.raises(BadInput, match="one dry"):
        seen_through_dye(USUAL, YELLOWISH, colour(40, 0, 0, at=WET))
