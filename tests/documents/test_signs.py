"""The signs all papers share."""

import pytest

from app.documents.boxes import Box
from app.documents.paper import Paper
from app.documents.proof import printed_pages
from app.documents.signs import bar_foot, hold_sign, lot_over_bar, octagon
from tests.documents.samples import ink_box, text_of


def test_a_lot_stands_over_a_bar_that_says_which_way_is_up() -> None:
    paper = Paper("Test")
    lot_over_bar(paper, (20, 50), "26·15·R6F", "", 18)
    pdf = paper.pdf("")
    foot = ink_box(printed_pages(pdf, 600)[0], 600)[3]
    assert foot == pytest.approx(bar_foot(50, 18), abs=0.1)
    assert text_of(pdf) == ["26·15·R6F"]


def test_the_digits_of_a_lot_are_four_millimetres_high() -> None:
    paper = Paper("Test")
    lot_over_bar(paper, (20, 50), "26·15·R6F", "", 17)
    top = ink_box(printed_pages(paper.pdf(""), 600)[0], 600)[1]
    assert 50 - top >= 4


def test_the_mark_follows_its_lot() -> None:
    paper = Paper("Test")
    lot_over_bar(paper, (20, 50), "26·15·R6F", "7M", 18)
    assert text_of(paper.pdf("")) == ["26·15·R6F 7M"]


def test_hold_has_eight_corners() -> None:
    assert len(set(octagon(Box(0, 0, 10, 5), 1.3))) == 8


@pytest.mark.parametrize("placed_here", [True, False])
def test_hold_is_always_the_word(placed_here: bool) -> None:
    paper = Paper("Test")
    hold_sign(paper, (20, 20), placed_here=placed_here)
    assert text_of(paper.pdf("")) == ["HOLD"]
