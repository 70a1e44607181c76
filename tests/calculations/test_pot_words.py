"""One short line at the pot."""

import pytest

from app.calculations.pot_words import PotWords, read_pot_amount, read_pot_words
from app.problems import BadInput


@pytest.mark.parametrize(("text", "read"), [
    ("pH 4.3 85 clear", PotWords(430, 850, 0)),
    ("4,3", PotWords(ph_centi=430)),
    ("ph4.3", PotWords(ph_centi=430)),
    ("85", PotWords(decidegrees=850)),
    ("12 °C", PotWords(decidegrees=120)),
    ("85C", PotWords(decidegrees=850)),
    ("cl", PotWords(clearness=0)),
    ("Tinted", PotWords(clearness=1)),
    ("t", PotWords(clearness=1)),
    ("colored", PotWords(clearness=2)),
    ("coloured, 6.5, 30", PotWords(650, 300, 2)),
    ("11.4 L", PotWords(water_ml=11_400)),
    ("11.4 L 40 6.5", PotWords(650, 400, None, 11_400)),
])
def test_numbers_are_told_apart_by_their_size_and_unit(text, read):
    assert read_pot_words(text) == read


@pytest.mark.parametrize("text", ["", "  ", "pH", "pH 15", "murky", "c", "85 90", "4.3 4.4", "300",
                                  "4.3x", "-4", "clear tinted", "4.3 pH 4"])
def test_what_cannot_be_meant_is_refused_and_kept(text):
    with pytest.raises(BadInput):
        read_pot_words(text)


@pytest.mark.parametrize(("text", "stock", "amount"), [
    ("2.5 g", False, (2_500, None)), ("2,5", False, (2_500, None)), ("600 mg", False, (600, None)),
    ("40 mL", False, (None, 40_000)), ("40", True, (None, 40_000)),
    ("0.2 L", True, (None, 200_000)),
])
def test_an_amount_is_grams_or_of_a_stock_millilitres(text, stock, amount):
    assert read_pot_amount(text, stock=stock) == amount


@pytest.mark.parametrize("text", ["", "some", "0", "-2", "2 kg", "0.0001 g"])
def test_an_amount_that_is_none_is_refused(text):
    with pytest.raises(BadInput):
        read_pot_amount(text)
