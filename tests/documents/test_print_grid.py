"""The print grid: what is read on it is what the printer is off."""

import pytest

from app.documents.print_grid import print_grid
from app.documents.proof import printed_pages
from app.documents.stocks import Stock, stock, stocks
from tests.documents.samples import ink_box, text_of


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_every_stock_has_a_grid_that_explains_itself(one: Stock) -> None:
    [said] = text_of(print_grid(one))
    assert "Now corrected by 0 mm across and 0 mm down." in said
    assert "+4" in said


def test_the_grid_moves_with_the_correction_and_says_so() -> None:
    small = stock("small-63x38")
    plain, moved = (print_grid(small, by) for by in ((0, 0), (-2.1, 1.4)))
    assert "Now corrected by −2.1 mm across and +1.4 mm down." in text_of(moved)[0]
    boxes = [ink_box(printed_pages(pdf, 300)[0], 300) for pdf in (plain, moved)]
    assert boxes[1][1] - boxes[0][1] == pytest.approx(1.4, abs=0.1)


def test_a_scale_reads_zero_at_the_edge_of_the_tag() -> None:
    swing = stock("swing-85x55")
    dot = 25.4 / 600
    picture = printed_pages(print_grid(swing), 600)[0].convert("L")
    line = round((swing.cell(1).top + 0.8 * 55 - 0.5) / dot)
    ticks = [
        x * dot for x in range(round(14 / dot), round(27 / dot)) if not picture.getpixel((x, line))
    ]
    assert min(ticks) == pytest.approx(20 - 5, abs=0.15)
    assert max(ticks) == pytest.approx(20 + 5, abs=0.15)
