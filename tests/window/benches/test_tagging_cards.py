"""The card of the shelf in hand, and of the lot in hand: one key, on the sheet of tags in hand."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.documents.proof import read_back
from app.lookups.printed import sheets_used
from app.work.bundling import make_plates
from tests.window.benches.at_work import begin_work, disc
from tests.window.benches.tag_table_hands import SMALL, eleven_on_the_table, figures, in_hand

SHELF, SWING = numbered(Kind.SHELF, 12).text, "swing-85x55"


@pytest.fixture
def table(qtbot, settings, studio, opened):
    """At the tag table; eleven skeins are on disc 031, small tags were printed last."""
    studio.do(make_plates, Kind.SHELF, [12], "by the window")
    studio.pile = eleven_on_the_table(studio)
    yield from begin_work(qtbot, settings, studio, 7)


def code_on(file):
    return [code.code for page in read_back(file.read_bytes(), 300) for code in page]


def used(table, stock=SWING):
    return set(table.studio.book.ask(sheets_used).get(stock, ()))


def test_the_shelf_in_hand_prints_its_card(table, opened):
    table.scan(SHELF)
    table.press("P")
    assert table.said == f"printed the card of {shown(SHELF)}"
    assert code_on(opened[-1]) == [SHELF]
    assert used(table) == {1}
    table.press("P")
    assert used(table) == {1, 2}
    table.press("F2")
    assert used(table) == {1}
    table.studio.check()


def test_the_lot_in_hand_prints_its_card_and_its_tags_stay_on_their_stock(table, opened):
    lot = table.studio.code(1)
    table.scan(disc(31))
    assert in_hand(table).print_card.stock.name == SMALL
    table.press("L")
    assert table.said == f"printed the card of {shown(lot)}"
    assert code_on(opened[-1]) == [lot]
    assert figures(table) == (11, 0, 0, 11, 0)  # a card is no tag
    assert used(table, SMALL) == set(range(1, 9))
    table.press("O")
    assert len(opened) == 2
    assert opened[0] == opened[1]
    table.press("F8")
    table.scan(disc(31))
    assert in_hand(table).print_card.stock.name == SMALL  # tags are printed on as before


def test_a_lots_card_stands_on_the_sheet_of_tags_that_is_on_the_screen(table):
    table.scan(disc(31))
    table.press("K")
    sheet = in_hand(table).print_card
    assert sheet.stock.name == SWING
    sheet.picture.tapped.emit(1)  # a cell that is gone
    table.press("L")
    assert used(table) == {1, 2}
    assert sheet.plan.on_first == tuple(range(3, 11))
