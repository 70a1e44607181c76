"""What columns are called."""

import pytest

from app.exchange.headings import FIELDS, WORDINGS, bare, unit_of


@pytest.mark.parametrize(("heading", "words"), [
    ("Gross weight (kg)", "gross weight"), ("Poids brut [g]", "poids brut"), ("GROSS_KG", "gross"),
    ("Hülse", "hulse"), ("Spinner's batch no.", "spinners batch no"), ("g/100m", "100 m"),
    ("Lieferschein-Nr.", "lieferschein nr"), ("Weight in grams", "weight"), ("", ""),
])
def test_a_heading_loses_case_accents_stops_and_units(heading: str, words: str) -> None:
    assert bare(heading) == words


@pytest.mark.parametrize(("heading", "unit"), [
    ("Gross (g)", "g"), ("Brutto kg", "kg"), ("Gewicht in Gramm", "gramm"), ("Gross", ""),
    ("g or kg", ""), ("Weight lb", ""),
])
def test_a_heading_names_one_unit_or_none(heading: str, unit: str) -> None:
    assert unit_of(heading) == unit


def test_every_wording_is_written_as_it_is_compared() -> None:
    for field, wordings in WORDINGS.items():
        assert field in FIELDS
        assert [bare(words) for words in wordings] == list(wordings)


def test_no_wording_stands_for_two_fields() -> None:
    every = [words for wordings in WORDINGS.values() for words in wordings]
    assert len(every) == len(set(every))
