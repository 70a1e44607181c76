"""The headings of a notebook of recipes, as dyers write them."""

import pytest

from app.exchange.cells import Row, Table
from app.exchange.columns import propose
from app.exchange.headings import bare
from app.exchange.recipe_headings import NOTEBOOK


@pytest.mark.parametrize("headings", [
    "Colourway;Dye;Amount %", "Colour;Component;Percent", "Farbton;Farbstoff;Menge",
    "Coloris;Colorant;Quantité", "Kleur;Kleurstof;Hoeveelheid", "SHADE;DYE;% OWF",
])
def test_a_colourway_a_dye_and_how_much_are_known_in_many_words(headings: str) -> None:
    match = propose(Table((Row(1, tuple(headings.split(";"))),)), {}, kind=NOTEBOOK)
    assert match.places == {"colourway": 0, "substance": 1, "amount": 2}
    assert match.lacks(()) == ()


def test_every_field_has_words_for_people_and_headings_as_they_are_compared() -> None:
    assert NOTEBOOK.fields.keys() == NOTEBOOK.wordings.keys()
    every = [words for wordings in NOTEBOOK.wordings.values() for words in wordings]
    assert len(set(every)) == len(every)
    assert [words for words in every if bare(words) != words] == []
    assert {*NOTEBOOK.needed, *NOTEBOOK.settled, *NOTEBOOK.for_all} <= NOTEBOOK.fields.keys()
