"""A lot's card with room for its yarn, and a shelf's card: words, code, nothing else."""

from dataclasses import replace

import pytest

from app.calculations.codes import Kind, numbered
from app.documents.card_sheets import card_sheets
from app.documents.proof import printed_pages, read_back
from app.documents.shelf_cards import LotCard, ShelfCard
from app.documents.stocks import stock
from app.problems import Refused
from tests.documents.samples import text_of

LOT = LotCard(
    code="2615R6F",
    colourway="Sluice Keeper’s Glove",
    base="Tarnfield 4-ply",
    fibre="100 % wool",
    dyed="dyed 9 Apr 2026",
)
SHELF = ShelfCard(
    code=numbered(Kind.SHELF, 12).text,
    name="Ferry Ledger, window wall",
)
STOCKS = [stock("swing-85x55"), stock("tag-70x50")]


@pytest.mark.parametrize("one", STOCKS, ids=lambda one: one.name)
def test_both_say_what_they_are_and_are_read_back(one: object) -> None:
    pdf = card_sheets([LOT, SHELF], one)
    [said] = text_of(pdf)
    for words in ("Sluice Keeper’s Glove", "100 % wool", "dyed 9 Apr 2026", "26·15·R6F",
                  "Ferry Ledger, window", "Shelf 012", "S·012·5"):  # fmt: skip
        assert words in said
    for dpi in (203, 300):
        assert {code.code for code in read_back(pdf, dpi)[0]} == {LOT.code, SHELF.code}


def test_a_shelf_without_a_name_is_called_by_its_number_once() -> None:
    (said,) = text_of(card_sheets([replace(SHELF, name="")], STOCKS[0]))
    assert said.count("Shelf 012") == 1


def test_nothing_is_printed_where_the_yarn_is_wound() -> None:
    swing = stock("swing-85x55")
    page = printed_pages(card_sheets([LOT], swing), 300)[0]
    left, top, _, foot = swing.cell(1)
    strip = (left + 5.2, top + 1, left + 16.8, foot - 1)
    dots = tuple(round(side / 25.4 * 300) for side in strip)
    assert page.crop(dots).convert("L").getextrema() == (255, 255)


def test_a_name_too_long_for_the_card_is_refused() -> None:
    with pytest.raises(Refused, match="Slipwaystonesandpebblesattheveryend"):
        card_sheets([replace(LOT, colourway="Slipwaystonesandpebblesattheveryend")], STOCKS[0])
