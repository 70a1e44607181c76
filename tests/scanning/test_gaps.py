"""Codes with gaps: all that fit, the best first, each with what tells it from the others."""

import pytest

from app.calculations.typed_codes import fits
from app.scanning.gaps import Fits, said_with_gaps, what_fits
from app.work.dyeing import name_colourway
from app.work.opening_stock import OldLot, open_lot
from app.work.selling import sell
from tests.lookups.shop import ordered, shelved
from tests.makers import EACH_MG, Studio

READABLE = [code.text for code in fits("26?9K4?")]


def known(studio: Studio, *codes: str, colourway: int = 1) -> None:
    for code in codes:
        studio.do(open_lot, OldLot(code, studio.version, colourway, 4), EACH_MG)


def fitting(studio: Studio, text: str, said: str = "") -> Fits:
    return studio.book.ask(what_fits, text, said)


def codes_of(found: Fits) -> list[str]:
    return [fit.found.code for fit in found.fits]


def test_a_crumpled_tag_lists_at_most_one_lot_for_each_ten_weeks(studio: Studio) -> None:
    assert len(READABLE) == 5
    known(studio, *READABLE)
    found = fitting(studio, "26?9 K4?")
    assert codes_of(found) == READABLE[::-1]
    assert found.sentence == "5 things in the book for “26?9 K4?”."
    assert found.next_step == "Choose the one that is meant; nothing was chosen for you."
    assert "laid flat and in daylight" in found.reply
    assert "count the colours of the ties" in found.reply


def test_it_is_saved_as_stated_however_few_fit(studio: Studio) -> None:
    known(studio, READABLE[1])
    found = fitting(studio, "26?9K4?")
    assert (codes_of(found), found.basis) == ([READABLE[1]], "stated")
    assert found.reply.endswith("so that we can be sure of the lot.")


def test_what_was_said_of_the_yarn_comes_first(studio: Studio) -> None:
    studio.do(name_colourway, "Teal Lamp", "#1B856E")
    known(studio, READABLE[0], READABLE[2])
    known(studio, READABLE[1], colourway=2)
    assert codes_of(fitting(studio, "26?9K4?", "teal 4-ply"))[0] == READABLE[1]
    assert codes_of(fitting(studio, "26?9K4?"))[0] == READABLE[2]


def test_what_was_typed_comes_before_what_it_only_looks_like(studio: Studio) -> None:
    alike = [code.text for code in fits("26?9S4?")]
    known(studio, *alike)
    mended = [fit.mended for fit in fitting(studio, "26?9S4?").fits]
    assert mended == sorted(mended)
    assert set(mended) == {1}
    assert {fit.mended for fit in fitting(studio, f"{alike[0][:5]}??").fits} == {0}


def test_each_fit_has_its_day_what_is_left_and_who_has_some(studio: Studio) -> None:
    (lot, skeins), = shelved(studio, 3)
    (line,) = ordered(studio, "77", 1)
    studio.do(sell, skeins[:1], line)
    code = studio.code(lot) or ""
    (fit,) = fitting(studio, f"{code[:2]}?{code[3:6]}?").fits
    assert fit.lot is not None
    assert (fit.lot.code, fit.lot.colourway, fit.lot.base, fit.lot.left.count) == (
        code, "Sluice Keeper's Glove", "Tarnfield 4-ply", 2)
    assert fit.lot.dyed is not None
    assert fit.buyers == ("Ada Nygård",)


def test_a_skeins_mark_with_a_gap_tells_of_its_lot(studio: Studio) -> None:
    (lot, _), = shelved(studio, 3)
    code = studio.code(lot) or ""
    found = fitting(studio, f"{code}??")
    assert len(found.fits) == 3
    assert {fit.lot.lot for fit in found.fits if fit.lot} == {lot}


def test_nothing_that_fits_says_what_to_do(studio: Studio) -> None:
    found = fitting(studio, "26?9K4?")
    assert found.fits == ()
    assert found.sentence == "No code in the book fits “26?9K4?”."
    assert found.next_step.startswith("Ask for a flat photo")
    assert fitting(studio, "26?????").sentence.startswith("Too much of")


def test_a_gap_heard_on_the_telephone_is_a_gap(studio: Studio) -> None:
    known(studio, *READABLE)
    found = fitting(studio, "two six something nine K four something")
    assert codes_of(found) == READABLE[::-1]
    assert {fit.mended for fit in found.fits} == {0}


@pytest.mark.parametrize(("text", "parts"), [
    ("26?9K4?", ("26?9K4?", "")), ("26?9 K4? teal 4-ply", ("26?9 K4?", "teal 4-ply")),
    ("2619K44-?M glove", ("2619K44-?M", "glove")), ("OLD?7", ("OLD?7", "")),
    ("two six one nine K four something", ("two six one nine K four something", "")),
    ("2619K44", None), ("teal glove", None),
])
def test_what_was_said_beside_a_code_is_not_read_as_a_part_of_it(
    text: str, parts: tuple[str, str] | None
) -> None:
    assert said_with_gaps(text) == parts
