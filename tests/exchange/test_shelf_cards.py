"""The cards of shelves and lots out of the book, on the sheet of tags in hand."""

import pytest

from app.calculations.codes import Kind, shown
from app.documents.proof import read_back
from app.documents.shelf_cards import ShelfCard
from app.exchange.shelf_cards import card_sheet, lot_card, print_card, shelf_card
from app.exchange.tag_printing import OnStock, Printed
from app.exchange.tag_stocks import put_away_stock
from app.lookups.printed import sheets_used
from app.lookups.recent import entries
from app.problems import Refused
from app.store.deed import By
from app.work.bases import describe_base
from app.work.bundling import make_plates
from app.work.finishing import finish
from app.work.opening_stock import OldLot, open_lot
from tests.documents.samples import text_of
from tests.makers import Studio, tarnfield

BY = By("LP", "tagging")
SWING = "swing-85x55"


@pytest.fixture
def card(studio: Studio) -> ShelfCard:
    (shelf,) = studio.do(make_plates, Kind.SHELF, [12], "by the window")
    found: ShelfCard = studio.book.ask(shelf_card, shelf)
    return found


def printed(studio: Studio, card: ShelfCard, *used: int) -> Printed:
    kept = studio.book.ask(card_sheet).kept
    return print_card(studio.book, BY, card, OnStock(SWING, used=used), kept)


def test_a_shelfs_card_has_the_name_of_its_plate_and_uses_one_cell(
    studio: Studio, card: ShelfCard
) -> None:
    first = printed(studio, card)
    assert [code.code for code in read_back(first.pdf, 300)[0]] == [card.code]
    (said,) = text_of(first.pdf)
    assert "by the window" in said
    assert "Shelf 012" in said
    assert (first.places[0].cell, first.said) == (1, f"printed the card of {shown(card.code)}")
    assert printed(studio, card, 1, 3).places[0].cell == 2
    assert studio.book.ask(sheets_used)[SWING] == {1, 2, 3}
    studio.undo()
    assert studio.book.ask(sheets_used)[SWING] == {1}
    studio.check()


def test_the_last_cell_fills_the_sheet_and_a_full_one_is_refused(
    studio: Studio, card: ShelfCard
) -> None:
    last = printed(studio, card, *range(1, 10))
    assert (last.places[0].cell, last.left_on_last) == (10, 0)
    assert studio.book.ask(sheets_used)[SWING] == set(range(1, 11))
    with pytest.raises(Refused, match="used"):
        printed(studio, card, *range(1, 11))


def test_a_second_press_finds_its_sheet_printed_on_and_prints_nothing(
    studio: Studio, card: ShelfCard
) -> None:
    seen = studio.book.ask(card_sheet).kept
    print_card(studio.book, BY, card, OnStock(SWING), seen)
    with pytest.raises(Refused, match="was printed on a moment ago; no card was printed"):
        print_card(studio.book, BY, card, OnStock(SWING), seen)
    assert [entry.said for entry in studio.book.ask(entries)].count(
        f"printed the card of {shown(card.code)}") == 1


def test_cards_are_printed_on_the_stock_with_room_that_was_used_last(
    studio: Studio, card: ShelfCard
) -> None:
    assert studio.book.ask(card_sheet).stock.name == SWING
    print_card(studio.book, BY, card, OnStock("tag-70x50"), frozenset())
    assert studio.book.ask(card_sheet).stock.name == "tag-70x50"
    assert studio.book.ask(card_sheet, SWING).stock.name == SWING
    assert studio.book.ask(card_sheet, "roll-62x40").stock.name == "tag-70x50"
    for one in (SWING, "tag-70x50"):
        studio.do(put_away_stock, one)
    with pytest.raises(Refused, match="No stock in use has room for a card"):
        studio.book.ask(card_sheet)


def test_a_lots_card_says_what_it_is_and_when_it_was_dyed(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    lot, (pile,) = studio.dye(group), studio.finish(group, red=3)
    found = studio.book.ask(lot_card, pile)
    assert (found.code, found.colourway, found.base) == (
        studio.code(lot), "Sluice Keeper's Glove", "Tarnfield 4-ply")
    assert found.fibre == "100 % wool"
    assert found.dyed.startswith("dyed ")


def test_an_old_lot_has_its_card_with_its_old_code_and_no_day_of_dyeing(studio: Studio) -> None:
    studio.cone()
    found = studio.book.ask(lot_card, studio.do(open_lot, OldLot("GL 14/3", 1, 1, 3), 100_000))
    assert (found.code, found.dyed) == ("GL14/3", "")
    old = print_card(studio.book, BY, found, OnStock(SWING), frozenset())
    assert [code.code for code in read_back(old.pdf, 300)[0]] == ["GL14/3"]


def test_of_two_compositions_it_names_both_and_of_a_lot_not_known_there_is_none(
    studio: Studio
) -> None:
    one = studio.wind(studio.cone(), 2, "red")
    studio.do(describe_base, tarnfield(fibre="75 % wool, 25 % nylon"))
    other = studio.wind(studio.cone(), 2, "red")
    studio.dye(one, other)
    (pile,) = studio.do(finish, [one, other], {"red": 4})
    assert studio.book.ask(lot_card, pile).fibre == "100 % wool, or 75 % wool, 25 % nylon"
    red, also_red = (studio.wind(studio.cone(), 2, "red") for _ in range(2))
    studio.dye(red)
    studio.dye(also_red)
    (mixed,) = studio.do(finish, [red, also_red], {"red": 4})
    with pytest.raises(Refused, match="Which lot lies in this pile is not known"):
        studio.book.ask(lot_card, mixed)
