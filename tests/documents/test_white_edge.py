"""The white about a code on its tag, measured against the print."""

from dataclasses import replace

import pytest

from app.documents.boxes import Box
from app.documents.proof import printed_pages
from app.documents.stocks import Stock, stock, stocks
from app.documents.tag_choices import Choices
from app.documents.tags import tag_sheets
from app.documents.white_edge import white_edge_mm, white_edge_needed_mm
from tests.documents.samples import ink_box, tag_words, tags

WORDS = tag_words("Whey Blue", knit="", differ="")


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_the_edge_is_what_is_seen_on_the_print(one: Stock) -> None:
    """The code is what stands furthest right and down on all tags but a band."""
    (tag,) = tags(1, WORDS)
    told = white_edge_mm(one, tag)
    assert told >= white_edge_needed_mm(one) >= 2
    if one.layout == "band":
        return
    cell, dpi = one.cell(1), 600
    page = printed_pages(tag_sheets([tag], replace(one, dpi=dpi)).pdf, dpi)[0]
    corner = Box(cell.right - 14, cell.bottom - 14, cell.right - 0.5, cell.bottom - 0.5)
    *_, right, below = ink_box(page.crop(tuple(round(mm / 25.4 * dpi) for mm in corner)), dpi)
    seen = min(cell.right - corner.left - right, cell.bottom - corner.top - below)
    assert told == pytest.approx(seen, abs=0.15)


def test_a_printer_that_is_off_takes_from_the_edge_it_moves_to() -> None:
    small, (tag,) = stock("small-63x38"), tags(1, WORDS)
    straight = white_edge_mm(small, tag)
    assert white_edge_mm(small, tag, (2.1, 1.4)) == pytest.approx(straight - 2.1, abs=0.06)
    assert white_edge_mm(small, tag, (9, 0)) < 0


def test_larger_modules_need_a_wider_edge() -> None:
    swing = stock("swing-85x55")
    wide = replace(swing, choices=Choices(module_mm=0.6))
    assert white_edge_needed_mm(wide) > white_edge_needed_mm(swing)
