"""A distance is read as it is written down, and what is none is said to be none."""

import pytest

from app.problems import BadInput
from app.window.faults.distance import read_mm


@pytest.mark.parametrize(("text", "mm"), [
    ("150", 1500), (" 12,5 ", 125), ("40 cm", 400), ("1.5 m", 1500), ("1.5M.", 1500),
    ("35mm", 35)])
def test_a_number_alone_is_centimetres(text, mm):
    assert read_mm(text) == mm


@pytest.mark.parametrize(("text", "words"), [
    ("", "Write it in centimetres"), ("0.15 kg", "“0.15 kg” is no distance."),
    ("0", "The distance is nothing."), ("0.25 mm", "finer than a millimetre"), ("-4", "“-4”")])
def test_what_is_no_distance_is_said_to_be_none(text, words):
    with pytest.raises(BadInput, match=words):
        read_mm(text)
