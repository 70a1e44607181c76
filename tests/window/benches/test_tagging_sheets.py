"""Sheets of tags: the right count, from the right cell on, and never twice without a reason."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from sqlalchemy import select

from app.documents.proof import read_back
from app.documents.stocks import stock
from app.lookups.printed import TIED_ON, VOID, WAITING
from app.records import Tag
from app.window.benches.tagging.sheet_picture import Cell
from app.window.benches.tagging.sheet_plan import SheetPlan, used_cells
from app.work.bases import describe_base
from tests.makers import tarnfield
from tests.window.benches.at_work import DONE, UNDO, begin_work, disc, plate
from tests.window.benches.tag_table_hands import (
    SMALL,
    add_up,
    eleven_on_the_table,
    entries_say,
    figures,
    in_hand,
    tags,
)


@pytest.fixture
def pile(studio):
    """Eleven skeins on disc 031; eight cells of a sheet of small tags are used by another pile."""
    return eleven_on_the_table(studio)


@pytest.fixture
def table(qtbot, settings, studio, pile, opened):
    """At the tag table."""
    yield from begin_work(qtbot, settings, studio, 7)


def test_eleven_skeins_get_eleven_tags_from_cell_nine_on_and_two_cells_are_left(
    table, pile, opened
):
    table.scan(disc(31))
    assert figures(table) == (11, 0, 0, 11, 0)
    picture = in_hand(table).print_card.picture.shown
    assert [picture.cell(n) for n in (8, 9, 19, 20)] == [
        Cell.USED,
        Cell.CHOSEN,
        Cell.CHOSEN,
        Cell.FREE,
    ]
    assert where(table) == "Cells 9 to 19 of 21, 2 left."
    table.press("P")
    assert figures(table) == (11, 0, 11, 0, 0)
    table.press("X")
    assert where(table) == "Cell 20 of 21, 1 left."
    (file,) = opened
    assert file.parent == table.studio.book.path.with_name("studio tags")
    codes = [code.code for page in read_back(file.read_bytes(), stock(SMALL).dpi) for code in page]
    assert sorted(codes) == sorted(tag.mark for tag in tags(table, pile, WAITING))
    assert [tag.place for tag in tags(table, pile, WAITING)] == list(range(9, 20))
    assert add_up(table)


def test_printing_again_is_refused_with_three_reasons_and_spoiled_ones_are_replaced(table, pile):
    table.scan(disc(31), DONE)
    assert figures(table) == (11, 0, 11, 0, 0)
    card = in_hand(table).print_card
    assert "11 of 11 printed: why?" in card.print.accessibleDescription()
    assert [(key.accessibleName(), key.key) for key in card.reasons] == [
        ("Spoiled", "S"),
        ("Fell off", "F"),
        ("Extra skein", "X"),
        ("Jammed", "J"),
    ]
    assert all(key.isVisible() for key in card.reasons)
    table.press("P")
    table.scan(DONE)
    assert "11 of 11 printed: why?" in table.trouble
    assert len(tags(table, pile, WAITING)) == 11

    table.press("S")
    jammed = tags(table, pile, WAITING)[4:7]
    for tag in jammed:
        in_hand(table).aside.picture.tapped.emit(tag.place)
    table.press("Enter")
    assert figures(table) == (11, 0, 8, 3, 3)
    assert {tag.mark for tag in tags(table, pile, VOID)} == {tag.mark for tag in jammed}
    assert add_up(table)

    table.press("P")
    assert figures(table) == (11, 0, 11, 0, 3)
    fresh = tags(table, pile, WAITING)[-3:]
    assert {tag.mark for tag in fresh}.isdisjoint(tag.mark for tag in jammed)
    assert len(tags(table, pile, WAITING, TIED_ON, VOID)) == 14
    assert add_up(table)


def test_an_extra_skein_gets_a_tag_with_its_reason_and_the_sum_says_one_too_many(table, pile):
    table.scan(disc(31), DONE)
    table.press("X")
    card = in_hand(table).print_card
    assert card.print.accessibleName() == "Print 1 tag, an extra skein"
    table.press("P")
    assert figures(table) == (11, 0, 12, 0, 0)
    assert in_hand(table).pile_card.figures.over.number == 1
    assert in_hand(table).pile_card.figures.over.isVisible()


def test_a_second_press_prints_no_second_tag_for_an_extra_skein(table, pile):
    table.scan(disc(31), DONE)
    table.press("X")
    for _ in range(2):
        in_hand(table).print_card.print.click()
    table.quiet()
    assert "were printed a moment ago; no more were printed." in table.trouble
    assert len(tags(table, pile, WAITING)) == 12


def test_more_than_the_count_asks_why_before_anything_is_printed(table, pile):
    table.scan(disc(31))
    table.press("+")
    assert in_hand(table).print_card.plan.count == 12
    assert "0 of 11 printed: why?" in in_hand(table).print_card.print.accessibleDescription()
    table.press("P")
    assert tags(table, pile, WAITING) == []
    table.press("-", "-", "P")
    assert figures(table) == (11, 0, 10, 1, 0)


def test_of_two_compositions_the_owner_picks_the_text(table, studio):
    first = studio.cone()
    studio.do(describe_base, tarnfield(fibre="90 % wool, 10 % polyamide"))
    pool = studio.mix(
        studio.wind(first, 3, "red", studio.discs[3]), studio.wind(studio.cone(), 2, "red")
    )
    studio.dye(pool)
    (mixed,) = studio.finish(pool, red=5)
    table.scan(disc(34), DONE)
    assert "Two compositions lie in one pile; nothing was printed." in table.trouble
    table.scan(plate(2), DONE)
    assert figures(table) == (5, 0, 5, 0, 0)
    words = studio.book.ask(
        lambda c: c.execute(select(Tag.words).where(Tag.pile == mixed)).scalars().first()
    )
    assert list(in_hand(table).table.texts.values())[1] in words


def tap(table, *cells):
    picture = in_hand(table).aside.picture
    for cell in cells:
        middle = picture.box(cell).center().toPoint()
        table._qtbot.mouseClick(picture, Qt.MouseButton.LeftButton, pos=middle)
    table.quiet()


def where(table):
    return in_hand(table).print_card.where.text()


def test_printing_begins_at_any_cell_by_keys_alone(table, pile):
    table.scan(disc(31))
    table.press("Right", "Down", "B")
    assert where(table) == "Cells 13 to 21 of 21, then 1 more sheet, 19 left on the last."
    table.press("Up", "Up", "Left", "B")
    assert where(table) == "Cells 6 to 16 of 21, 5 left."
    table.press("Right", "Space")
    assert where(table) == "Cells 6 and 8 to 17 of 21, 4 left."
    table.press("N")
    assert where(table) == "Cells 1 to 11 of 21, 10 left."
    table.press("P")
    assert [tag.place for tag in tags(table, pile, WAITING)] == list(range(1, 12))


def test_a_tapped_cell_is_skipped_or_free_after_all_and_the_next_printing_knows(table, pile):
    table.scan(disc(31))
    tap(table, 3, 10, 20)
    assert where(table) == "Cells 3, 9 and 11 to 19 of 21, 1 left."
    assert in_hand(table).print_card.picture.shown.cell(20) is Cell.USED
    tap(table, 10, 10)
    table.press("P")
    assert [tag.place for tag in tags(table, pile, WAITING)] == [3, 9, *range(11, 20)]
    table.press("F8")
    table.scan(disc(32))
    table.press("X")
    assert where(table) == "Cell 21 of 21, none left."


def test_what_was_said_of_the_sheet_stays_for_the_next_pile_until_it_is_printed_on(table, pile):
    table.scan(disc(31))
    table.press("K", "K")
    tap(table, 2)
    assert where(table) == "Cells 1 and 3 to 12 of 15, 3 left."
    table.scan(disc(32))
    table.press("X")
    assert where(table) == "Cell 1 of 15, 13 left."
    table.press("P", "F8")
    table.scan(disc(31))
    assert where(table) == "Cells 3 to 13 of 15, 2 left."


def test_cells_that_were_told_are_not_lost_by_the_scan_of_another_disc(table, pile):
    table.scan(disc(31), DONE)
    table.press("J", "Space", "F7")
    table.scan(disc(32))
    assert table.trouble == ("1 tag jammed: that is not kept yet; this pile stays in hand. Press "
                             "Enter to keep that, or F8 to leave it; then scan once more.")
    assert in_hand(table).aside.keep.accessibleName() == "1 tag jammed"
    table.press("F8")
    table.scan(disc(32))
    assert in_hand(table).pile != pile


def test_begun_at_a_tapped_cell_and_with_every_cell_gone_nothing_is_printed(table, pile):
    table.scan(disc(31))
    tap(table, 5)
    table.press("B")
    assert where(table) == "Cells 5 to 15 of 21, 6 left."
    tap(table, *range(5, 22))
    assert where(table) == "Every cell of this sheet is used."
    table.press("P")
    table.scan(DONE)
    assert "Every cell of this sheet is used." in table.trouble
    assert tags(table, pile, WAITING) == []


def test_of_a_sheet_that_jammed_at_row_five_the_marks_are_void_and_as_many_offered(table, pile):
    table.scan(disc(31), DONE)
    table.press("J", "F8")
    assert in_hand(table).aside is in_hand(table).print_card
    table.press("J")
    tap(table, 14)
    table.press("W")
    assert in_hand(table).aside.keep.accessibleName() == "3 tags jammed"
    table.press("Enter")
    jammed = tags(table, pile, VOID)
    assert [tag.place for tag in jammed] == [13, 14, 15]
    assert entries_say(table, "spoiled 3 tags: jammed")
    assert figures(table) == (11, 0, 8, 3, 3)
    card = in_hand(table).print_card
    assert card.print.accessibleName() == "Print 3 tags"
    assert where(table) == "Cells 20 to 21 of 21, then 1 more sheet, 20 left on the last."
    table.press("P")
    assert figures(table) == (11, 0, 11, 0, 3)
    assert {tag.mark for tag in jammed}.isdisjoint(t.mark for t in tags(table, pile, WAITING))
    assert add_up(table)


def test_another_stock_has_its_own_cells(table):
    table.scan(disc(31))
    table.press("K")
    card = in_hand(table).print_card
    assert card.stock.name == "swing-85x55"
    assert card.where.text() == "Cells 1 to 10 of 10, then 1 more sheet, 9 left on the last."
    table.press("K")
    assert card.where.text() == "Cells 1 to 11 of 15, 4 left."
    table.press("K")
    assert card.stock.name == "band-210x50"
    table.press("K")
    assert card.where.text() == "11 from the roll, one at a time."


def test_a_printing_is_taken_back_like_any_deed(table, pile):
    table.scan(disc(31), DONE, UNDO)
    assert figures(table) == (11, 0, 0, 11, 0)
    assert tags(table, pile, WAITING) == []
    assert where(table) == "Cells 9 to 19 of 21, 2 left."


def test_a_sheet_that_cannot_be_saved_is_said_and_nothing_is_opened(table, pile, opened):
    (table.studio.book.path.with_name("studio tags")).write_text("in the way")
    table.scan(disc(31), DONE)
    assert "could not be saved" in table.found[0]
    assert opened == []
    assert not in_hand(table).pile_card.open.isVisible()
    assert len(tags(table, pile, WAITING)) == 11


def test_a_sheet_is_opened_again_by_its_key(table, opened):
    table.scan(disc(31), DONE)
    table.press("O")
    assert len(opened) == 2
    assert opened[0] == opened[1]


@pytest.mark.parametrize(
    ("used", "count", "sheets", "left", "words"),
    [
        (range(1, 9), 11, 1, 2, "Cells 9 to 19 of 21, 2 left."),
        (range(1, 9), 13, 1, 0, "Cells 9 to 21 of 21, none left."),
        (range(1, 20), 3, 2, 20, "Cells 20 to 21 of 21, then 1 more sheet, 20 left on the last."),
        (range(1, 21), 1, 1, 0, "Cell 21 of 21, none left."),
        ((), 50, 3, 13, "Cells 1 to 21 of 21, then 2 more sheets, 13 left on the last."),
        (range(1, 5), 0, 1, 17, "From cell 5 of 21."),
        ((2, 4, 6, 20), 5, 1, 12, "Cells 1, 3, 5 and 7 to 8 of 21, 12 left."),
        (range(1, 22), 5, 1, 0, "Every cell of this sheet is used."),
    ],
)
def test_a_sheet_is_planned_to_its_last_cell(used, count, sheets, left, words):
    plan = SheetPlan(stock(SMALL), frozenset(used), count)
    assert (plan.sheets, plan.left, plan.words) == (sheets, left, words)


def test_where_a_page_is_one_tag_no_cell_is_spoken_of():
    roll = stock("roll-62x40")
    assert SheetPlan(roll, frozenset(), 0).words == "From the roll, one at a time."
    assert SheetPlan(replace(roll, layout="card"), frozenset(), 5).words == "5 one on a page."


@pytest.mark.parametrize(
    ("kept", "used"),
    [((), ()), ((1, 2, 7), (1, 2, 7)), (range(1, 22), ()), (range(1, 31), range(1, 10))],
)
def test_of_the_cells_that_are_kept_those_of_the_last_sheet_are_used(kept, used):
    assert used_cells(stock(SMALL), set(kept)) == set(used)
