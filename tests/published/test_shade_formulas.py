"""CIEDE2000 and CMC against published pairs, and against a second library by other hands.

Sharma, Wu, Dalal 2005, Table 1 (read in three libraries' tests, which agree; the paper was not
read). The CMC pairs are libraries' own; those of ISO 105-J03 Annex B could not be read.
"""

import warnings
from collections.abc import Callable
from random import Random
from types import ModuleType

import numpy as np
import pytest

from app.calculations.nearest_shades import differences
from app.calculations.shade import Colour, Lamp, Observer, Viewing
from app.calculations.shade_difference import Lab, ciede2000, cmc
from tests.published.published_values import rows_of

DRY = Viewing(Lamp.D65, Observer.TWO, wet=False)
PAIRS, TEXTILE, CMC = rows_of("ciede2000_pairs"), rows_of("ciede2000_textile"), rows_of("cmc_pairs")
EITHER = "14"  # its hues are 180° apart to the last bit, and which way round is the shorter differs
MANY = 10_000


def by_numpy(one: Lab, other: Lab) -> float:
    columns = (np.array([value]) for value in other)
    return float(differences(Colour(*one, DRY, 1), *columns)[0])


def lab_of(row: dict[str, str], *names: str) -> Lab:
    lightness, a, b = (float(row[name]) for name in names)
    return lightness, a, b


@pytest.mark.parametrize("formula", [ciede2000, by_numpy])
@pytest.mark.parametrize("row", PAIRS, ids=lambda row: row["pair"])
def test_each_pair_of_the_table_comes_out_to_its_4_decimals_both_ways_round(
    row: dict[str, str], formula: Callable[[Lab, Lab], float]
) -> None:
    one, other = lab_of(row, "L1", "a1", "b1"), lab_of(row, "L2", "a2", "b2")
    printed = {"4.8045", "4.7461"} if row["pair"] == EITHER else {row["dE00"]}
    assert f"{formula(one, other):.4f}" in printed
    assert f"{formula(other, one):.4f}" in printed


def test_all_34_pairs_are_there_and_name_the_four_of_the_trade() -> None:
    assert [row["pair"] for row in PAIRS] == [str(pair) for pair in range(1, 35)]
    assert {"2.0425", "1.2644", "27.1492", "0.9082"} <= {row["dE00"] for row in PAIRS}


@pytest.mark.parametrize("row", TEXTILE, ids=lambda row: row["dE00_2_1_1"])
def test_twice_the_weight_of_lightness_comes_out_as_a_second_library_prints_it(
    row: dict[str, str],
) -> None:
    far = ciede2000(lab_of(row, "L1", "a1", "b1"), lab_of(row, "L2", "a2", "b2"), k_l=2)
    assert f"{far:.8f}" == row["dE00_2_1_1"]


@pytest.mark.parametrize("row", CMC, ids=lambda row: f"{row['dE_cmc']} at {row['l']}:{row['c']}")
def test_cmc_comes_out_to_the_digits_printed(row: dict[str, str]) -> None:
    """One source cuts its last digit off where the others round it."""
    far = cmc(
        lab_of(row, "L_std", "a_std", "b_std"), lab_of(row, "L_smp", "a_smp", "b_smp"),
        float(row["l"]), float(row["c"]),
    )
    decimals = len(row["dE_cmc"].partition(".")[2])
    assert abs(far - float(row["dE_cmc"])) < 10.0**-decimals
    assert f"{far:.6f}" == row["colour"]


def test_cmc_is_not_symmetric_and_the_kept_colour_comes_first() -> None:
    """The same pair both ways round, reckoned with two libraries."""
    assert f"{cmc((50, 30, 40), (50, 0, 0)):.4f}" == "19.4894"
    assert f"{cmc((50, 0, 0), (50, 30, 40)):.4f}" == "78.3699"


@pytest.fixture(scope="module")
def second_library() -> ModuleType:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it says that it can do without scipy and drawing
        import colour
    return colour


@pytest.fixture(scope="module")
def pairs() -> np.ndarray:
    """Colours of all kinds, half of them with a near neighbour as lots are."""
    chance = Random(2000)
    table = []
    for number in range(MANY):
        one = (chance.uniform(0, 100), chance.uniform(-90, 90), chance.uniform(-90, 90))
        near = 3.0 if number % 2 else 90.0
        other = [value + chance.uniform(-near, near) for value in one]
        table.append((one, (min(max(other[0], 0), 100), *other[1:])))
    return np.array(table)


def test_ciede2000_agrees_with_a_second_library_on_10000_pairs(
    second_library: ModuleType, pairs: np.ndarray
) -> None:
    theirs = second_library.delta_E(pairs[:, 0], pairs[:, 1], method="CIE 2000")
    ours = [ciede2000(one, other) for one, other in pairs.tolist()]
    assert len(ours) == MANY
    assert np.abs(ours - theirs).max() < 1e-10


def test_cmc_agrees_with_a_second_library_on_10000_pairs(
    second_library: ModuleType, pairs: np.ndarray
) -> None:
    theirs = second_library.delta_E(pairs[:, 0], pairs[:, 1], method="CMC", l=2, c=1)
    ours = [cmc(one, other) for one, other in pairs.tolist()]
    assert np.abs(ours - theirs).max() < 1e-10
