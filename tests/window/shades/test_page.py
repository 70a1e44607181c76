from dataclasses import replace

import pytest

from app.window.shades.page import ShadePage
from tests.calculations.shades import TEAL, colour
from tests.window.overlaps import overlaps
from tests.window.shades.maps import CODES, a_map, crowded

WEAK, WEAK_TOO, GOOD = colour(50, -34.9, 5.9), colour(49.7, -34.9, 5.9), colour(48.2, -36.6, 3.3)


@pytest.fixture
def page(qtbot):
    page = ShadePage()
    qtbot.addWidget(page)
    page.resize(1060, 2000)
    page.show()
    return page


def test_eight_teal_lots_are_four_groups_in_words(page):
    page.show_map(a_map())
    assert page.said.text() == ("D65, 2°, dry. 8 lots in 4 groups of which every two are within "
                                "1.0; fewer would not do.")
    assert page.groups.text().count("go together") == 3
    assert page.limits[1.0].isChecked()
    assert not page.limits[0.8].isChecked()


def test_a_lot_that_is_meant_is_held_against_the_one_in_hand(page):
    page.show_map(a_map([GOOD, WEAK, WEAK_TOO], standard=GOOD, hand=1))
    assert page.pair_words.text().startswith(f"{CODES[1]} and the standard: 2.6 ± 0.5 apart")
    assert not page.open_key.isEnabled()
    page.map.chosen.emit(2)
    assert page.pair_words.text() == (f"{CODES[1]} and {CODES[2]}: 0.3 ± 0.5 apart: looks the "
                                      "same.")
    assert page.fine.text().startswith("CIEDE2000 0.30, ")
    assert [one.name for one in page.pair.shown] == ["the standard", CODES[1], CODES[2]]
    wanted = []
    page.wanted.connect(lambda lot, code: wanted.append((lot, code)))
    page.open_key.click()
    assert wanted == [(3, CODES[2].replace("·", ""))]
    page.show_map(a_map([GOOD, WEAK, WEAK_TOO], 1.5, standard=GOOD, hand=1))
    assert page.meant == 2


def test_without_a_standard_or_a_reading_of_the_lot_in_hand_it_says_so(page):
    page.show_map(a_map(standard=None))
    assert page.pair_words.text().startswith("The standard was not read in this light")
    page.show_map(replace(a_map(), lot=99))
    assert page.pair_words.text() == "The lot in hand was not read in this light."


def test_fewer_than_two_lots_are_no_picture_and_it_says_what_to_do(page):
    page.show_map(a_map([TEAL["P"]]))
    assert page.said.text().startswith("Only 1 lot of it was read with an instrument")
    assert not page.pictures.isVisible()
    assert not page.hold_against.isVisible()
    page.show_map(a_map([]))
    assert page.said.text().startswith("No lot of it was read")


def test_larger_text_is_worn_by_what_is_shown_already(qtbot, page, dressed):
    page.show_map(a_map())
    before = page.pair.minimumSizeHint().height(), page.map.sizeHint().height()
    dressed(2.0)
    qtbot.waitUntil(lambda: page.pair.minimumSizeHint().height() > before[0])
    assert page.map.sizeHint().height() > before[1]
    assert len(page.lots.rows) == 8
    assert overlaps(page) == []


@pytest.mark.parametrize(("text", "width"), [(1.0, 1060), (2.0, 930)])
def test_nothing_lies_on_anything_else_at_both_sizes(qtbot, page, dressed, text, width):
    dressed(text)
    page.show_map(crowded())
    page.mean(3)
    for _ in range(3):
        page.resize(width, page.minimumSizeHint().height())
        qtbot.wait(20)
    assert overlaps(page) == []
