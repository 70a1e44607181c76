from contextlib import suppress
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.problems import BadInput
from app.window.parts.amounts import read_count, read_grams


@pytest.mark.parametrize(
    ("written", "grams"),
    [
        ("1462", "1462"),
        ("1 462", "1462"),
        ("1\u202f462,5 g", "1462.5"),
        ("1.462,5", "1462.5"),
        ("1,462.5", "1462.5"),
        ("1'462", "1462"),
        ("1.462.000", "1462000"),
        ("1462 g", "1462"),
        ("1462g.", "1462"),
        ("1.462 kg", "1462"),
        ("2.408", "2.408"),
        ("2,4", "2.4"),
        ("0,462", "0.462"),
        (" 0 ", "0"),
        ("602 mg", "0.602"),
    ],
)
def test_weights_are_read_as_they_are_written(written, grams):
    assert read_grams(written) == Decimal(grams)


@pytest.mark.parametrize(
    ("written", "sentence"),
    [
        ("", "Nothing is written here yet."),
        ("-3", "below zero"),
        ("ten", "is not a number"),
        ("1.462.5", "is not a number"),
        ("12 5", "is not a number"),
        ("1,462", "can be read as 1462 or as 1.462"),
        ("2.4081", "finer than a milligram"),
        ("3 pounds", "no weight this program knows"),
        ("١٢", "is not a number"),
    ],
)
def test_what_cannot_be_read_says_why(written, sentence):
    with pytest.raises(BadInput, match=sentence):
        read_grams(written)


@given(st.integers(0, 10**9))
def test_every_weight_in_milligrams_comes_back(mg):
    grams = Decimal(mg) / 1000
    assert read_grams(str(grams)) == grams
    assert read_grams(f"{grams:f} g") == grams


@given(st.text(max_size=12))
def test_nothing_typed_is_a_fault_of_the_program(text):
    for read in (read_grams, read_count):
        with suppress(BadInput):
            assert read(text) >= 0


def test_counts_are_whole():
    assert read_count(" 1 200 ") == 1200
    for wrong in ("1.5", "12 g", ""):
        with pytest.raises(BadInput):
            read_count(wrong)
