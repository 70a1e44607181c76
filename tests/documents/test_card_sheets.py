"""Cards on any stock: cell by cell, moved by the correction, or refused."""

import pytest

from app.calculations.codes import Kind, numbered
from app.documents.card_sheets import card_sheets
from app.documents.proof import printed_pages, read_back
from app.documents.shelf_cards import ShelfCard
from app.documents.stocks import stock
from app.problems import Refused
from tests.documents.samples import ink_box

SWING = stock("swing-85x55")


def shelf(number: int) -> ShelfCard:
    code = numbered(Kind.SHELF, number).text
    return ShelfCard(code=code, name="Window wall")


def test_cards_run_over_to_the_next_sheet_and_none_is_refused() -> None:
    shelves = [shelf(n) for n in (1, 2, 3)]
    pages = read_back(card_sheets(shelves, SWING, first_cell=9), 300)
    assert [len(page) for page in pages] == [2, 1]
    with pytest.raises(Refused, match="no card"):
        card_sheets([], SWING)


def test_a_correction_moves_the_card_and_too_large_a_one_is_refused() -> None:
    boxes = [
        ink_box(printed_pages(card_sheets([shelf(1)], SWING, correction=by), 600)[0], 600)
        for by in ((0.0, 0.0), (-2.1, -1.4))
    ]
    moved = [after - before for before, after in zip(*boxes, strict=True)]
    assert moved == pytest.approx([-2.1, -1.4, -2.1, -1.4], abs=0.1)
    with pytest.raises(Refused, match="more than 5 mm"):
        card_sheets([shelf(1)], SWING, correction=(0.0, -9.0))
