"""The list that came with the cones: matched once, wrong rows said and kept, good ones taken in."""

import pytest
from PySide6.QtWidgets import QFileDialog, QLabel

from app.exchange.columns import SETTING, known_columns
from app.lookups.cones import cone_facts
from app.lookups.door import bases_now
from app.lookups.studio import setting
from tests.window.benches.at_work import DONE
from tests.window.benches.door_hands import NOTES, at_the_door
from tests.window.test_main_window import room_for, seen

HEADS = "Note;Base;Batch;Cone;Gross g;Tare g\n"
ROW = "2241;Tarnfield 4-ply;A-203;114;1.462,5;64\n"
BAD = (HEADS + ROW + "2241;Tarnfield 4-ply;A-203;115;12x;64\n"
       "2241;Tarnfield 4-ply;A-203;116;=B2+1;64\n" + ROW
       + "2241;Tarnfield 4-ply;A-203;117;900,5;1000\n2241;Tarnfield 4-ply;;118;1.480,5;64\n")


@pytest.fixture
def door(qtbot, settings, studio):
    """At the door of a studio with one base and no cones."""
    yield from at_the_door(qtbot, settings, studio)


@pytest.fixture
def lay(tmp_path):
    """A way to lay a list into a folder."""

    def written(text, name="list.csv"):
        path = tmp_path / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return path

    return written


def card(door):
    return door.cards.list


def test_24_cones_of_the_mills_list_come_in_with_a_drop_and_enter(door):
    door.drop(NOTES / "aske-mill-2241.csv")
    assert card(door).number.accessibleName() == "24 cones of Tarnfield 4-ply note 2241"
    assert card(door).table.table._rows[0] == [
        "C·0114·F", "A-203", "1,580 g", "64 g", "1,516 g", "25 g", "13 %"]
    door.type("Aske Mill")
    door.press("Enter")
    assert door.said == "took in 24 cones of Tarnfield 4-ply, note 2241"
    assert len(door.in_book) == 24
    assert door.in_book[0] == ("C0114F", 1_516, "A-203")
    assert door.cards.codes.cones[0].code == "C0114F"
    facts = door.studio.book.ask(cone_facts, 1)
    assert (facts.supplier, facts.note_no, facts.checked) == ("Aske Mill", "2241", True)


def test_a_list_is_taken_in_by_the_plate_too(door, lay):
    door.drop(lay(HEADS + ROW))
    door.scan(DONE)
    assert door.in_book == [("C0114F", 1_398.5, "A-203")]


def test_a_list_can_be_chosen_in_a_window_that_blocks_nothing(door, lay):
    door.press("F3")
    (dialog,) = door.bench.findChildren(QFileDialog)
    dialog.fileSelected.emit(str(lay(HEADS + ROW)))
    dialog.reject()
    door.quiet()
    assert card(door).number.accessibleName() == "1 cone of Tarnfield 4-ply note 2241"


def test_every_row_in_trouble_has_its_sentence_and_good_rows_are_seen(door, lay):
    door.drop(lay(BAD))
    assert card(door).troubles.lines == [
        "Row 3, Gross g: “x” is no unit for the weight of a cone with its centre. It says: 12x",
        "Row 4, Gross g: it reckons, or begins as a formula does: only values are taken. "
        "It says: =B2+1",
        "Row 5, Cone: C·0114·F stands in row 2 already. It says: 114",
        "Row 6, Tare g: the empty centre cannot weigh so much. It says: 1,000 g",
    ]
    assert [row[0] for row in card(door).table.table._rows] == ["C·0114·F", "C·0118·H"]
    assert card(door).table.table._rows[1][1] == "not stated"


def test_bad_rows_stay_out_only_when_that_is_said(door, lay):
    door.drop(lay(BAD))
    door.press("Enter")
    door.scan(DONE)
    assert "cannot be taken in as it is" in door.trouble
    assert door.in_book == []
    assert card(door).leave_out.accessibleName() == "Take in 2, leave 4 rows out"
    door.press("F7")
    assert [code for code, _, _ in door.in_book] == ["C0114F", "C0118H"]
    assert door.said.endswith("; 4 rows left out")


def test_a_list_that_was_mended_is_read_again(door, lay):
    path = lay(BAD)
    door.drop(path)
    path.write_text(HEADS + ROW, "utf-8")
    door.press("F5")
    assert card(door).troubles.isHidden()
    assert card(door).number.accessibleName() == "1 cone of Tarnfield 4-ply note 2241"


def test_a_column_that_is_lacking_is_asked_and_remembered(door, lay):
    strange = HEADS.replace("Gross g;Tare g", "Weight A;Weight B")
    door.drop(lay(strange + ROW))
    sentences = [words.text() for words in card(door).columns.findChildren(QLabel)]
    assert "No column is headed as the gross weight; nearest is “Weight A”." in sentences
    assert card(door).table.isHidden()
    door.click(card(door).columns.keys["gross", "Weight A"])
    door.click(card(door).columns.keys["tare", "Weight B"])
    assert card(door).number.accessibleName() == "1 cone of Tarnfield 4-ply note 2241"
    door.scan(DONE)
    assert len(door.in_book) == 1
    assert known_columns(door.studio.book.ask(setting, SETTING))
    door.press("Enter")
    door.drop(lay(strange + ROW.replace("2241", "2242").replace(";114;", ";;"), "second.csv"))
    assert card(door).notes.text() == "Columns as they were settled before."
    door.scan(DONE)
    assert len(door.in_book) == 2


def test_what_holds_for_all_rows_is_written_once(door, lay):
    door.drop(lay(HEADS.replace("Tare g", "Shelf") + ROW))
    assert list(card(door).columns.fields) == ["tare"]
    card(door).columns.fields["tare"].setText("64")
    door.press("Enter")
    assert card(door).table.table._rows[0][3] == "64 g"
    door.press("Enter")
    assert door.in_book == [("C0114F", 1_398.5, "A-203")]


def test_headings_in_words_of_their_own_are_settled_one_by_one(door, lay):
    door.drop(lay("Aa;Bb;Cc;Dd;Ee\n2241;Tarnfield 4-ply;A-203;1462;64\n"))
    for field, heading in (("note", "Aa"), ("base", "Bb"), ("batch", "Cc"), ("gross", "Dd"),
                           ("tare", "Ee")):
        door.click(card(door).columns.keys[field, heading])
    door.scan(DONE)
    assert door.in_book == [("C00017", 1_398, "A-203")]


def test_a_match_that_is_wrong_is_put_right(door, lay):
    door.drop(lay("Note;Base;Batch;Gross;Tare;Second scales\n"
                  "2241;Tarnfield 4-ply;A-203;1400;64;1462\n"))
    door.press("F6")
    door.click(card(door).columns.keys["gross", ""])
    door.click(card(door).columns.keys["gross", "Second scales"])
    assert card(door).table.table._rows[0][1] == "1,462 g"


UNREADABLE = {
    "empty.csv": (b"", "The file is empty."),
    "note.pdf": (b"%PDF-1.4", "This is a PDF: a picture of a list, not the list."),
    "old.xls": (b"\xd0\xcf\x11\xe0" + b"1" * 20, "This is a spreadsheet in an old form"),
    "photo.csv": (b"\x89PNG\r\n\x1a\n\x00\x01\x02\x03" * 9, "This is neither a spreadsheet nor"),
    "letter.txt": (b"Dear dyers,\nenclosed is\n", "No row of this file looks like headings"),
}


@pytest.mark.parametrize("name", UNREADABLE)
def test_a_file_that_cannot_be_read_says_why(door, lay, name):
    data, sentence = UNREADABLE[name]
    door.drop(lay(data, name))
    assert card(door).wrong.isVisible()
    assert card(door).wrong.text().startswith(sentence)
    assert not card(door).take_in.isVisible()
    door.press("F8")
    assert door.bench.hand is door.cards.start


@pytest.mark.parametrize("encoding", ["cp1252", "utf-8-sig", "utf-16"])
def test_a_list_in_another_encoding_is_read_as_it_was_meant(door, lay, encoding):
    text = "Lieferschein;Garn;Partie;Hülse g;Brutto g\n2241;Tarnfield 4-ply;Größe 3;64;1462\n"
    door.drop(lay(text.encode(encoding)))
    assert card(door).table.table._rows[0][0] == "Größe 3"


def test_a_file_that_is_gone_says_so(door, tmp_path):
    door.drop(tmp_path / "gone.csv")
    assert card(door).wrong.text().startswith("gone.csv cannot be opened: No such file")


def test_a_base_the_list_names_is_described_on_the_way(door, lay):
    door.drop(lay(HEADS + ROW.replace("Tarnfield 4-ply", "Gossamer Lamb")))
    assert card(door).troubles.lines[0].startswith("Row 2, Base: no base is called so in the book")
    door.press("F4")
    base = door.cards.base
    assert base.name.line.text() == "Gossamer Lamb"
    for field, text in (("fibre", "100 % wool"), ("count", "Nm 16/2"), ("turns", "275")):
        getattr(base, field).line.setText(text)
    door.press("Enter")
    assert "Gossamer Lamb" in [one.name for one in door.studio.book.ask(bases_now)]
    assert card(door).number.accessibleName() == "1 cone of Gossamer Lamb note 2241"
    door.scan(DONE)
    assert len(door.in_book) == 1


def test_a_list_is_not_taken_in_twice(door, lay):
    path = lay(HEADS + ROW)
    door.drop(path)
    door.scan(DONE)
    door.drop(path)
    assert card(door).troubles.lines == [
        "Note 2241 with Tarnfield 4-ply is in the book. If more cones came with it, number the "
        "second part, like 2241/2."]
    assert not card(door).take_in.isEnabled()
    door.scan(DONE)
    assert len(door.in_book) == 1


def test_a_list_with_numbers_of_the_mills_own_gets_new_ones(door, lay):
    door.studio.cones(2)
    rows = [f"2299;Tarnfield 4-ply;A-203;{number};1462;64\n" for number in (1, 2)]
    door.drop(lay(HEADS + "".join(rows)))
    assert card(door).troubles.lines[0].startswith("Row 2, Cone: C·0001·7 is another cone")
    door.press("F9")
    assert card(door).troubles.isHidden()
    door.scan(DONE)
    assert [code[:5] for code, _, _ in door.in_book] == ["C0001", "C0002", "C0003", "C0004"]


def test_a_note_of_the_same_number_is_asked_about(door, lay):
    door.studio.cones(3)
    door.drop(lay(HEADS + ROW))
    assert card(door).doubt.text() == (
        "Note 2241 of Aske Mill came in on 6 Apr 2026 with 3 cones of it. Is this more of it?")


def test_taking_back_a_list_brings_it_back_in_hand(door, lay):
    door.drop(lay(HEADS + ROW.replace(";114;", ";;")))
    door.scan(DONE)
    door.press("F2")
    assert door.in_book == []
    assert door.bench.hand is card(door)
    assert card(door).take_in.isEnabled()
    door.scan(DONE)
    assert len(door.in_book) == 1


def test_cones_on_the_scales_are_kept_when_a_list_is_dropped(door, lay):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    door.drop(lay(HEADS + ROW))
    door.press("F8")
    assert door.cards.start.again.accessibleName() == "Go on with 1 cone of Tarnfield 4-ply"
    door.press("F7")
    assert len(door.rows) == 1


def test_a_list_with_its_note_above_the_table_and_two_bases_is_two_deliveries(door):
    door.drop(NOTES / "withybank-118.xlsx")
    assert "Downholm Sock" in card(door).troubles.lines[0]
    assert card(door).base_key.accessibleName() == "Describe Downholm Sock"


@pytest.mark.parametrize("steps", [0, 4])
def test_no_words_are_clipped_at_the_door(qtbot, door, lay, steps):
    door.window.change_text(steps)
    door.quiet()
    check(qtbot, door)
    door.begin()
    door.weigh("700", centre="64", batch="A-203", wrap="29")
    door.press("F6", "Enter")
    check(qtbot, door)
    door.weigh(1462)
    door.press("F10")
    check(qtbot, door)
    door.press("Enter")
    door.drop(lay(BAD, "a list with a name that goes on and on until nobody can read it.csv"))
    check(qtbot, door)
    door.press("F6")
    check(qtbot, door)


def check(qtbot, door):
    def clipped():
        return [words.text() for words in seen(door.bench, QLabel) if not room_for(words)]

    qtbot.waitUntil(lambda: clipped() == [])
