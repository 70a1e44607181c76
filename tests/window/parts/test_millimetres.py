"""Lengths on paper as people write them."""

import pytest

from app.problems import BadInput
from app.window.parts.millimetres import (
    pair_words,
    read_mm,
    read_pair,
    read_signed_mm,
    signed_words,
)


@pytest.mark.parametrize(("text", "length"), [
    ("2.1", 2.1), ("+1,4 mm", 1.4), ("-2.1", -2.1), ("−0,5", -0.5), (" 0 ", 0.0)])
def test_a_length_keeps_its_sign(text, length):
    assert read_signed_mm(text) == length


@pytest.mark.parametrize("text", ["", "two", "2.1.4", "--2", "2 in"])
def test_what_is_no_length_is_said(text):
    with pytest.raises(BadInput) as bad:
        read_signed_mm(text)
    assert bad.value.what.endswith(".")


def test_a_measure_is_not_below_zero():
    assert read_mm("38,1") == 38.1
    with pytest.raises(BadInput, match="below zero"):
        read_mm("-4")


@pytest.mark.parametrize("text", ["63.5 × 38.1", "63,5x38,1", "63.5 38.1 mm", "63.5 mm * 38.1 mm"])
def test_two_lengths_are_across_and_down(text):
    assert read_pair(text) == (63.5, 38.1)
    assert pair_words(read_pair(text)) == "63.5 × 38.1"


@pytest.mark.parametrize("text", ["", "63.5", "63.5 × ", "1 × 2 × 3"])
def test_what_is_no_pair_is_said(text):
    with pytest.raises(BadInput):
        read_pair(text)


def test_a_correction_is_read_with_its_sign():
    assert [signed_words(mm) for mm in (-2.1, 1.4, 0.0)] == ["−2.1 mm", "+1.4 mm", "0 mm"]
