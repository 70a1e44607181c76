"""Stocks: geometry that fits its page, cells counted row by row, a printer's correction."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.documents.stocks import Stock, stock, stocks
from app.problems import NotFound, Refused

SWING, SMALL = stock("swing-85x55"), stock("small-63x38")


def test_five_kinds_of_tag_are_described() -> None:
    assert {one.layout for one in stocks()} == {"swing", "small", "card", "roll", "band"}


def test_no_stock_bears_a_makers_number() -> None:
    assert all(not any(len(word) > 3 for word in digits(one.title)) for one in stocks())


def digits(title: str) -> list[str]:
    return [word for word in title.replace(",", " ").split() if word.isdigit()]


def test_cells_run_from_left_to_right_then_down() -> None:
    assert SWING.cells == 10
    assert SWING.cell(1)[:2] == (20, 11)
    assert SWING.cell(2)[:2] == (105, 11)
    assert SWING.cell(3)[:2] == (20, 66)
    assert SMALL.cell(21).right == pytest.approx(7.25 + 2 * 66 + 63.5)


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_every_cell_lies_on_the_page_and_meets_no_other(one: Stock) -> None:
    cells = [one.cell(number) for number in range(1, one.cells + 1)]
    assert all(cell.right <= one.page[0] and cell.bottom <= one.page[1] for cell in cells)
    for a in cells:
        for b in cells:
            apart = a.right <= b.left or b.right <= a.left or a.bottom <= b.top or b.bottom <= a.top
            assert a is b or apart


@given(st.floats(-5, 5), st.floats(-5, 5), st.integers(1, 21))
def test_a_correction_moves_every_cell_by_the_same_two_numbers(
    across: float, down: float, number: int
) -> None:
    plain, moved = SMALL.cell(number), SMALL.cell(number, (across, down))
    assert moved.left - plain.left == pytest.approx(across)
    assert moved.bottom - plain.bottom == pytest.approx(down)


def test_a_correction_beyond_a_printers_habit_is_refused() -> None:
    with pytest.raises(Refused, match="more than 5 mm"):
        SMALL.cell(1, (0, -5.1))


def test_a_cell_that_is_not_there_is_refused() -> None:
    with pytest.raises(Refused, match="has no cell 22"):
        SMALL.cell(22)


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"across": 3}, "do not fit its page"),
        ({"down": 6}, "do not fit its page"),
        ({"first": (-1, 11)}, "do not fit its page"),
        ({"step": (84, 55)}, "overlap"),
        ({"page": (210, 451)}, "longer than 450 mm"),
        ({"across": 0}, "at least one cell"),
        ({"tag": (85, 0)}, "at least one cell"),
        ({"dpi": 20}, "at least one cell"),
    ],
)
def test_a_stock_that_cannot_be_is_refused(changes: dict[str, object], why: str) -> None:
    with pytest.raises(Refused, match=why):
        replace(SWING, **changes)


def test_a_stock_nobody_described_is_not_found() -> None:
    with pytest.raises(NotFound):
        stock("swing-90x60")
