"""A layout as a studio chose it: its text, its lot and its code, measured on the print."""

from dataclasses import replace

import pytest

from app.documents.own_stocks import LAYOUT_NAMES
from app.documents.proof import printed_pages
from app.documents.square_codes import whole_dots
from app.documents.stocks import Stock, stock, stocks
from app.documents.tag_choices import Choices
from app.documents.tag_forms import CARD, SWING, check_sizes, lot_points
from app.documents.tags import tag_sheets
from app.documents.typesetting import Type
from app.problems import Refused
from tests.documents.samples import ink_box, tag_words, tags, text_of

BRIEF = tag_words("Whey Blue", knit="", differ="", origin="")


def printed(one: Stock, **choices: object) -> bytes:
    return tag_sheets(tags(1, BRIEF), replace(one, dpi=300, choices=Choices(**choices))).pdf


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_larger_text_is_printed_larger_on_every_stock(one: Stock) -> None:
    """The square of the colourway's first letter: W is as high as a capital."""
    high = []
    for text in (1.0, 1.1):
        page = printed_pages(printed(one, text=text), 300)[0]
        cell = one.cell(1)
        x = {"swing": 5, "small": 4.2, "card": 6.2, "roll": 3.2, "band": 72}[one.layout]
        foot = {"swing": 21.2, "small": 8.1, "card": 10.5, "roll": 7.8, "band": 22.9}[one.layout]
        box = (cell.left + x - 0.3, cell.top + foot - 6.1, cell.left + x + 2, cell.top + foot)
        _, top, _, below = ink_box(page.crop(tuple(round(mm / 25.4 * 300) for mm in box)), 300)
        high.append(below - top)
    assert high[1] / high[0] == pytest.approx(1.1, abs=0.06)


def test_a_higher_lot_is_as_high_as_it_was_chosen() -> None:
    assert Type(lot_points(Choices(lot_mm=5), 17)).ascent_mm == pytest.approx(5, abs=0.01)
    assert lot_points(Choices(), 17) == 17
    assert CARD.chosen(Choices(lot_mm=5)).label_above_lot > CARD.label_above_lot


def test_a_larger_module_makes_a_larger_code_that_is_read_back() -> None:
    """`tag_sheets` proves it: a code that could not be read would be refused."""
    swing = stock("swing-85x55")
    assert "26·15·R6F" in text_of(printed(swing, module_mm=0.6))[0]
    paper = replace(swing, choices=Choices(module_mm=0.6))
    assert whole_dots(paper.choices.module_mm, 300) > whole_dots(0.5, 300)


def test_a_code_too_large_for_its_tag_is_refused_and_never_laid_over_words() -> None:
    with pytest.raises(Refused, match="not all words fit"):
        printed(stock("small-63x38"), module_mm=1.2)


@pytest.mark.parametrize("layout", LAYOUT_NAMES)
def test_every_layout_refuses_text_under_the_least(layout: str) -> None:
    check_sizes(layout, Choices(text=1.0))
    with pytest.raises(Refused, match="The least is 6 pt|smallest words"):
        check_sizes(layout, Choices(text=0.5))


def test_without_a_choice_a_form_is_what_it_was() -> None:
    assert SWING.chosen(Choices()) is SWING
