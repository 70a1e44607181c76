"""Columns of readings by their headings."""

import pytest

from app.exchange.cells import Row, Table
from app.exchange.columns import propose
from app.exchange.shade_headings import SHADES


@pytest.mark.parametrize(("headings", "fields"), [
    (("Lot", "L*", "a*", "b*", "Illuminant", "Observer"),
     ["lot", "l", "a", "b", "lamp", "observer"]),
    (("SAMPLE_NAME", "LAB_L", "LAB_A", "LAB_B"), ["lot", "l", "a", "b"]),
    (("Farbpartie", "L", "a", "b", "Lichtart", "Beobachter"),
     ["lot", "l", "a", "b", "lamp", "observer"]),
])
def test_usual_headings_are_understood(headings: tuple[str, ...], fields: list[str]) -> None:
    places = propose(Table((Row(1, headings),)), {}, None, SHADES).places
    assert sorted(places, key=places.__getitem__) == fields


def test_of_a_samples_name_and_number_the_name_is_the_lot() -> None:
    heads = ("SAMPLE_ID", "SAMPLE_NAME", "LAB_L", "LAB_A", "LAB_B")
    assert propose(Table((Row(1, heads),)), {}, None, SHADES).places["lot"] == 1
