"""Fisher's exact test and the adjustment for many tests against printed values.

Fisher 1935 (1/70 and 16/70 read in copies), the scipy 1.17.1 docstrings (read), and the example of
Benjamini and Hochberg 1995, section 4 (read in the docstring of scipy); the rest was computed.
"""

from fractions import Fraction
from math import comb

import pytest

from app.calculations.evidence import Pooled, Tally
from app.calculations.placements import placed
from app.calculations.plain_tests import adjusted_for_many, apart_by_chance, more_than_by_chance
from tests.published.published_values import rows_of

WAYS = {"greater": more_than_by_chance, "two-sided": apart_by_chance}
EXAMPLE = rows_of("benjamini_hochberg_1995")


@pytest.mark.parametrize("row", rows_of("fisher_exact"), ids=lambda row: row["case"])
def test_the_exact_test_gives_the_published_value(row: dict[str, str]) -> None:
    here, there = (map(int, half.split()) for half in row["table"].split("/"))
    chance = WAYS[row["alternative"]](*here, *there)
    assert float(chance) == pytest.approx(float(row["p"]), rel=1e-13)
    expected = row["expected"]
    if "/" in expected:
        assert chance == Fraction(expected)
    else:
        assert float(chance) == pytest.approx(float(expected), rel=1e-15)


def test_the_fifteen_values_of_1995_are_adjusted_as_printed() -> None:
    adjusted = adjusted_for_many([Fraction(row["p"]) for row in EXAMPLE])
    assert [f"{float(one):.8f}" for one in adjusted] == [row["bh_adjusted"] for row in EXAMPLE]


def test_four_of_them_are_rejected_and_one_less_by_the_stricter_rule() -> None:
    chances = [Fraction(row["p"]) for row in EXAMPLE]
    guilty = [one < Fraction(1, 20) for one in adjusted_for_many(chances)]
    assert guilty == [row["reject_bh"] == "true" for row in EXAMPLE]
    assert sum(guilty) == 4
    strict = [one * len(chances) < Fraction(1, 20) for one in chances]
    assert strict == [row["reject_bonferroni"] == "true" for row in EXAMPLE]


@pytest.mark.parametrize("row", rows_of("hypergeom"), ids=lambda row: f"{row['case']} {row['k']}")
def test_the_ways_to_place_a_pool_are_the_published_ones(row: dict[str, str]) -> None:
    """Where the touched are nearly all faulty and the others nearly none, the marked are seen."""
    pool, marked, drawn, hit = (int(row[name]) for name in ("M", "n", "N", "k"))
    tiny = Fraction(1, 10**30)
    seen = Tally(faulty=hit, good=drawn - hit, unseen=pool - drawn)
    chance = placed(Pooled(seen, marked), 1 - tiny, tiny, Fraction(1, 4))
    which = comb(drawn, hit)  # of those drawn any may be the faulty ones
    assert which * float(chance) == pytest.approx(float(row["pmf"]), rel=1e-9)
