"""Chances in a mixed pool against printed hypergeometric values.

Fisher 1935 (1/70 and 16/70 read in copies) and the scipy 1.17.1 docstrings (read); the rest was
computed with exact binomials.
"""

from decimal import Decimal
from fractions import Fraction

import pytest

from app.calculations.chances import at_least_one, exactly
from tests.published.published_values import rows_of

ROWS = rows_of("hypergeom")


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['case']} {row['k']}")
def test_the_chance_of_exactly_so_many_is_the_published_one(row: dict[str, str]) -> None:
    pool, marked, drawn, hit = (int(row[name]) for name in ("M", "n", "N", "k"))
    chance = exactly(hit, pool, marked, drawn)
    assert float(chance) == pytest.approx(float(row["pmf"]), rel=1e-9)
    if "/" in row["printed"]:
        assert chance == Fraction(row["printed"])
    else:
        printed = Decimal(row["printed"])
        assert round(float(chance), -int(printed.as_tuple().exponent)) == float(printed)


@pytest.mark.parametrize("case", sorted({row["case"] for row in ROWS}))
def test_at_least_one_is_all_that_is_left_of_none(case: str) -> None:
    rows = [row for row in ROWS if row["case"] == case]
    pool, marked, drawn = (int(rows[0][name]) for name in ("M", "n", "N"))
    some = sum(float(row["pmf"]) for row in rows if row["k"] != "0")
    assert float(at_least_one(pool, marked, drawn)) == pytest.approx(some, rel=1e-9)
