"""What was dyed before the book began: old codes in, tags out, and found by their scan."""

import pytest
from sqlalchemy import select

from app.documents.proof import read_back
from app.lookups.old_lots import opened_last
from app.records import Tag
from app.work.studio import choose
from tests.window.benches.at_work import DONE, begin_work
from tests.window.benches.door_hands import AtTheDoor

TARNFIELD, GLOVE = "Tarnfield 4-ply", "Sluice Keeper's Glove"


@pytest.fixture
def door(qtbot, settings, studio):
    for at_work in begin_work(qtbot, settings, studio, 1):
        yield AtTheDoor(at_work)


@pytest.fixture
def files(opened):
    return opened


@pytest.fixture
def card(door):
    """The card of old lots in hand."""
    door.press("F9")
    assert door.bench.hand is door.cards.old_lots
    return door.cards.old_lots


def opened(door):
    return [(one.code, one.colourway, one.count, one.put_up)
            for one in door.studio.book.ask(opened_last)]


def enter(door, code, colourway, count):
    card = door.cards.old_lots
    for field, words in ((card.code, code), (card.colourway, colourway), (card.count, count)):
        field.line.setText(words)
    door.press("Enter")


def test_old_lots_come_in_one_after_the_other(door, card):
    door.type("tarn")
    door.press("Enter")
    assert card.base.line.text() == TARNFIELD
    door.type("OLD 77")
    door.press("Tab")
    door.type("glove")
    door.press("Tab")
    door.type("4")
    door.press("Enter")
    assert opened(door) == [("OLD77", GLOVE, 4, "skein")]
    assert card.code.line.hasFocus()
    assert card.code.line.text() == ""
    assert card.told.text() == "Tarnfield 4-ply, skeins: the code as it stands on the tags."
    enter(door, "OLD-78", GLOVE, "2")
    assert [row[0] for row in card.table._rows] == ["OLD78", "OLD77"]
    door.press("F2")
    assert [row[0] for row in card.table._rows] == ["OLD77"]
    door.studio.check()


def test_a_new_colourway_is_named_with_its_lot_and_only_on_purpose(door, card):
    door.type("tarn")
    door.press("Enter")
    enter(door, "M-12", "Lock House Door", "9")
    assert card.colourway.wrong.text() == (
        "No colourway is called “Lock House Door”. Write it as it is called, or name it new: F7.")
    assert opened(door) == []
    assert card.code.line.text() == "M-12"
    door.press("F7")
    assert opened(door) == [("M12", "Lock House Door", 9, "skein")]


def test_minis_are_another_put_up(door, card):
    card.base.line.setText(TARNFIELD)
    card.put_up.line.setText("minis")
    door.press("Enter")
    enter(door, "M-12", GLOVE, "9")
    assert opened(door) == [("M12", GLOVE, 9, "mini")]
    door.press("F6")
    assert card.base.line.hasFocus()


@pytest.mark.parametrize(("code", "why"), [
    ("", "Write the code that stands on its tags."),
    ("C0114F", "It reads as the code of something else."),
    ("old-77", "Lot old-77 is in the book already."),
])
def test_a_code_that_cannot_be_is_told_beside_it(door, card, code, why):
    door.type("tarn")
    door.press("Enter")
    enter(door, "OLD77", GLOVE, "4")
    enter(door, code, GLOVE, "4")
    assert card.code.wrong.text().startswith(why)
    assert len(opened(door)) == 1


def test_a_list_of_old_lots_is_dropped_on_them(door, card, tmp_path):
    path = tmp_path / "shelves.csv"
    path.write_text(f"Tag;Colour;Base;Qty\nOLD77;{GLOVE};{TARNFIELD};4\nOLD78;{GLOVE};Moorit;2\n"
                    f"OLD79;Lock House Door;{TARNFIELD};3\n", "utf-8")
    door.drop(path)
    listed = door.cards.old_list
    assert door.bench.hand is listed
    assert listed.number.accessibleName() == "2 old lots 7 in all"
    assert listed.notes.text() == "New colourways, named with them: Lock House Door."
    assert listed.troubles.lines == [
        "Row 3, Base: no base is called so in the book. It says: Moorit"]
    assert not listed.take_in.isEnabled()
    door.press("F7")
    assert door.said == "opened 2 old lots, 7 in all; 1 row left out"
    assert [one[0] for one in opened(door)] == ["OLD79", "OLD77"]
    assert door.bench.hand is door.cards.old_lots


def test_a_column_that_is_not_understood_is_tapped_once(door, card, tmp_path):
    path = tmp_path / "shelves.csv"
    path.write_text(f"What it says;Colour;Base;Qty\nOLD77;{GLOVE};{TARNFIELD};4\n", "utf-8")
    door.drop(path)
    listed = door.cards.old_list
    door.click(listed.columns.keys["code", "What it says"])
    door.press("Enter")
    assert opened(door) == [("OLD77", GLOVE, 4, "skein")]


def test_what_no_column_says_is_written_once_for_all_rows(door, card, tmp_path):
    path = tmp_path / "shelves.csv"
    path.write_text(f"Tag;Colour;Qty\nOLD77;{GLOVE};4\n", "utf-8")
    door.drop(path)
    listed = door.cards.old_list
    listed.columns.fields["base"].setText(TARNFIELD)
    door.press("Enter", "Enter")
    assert opened(door) == [("OLD77", GLOVE, 4, "skein")]


def test_tags_of_an_old_lot_are_printed_proven_and_scanned(door, card, files):
    door.type("tarn")
    door.press("Enter")
    enter(door, "OLD 77", GLOVE, "4")
    door.studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    door.enter(7)
    door.scan("OLD77")
    assert door.bench.in_hand is not None
    door.scan(DONE)
    marks = door.studio.book.ask(lambda c: c.execute(select(Tag.mark)).scalars().all())
    (sheet,) = read_back(files[-1].read_bytes(), 300)
    assert sorted(one.code for one in sheet) == sorted(marks)
    door.scan(marks[0])
    assert door.said == f"tied {marks[0]} on"
    door.studio.check()
