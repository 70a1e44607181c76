"""Yarn counts: exact conversion, and the notations on delivery notes."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.yarn_count import (
    MOST_PLIES,
    System,
    YarnCount,
    count_of,
    read_count,
    tex_of,
    tex_of_put_up,
)
from app.problems import BadInput

systems = st.sampled_from(System)
counts = st.fractions("1/100", 10_000, max_denominator=100)


@given(counts, systems, systems)
def test_a_count_comes_back_exactly_from_any_other_system(
    count: Fraction, one: System, other: System
) -> None:
    there = count_of(tex_of(count, one), other)
    assert count_of(tex_of(there, other), one) == count


@given(counts)
def test_tex_times_resultant_nm_is_1000(tex: Fraction) -> None:
    assert tex * count_of(tex, System.NM) == 1000


@pytest.mark.parametrize(
    ("written", "tex", "plies", "printed"),
    [
        ("R 250 tex/4", 250, 4, "R 250 tex/4"),
        ("250/4", 250, 4, "R 250 tex/4"),
        ("r250tex / 4", 250, 4, "R 250 tex/4"),
        ("R 250/4 tex", 250, 4, "R 250 tex/4"),
        ("62,5 tex", Fraction(125, 2), 1, "62.5 tex"),
        ("Nm 16/4", 250, 4, "R 250 tex/4"),
        ("16/4 Nm", 250, 4, "R 250 tex/4"),
        ("Nm 28/2", Fraction(500, 7), 2, "R 71.43 tex/2"),
        ("Nm 2/28", Fraction(500, 7), 2, "R 71.43 tex/2"),
        ("Nm 4", 250, 1, "250 tex"),
    ],
)
def test_a_count_is_read_as_spinners_write_it(
    written: str, tex: Fraction, plies: int, printed: str
) -> None:
    assert read_count(written) == YarnCount(Fraction(tex), plies)
    assert str(read_count(written)) == printed


def test_worsted_counts_put_the_plies_first_but_a_great_number_is_never_plies() -> None:
    assert read_count("NeW 2/24") == read_count("NeW 24/2")
    assert read_count("NeW 2/8").plies == 2
    assert read_count("NeC 8/2").plies == 2
    assert read_count("NeW 12").plies == 1


@pytest.mark.parametrize(
    "written", ["", "4-ply", "Nm", "0/4", "250/40", "250/0", "R 16 Nm", "Nm 16 tex/4", "Nm 1.5/2.5"]
)
def test_what_is_no_count_is_refused_with_an_example(written: str) -> None:
    with pytest.raises(BadInput) as refusal:
        read_count(written)
    assert "R 250 tex/4" in refusal.value.next_step


@given(st.decimals("1", "3000", places=2), st.integers(1, MOST_PLIES))
def test_a_printed_count_reads_back(tex: Decimal, plies: int) -> None:
    count = YarnCount(Fraction(tex), plies)
    assert read_count(str(count)) == count


def test_a_single_says_no_plies() -> None:
    assert str(YarnCount(Fraction(250))) == "250 tex"


def test_a_put_up_tells_its_tex() -> None:
    assert tex_of_put_up(Decimal(100), Decimal(400)) == 250
