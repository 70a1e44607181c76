"""Grey scales against the steps of ISO 105-A02 and A03, and ratings against those of A04 and A05.

Each table says what was read and what is from memory. No worked table of A04 or A05 could be
read; the worked values were reckoned by other hands from the formula.
"""

import pytest

from app.calculations.grey_scales import (
    CHANGE,
    CHANGE_TOLERANCE,
    STAINING,
    STAINING_TOLERANCE,
    Step,
    change,
    change_rating,
    change_step,
    staining,
    staining_rating,
    staining_step,
)
from app.calculations.shade import Colour, Lamp, Observer, Viewing
from tests.published.published_values import rows_of

DRY = Viewing(Lamp.D65, Observer.TEN, wet=False)
BY_SCALE = {
    "ISO 105-A02 change in colour": (CHANGE, CHANGE_TOLERANCE, change_rating),
    "ISO 105-A03 staining": (STAINING, STAINING_TOLERANCE, staining_rating),
}
STEPS, BANDS, WORKED = (
    rows_of(name) for name in ("grey_scale_steps", "iso105a05_bands", "iso105a05_worked")
)


@pytest.mark.parametrize("row", STEPS, ids=lambda row: f"{row['scale']} {row['grade']}")
def test_each_step_has_its_difference_and_tolerance_and_is_rated_as_itself(
    row: dict[str, str],
) -> None:
    differences, tolerances, rating = BY_SCALE[row["scale"]]
    step = Step(row["grade"])
    assert differences[step] == float(row["nominal_dE"])
    assert tolerances[step] == float(row["tolerance"])
    assert f"{rating(differences[step]):.3f}" == row["formula_rating_at_nominal"]


def test_both_scales_are_whole() -> None:
    assert [(row["scale"], row["grade"]) for row in STEPS] == [
        (scale, step) for scale in BY_SCALE for step in Step
    ]


@pytest.mark.parametrize("step", Step)
def test_a_specimen_as_far_off_as_a_step_is_put_on_that_step(step: Step) -> None:
    assert change_step(CHANGE[step]) == step
    assert staining_step(staining_rating(STAINING[step])) == step


@pytest.mark.parametrize("row", BANDS, ids=lambda row: row["GSc"])
def test_each_band_of_change_begins_where_the_table_says(row: dict[str, str]) -> None:
    begins = float(row["dE_F_from"])
    assert change_step(begins) == row["GSc"]
    assert f"{change_rating(begins):.3f}" == row["formula_rating_at_from"]
    if row["dE_F_below"]:
        assert change_step(float(row["dE_F_below"]) - 1e-9) == row["GSc"]


@pytest.mark.parametrize("row", WORKED, ids=lambda row: row["dE_F"])
def test_the_worked_changes_come_out(row: dict[str, str]) -> None:
    standard, specimen = (
        Colour(*(float(row[f"{part}_{which}"]) for part in "Lab"), DRY, 1)
        for which in ("ref", "spec")
    )
    rated = change(standard, specimen)
    assert f"{rated.difference:.4f}" == row["dE_F"]
    assert f"{rated.rating:.3f}" == row["GSc_unrounded"]


def test_the_bands_of_staining_are_those_of_a04() -> None:
    """4.75 to 5.00 is 5, 4.25 to 4.74 is 4-5 and so on; below 1.25 is 1 (read in public code)."""
    edges = (4.75, 4.25, 3.75, 3.25, 2.75, 2.25, 1.75, 1.25)
    for edge, step, below in zip(edges, list(Step), list(Step)[1:], strict=False):
        assert (staining_step(edge), staining_step(edge - 0.01)) == (step, below)


def test_a_stain_that_only_darkens_counts_whole_and_one_of_colour_six_tenths() -> None:
    """ΔE_GS = ΔE - 0.4 √(ΔE² - ΔL²) (read in public code)."""
    white = Colour(90, 0, 0, DRY, 4)
    assert staining(white, Colour(80, 0, 0, DRY, 4)).difference == pytest.approx(10)
    assert staining(white, Colour(90, 10, 0, DRY, 4)).difference == pytest.approx(6)
    assert staining(white, Colour(90, 10, 0, DRY, 4)).step == Step.THREE_FOUR
