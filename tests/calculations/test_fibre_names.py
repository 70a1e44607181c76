"""Names of fibres: one meaning a word, a name in every language, and none that cannot be set."""

from collections import Counter

import pytest

from app.calculations.fibre_names import fibre_written, fibres, not_names
from app.calculations.markets import MARKETS, market
from app.documents.typesetting import strangers


def test_no_word_means_two_fibres() -> None:
    spelled = Counter(word for fibre in fibres() for word in fibre.spellings)
    assert [word for word, count in spelled.items() if count > 1] == []
    assert [one.word for one in not_names() if one.word in spelled] == []
    assert len({one.word for one in not_names()}) == len(not_names())


def test_every_fibre_has_a_name_in_every_language_but_those_a_market_does_not_know() -> None:
    lacking = {(fibre.key, at) for at in MARKETS for language in market(at).languages
               for fibre in fibres() if fibre.called(market(at), language) is None}
    assert lacking == {("recycled wool", "EU"), ("recycled wool", "UK"),
                       ("recycled wool", "Canada"), ("virgin wool", "Canada")}


def test_every_name_can_be_printed() -> None:
    names = {name for fibre in fibres() for name in fibre.names.values()}
    assert {name for name in names if strangers(name)} == set()


@pytest.mark.parametrize(("words", "key"), [
    ("wool", "wool"), ("Wolle", "wool"), ("  NYLON ", "polyamide"), ("flax", "linen"),
    ("laine", "wool"), ("rayon", "viscose"), ("angora goat hair", "mohair")])
def test_a_fibre_is_known_in_any_language_here(words: str, key: str) -> None:
    fibre = fibre_written(words).fibre
    assert fibre is not None
    assert fibre.key == key


def test_a_function_stands_in_brackets() -> None:
    written = fibre_written("elastane (for stretch)")
    assert (written.words, written.purpose) == ("elastane", "stretch")
    assert fibre_written("elastane (shiny)").fibre is None


def test_other_fibres_are_no_fibre() -> None:
    assert fibre_written("Other fibers").other
    assert fibre_written("other wool").fibre is None


@pytest.mark.parametrize(("words", "write"), [
    ("Merino", "wool"), ("PA", "polyamide"), ("sari silk", "the fibres it is really made of")])
def test_a_word_that_is_no_name_says_what_to_write(words: str, write: str) -> None:
    wrong = fibre_written(words).wrong
    assert wrong is not None
    assert wrong.write.startswith(write)
