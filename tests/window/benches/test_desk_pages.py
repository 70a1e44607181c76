"""The further pages of the desk: holds, the book, people, plates and the scanner check."""

import pytest

from app.calculations.codes import Kind, numbered
from app.documents.proof import read_back
from app.documents.scanner_plate import SCANNER_TEST_TEXTS
from app.lookups.plates import plates_made
from app.lookups.studio import everyone, people, setting
from app.problems import NotFound
from app.store.copies import last_copy
from app.window.benches.desk import back_pages
from app.window.parts.key_button import KeyButton
from app.work.holding import clear, hold
from app.work.matching import find, is_one_of
from app.work.people import enrol
from app.work.studio import choose
from tests.makers import EACH_MG
from tests.window.benches.at_work import DONE, disc
from tests.window.benches.desk_hands import open_desk


@pytest.fixture
def papers(monkeypatch):
    """Papers that were opened, instead of the computer's own reader."""
    opened = []
    monkeypatch.setattr(back_pages, "open_paper", lambda path: opened.append(path) or True)
    return opened


@pytest.fixture
def desk(qtbot, settings, studio, papers):
    yield from open_desk(qtbot, settings, studio)


def cells(table, row):
    return [table.model.index(row, column).data() for column in range(table.model.columnCount())]


def test_only_one_page_is_in_sight_and_its_key_is_dark(desk):
    for key, name in (("F4", "Holds"), ("F5", "Book"), ("F6", "People"), ("F7", "Plates"),
                      ("F3", "In hand")):
        desk.press(key)
        bench = desk.bench
        assert [other for other, page in bench.pages.items() if page.isVisible()] == [name]
        assert [other for other, one in bench.keys.items() if one.isChecked()] == [name]


def test_a_hold_says_what_it_stops_and_is_lifted_from_the_list(desk):
    studio = desk.studio
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 5)
    first = studio.do(hold, "cone", cone, "oil stain")
    studio.do(clear, first, skeins[0], "seen under the lamp")
    desk.press("F4")
    page = desk.bench.back.holds
    assert "Reaches 4 skeins: 4 on the table; 1 cleared." in desk.words(page)
    assert desk.bench.keys["Holds"].accessibleName() == "Holds: 1"
    desk.click(page.rows[0].lift_key)
    desk.scan(DONE)
    assert not desk.trouble
    desk.type("grease from the card")
    desk.scan(DONE)
    assert desk.said == "lifted the hold on cone C·0001·7: grease from the card"
    assert "Nothing is on hold." in desk.words(page)


def test_each_hold_counts_its_own_reach_and_what_stands_for_another_once(desk):
    """A skein that one hold let go is reached by the next; a find is one of those counted."""
    studio = desk.studio
    cone = studio.cone()
    lot, skeins = studio.tagged(cone, 3)
    first = studio.do(hold, "cone", cone, "oil stain")
    studio.do(clear, first, skeins[0], "seen under the lamp")
    studio.do(hold, "lot", lot, "off shade")
    studio.do(is_one_of, studio.do(find, 1, EACH_MG), skeins)
    desk.press("F4")
    words = desk.words(desk.bench.back.holds)
    assert "Reaches 2 skeins: 2 on the table; 1 cleared." in words
    assert "Reaches 3 skeins: 3 on the table." in words
    for who in desk.bench.back.holds.who_keys:
        others = [one for one in who.parent().findChildren(KeyButton) if one is not who]
        assert not any(one.geometry().intersects(who.geometry()) for one in others)


def test_what_is_held_is_one_tap_away(desk):
    cone = desk.studio.cone()
    desk.studio.do(hold, "cone", cone, "oil stain")
    desk.press("F4")
    desk.bench.back.holds.opened.emit(desk.bench.back.holds.rows[0].hold)
    desk.quiet()
    assert desk.name.code.accessibleName() == "C·0001·7"


def test_the_book_says_that_it_agrees(desk):
    desk.press("F5", "F9")
    page = desk.bench.back.book
    entries = desk.studio.last()
    assert page.verdict.text().startswith(f"It agrees: {entries} entries, ")
    assert page.head.accessibleName().startswith("head ")
    assert cells(page.table, 0)[0] == str(entries)
    assert cells(page.table, 0)[4] == "made 2 pot plates"


def test_the_warnings_of_the_day_are_counted_by_person(desk):
    desk.studio.wind(desk.studio.cone(), 20)
    desk.press("F5")
    (row,) = [cells(desk.bench.back.book.warned, n)
              for n in range(desk.bench.back.book.warned.model.rowCount())]
    assert (row[0], row[2]) == ("OW", "1")


def test_a_book_that_was_tampered_with_says_so(desk):
    import sqlite3

    with sqlite3.connect(desk.studio.book.path) as raw:
        raw.execute("UPDATE person SET initials = 'XX'")
    raw.close()
    desk.press("F5", "F9")
    assert "is not what its deeds say" in desk.bench.back.book.verdict.text()


def test_the_journal_shows_what_was_taken_back(desk):
    desk.press("F6")
    desk.bench.back.people.enrolled.emit("DA", "")
    desk.quiet()
    desk.press("F2")
    desk.press("F5")
    table = desk.bench.back.book.table
    assert cells(table, 0)[4] == "took back: enrolled DA"
    assert cells(table, 1)[4:] == ["enrolled DA", "taken back"]


def test_a_copy_is_made_at_a_key_and_told(desk):
    desk.press("F5", "F10")
    copy = last_copy(desk.studio.book.path)
    assert copy is not None
    assert desk.bench.back.book.copied.text().endswith(f"{copy.path.name}.")


def test_someone_begins_and_may_sign(desk):
    desk.press("F6")
    page = desk.bench.back.people
    page.initials.line.setFocus()
    desk.type("lr")
    desk.press("Enter")
    desk.type("Lise")
    desk.press("Enter")
    assert desk.said == "enrolled LR"
    assert [(one.initials, one.name) for one in desk.studio.book.ask(everyone)] == [
        ("LR", "Lise"), ("OW", "Osk Wray")]
    assert "Lise" in desk.words(page)
    assert page.initials.line.text() == ""


def test_wrong_initials_are_told_and_kept(desk):
    desk.press("F6")
    page = desk.bench.back.people
    page.initials.line.setFocus()
    desk.type("toolong")
    desk.click(page.enrol_key)
    assert page.initials.wrong.text().startswith("Initials are one to four letters")
    assert page.initials.line.text() == "toolong"
    page.initials.line.setText("OW")
    desk.click(page.enrol_key)
    assert "OW is taken" in desk.trouble
    assert page.initials.line.text() == "OW"


def test_one_who_left_cannot_sign_and_all_they_did_stays_theirs(desk):
    desk.studio.do(enrol, "LR", "Lise Rask")
    desk.press("F6")
    page = desk.bench.back.people
    desk.click(page.leave_keys["LR"])
    assert desk.said == "LR left"
    assert "left 6 Apr 2026" in desk.words(page)
    assert desk.studio.book.ask(people) == ("OW",)
    with pytest.raises(NotFound, match="Nobody here signs as LR"):
        desk.window.session.sign_on("LR")
    desk.window.floor.sign_on.open("desk")
    desk.window.floor.sign_on.signed.emit("LR", "desk")
    desk.quiet()
    assert "Nobody here signs as LR" in desk.window.floor.sign_on.initials.wrong.text()
    assert desk.window.session.person == "OW"


def test_who_is_signed_on_here_does_not_leave_from_here(desk):
    desk.press("F6")
    key = desk.bench.back.people.leave_keys["OW"]
    assert not key.isEnabled()
    assert "let another sign on first" in key.accessibleDescription()


def test_the_words_of_the_tags_are_shown_kept_and_never_written_over(desk):
    desk.studio.do(choose, {"name": "Quernlow Dyeyard"})
    desk.press("F6")
    card = desk.bench.back.people.studio
    assert card.fields["name"].line.text() == "Quernlow Dyeyard"
    card.fields["address"].line.setFocus()
    desk.type("quay 3")
    desk.studio.do(enrol, "LR")
    desk.quiet()
    assert card.fields["address"].line.text() == "quay 3"
    desk.click(card.keep_key)
    assert desk.said == "chose address"
    assert desk.studio.book.ask(setting, "address") == "quay 3"
    assert desk.studio.book.ask(setting, "name") == "Quernlow Dyeyard"


def test_discs_are_made_with_the_next_numbers_and_their_paper_reads_back(desk, papers, qtbot):
    desk.press("F7")
    page = desk.bench.back.plates
    assert (page.kind, page.first.line.text()) == (Kind.DISC, "51")
    page.count.line.setText("2")
    desk.click(page.make_key)
    qtbot.waitUntil(lambda: len(papers) == 1)
    assert desk.said == "made 2 disc plates"
    made = {one.kind: one for one in desk.studio.book.ask(plates_made)}
    assert made[Kind.DISC].runs == "31 to 52"
    assert page.first.line.text() == "53"
    (page_of_codes,) = read_back(papers[0].read_bytes(), 300)
    assert {found.code for found in page_of_codes} == {disc(51), disc(52)}
    assert papers[0].parent == desk.studio.book.path.with_name("studio plates")


def test_a_taken_number_is_refused_and_what_was_typed_stays(desk, papers):
    desk.press("F7")
    page = desk.bench.back.plates
    page.first.line.setText("40")
    page.count.line.setText("300")
    desk.click(page.make_key)
    assert page.count.wrong.text().startswith("300 plates at once cannot be made.")
    page.count.line.setText("1")
    desk.click(page.make_key)
    assert "There is a disc 040 already" in desk.trouble
    assert page.first.line.text() == "40"
    assert papers == []


def test_pots_with_a_name_are_made_and_put_on_paper_again(desk, papers, qtbot):
    desk.press("F7")
    page = desk.bench.back.plates
    desk.click(page.kinds[Kind.POT])
    page.words.line.setText("by the window")
    desk.click(page.make_key)
    qtbot.waitUntil(lambda: len(papers) == 1)
    row = page._rows.index(Kind.POT)
    page.table.opened.emit(row)
    qtbot.waitUntil(lambda: len(papers) == 2)
    (codes,) = read_back(papers[1].read_bytes(), 300)
    assert numbered(Kind.POT, 3).text in {found.code for found in codes}


def test_the_scanner_check_tells_a_right_scanner_from_a_wrong_layout(desk):
    desk.press("F7")
    check = desk.bench.back.plates.check
    desk.click(check.start_key)
    for text in SCANNER_TEST_TEXTS[:3]:
        desk.scan(text)
    assert check.said.text() == "Right. 1 more to scan."
    desk.scan("ZY-07")
    assert check.said.text().startswith("This scanner types something else than it reads.")
    assert check.states["YZ-07"].text() == (
        "It typed Z for Y, Y for Z: set the scanner to the keyboard layout of this computer.")
    desk.scan("YZ-07")
    assert check.said.text() == "All four came through: this scanner is right."
    assert desk.trouble == ""


def test_a_scanner_as_slow_as_fingers_is_told(desk):
    desk.press("F7")
    check = desk.bench.back.plates.check
    desk.click(check.start_key)
    desk.window.reception.asked("YZ-07")
    assert check.said.text().startswith("Its keys came as slowly as a person's")


def test_after_the_check_scans_are_scans_again(desk):
    desk.press("F7")
    check = desk.bench.back.plates.check
    desk.click(check.start_key)
    desk.press("F3")
    assert not check.open
    desk.scan(disc(31))
    assert desk.name.code.accessibleName() == "D·031·W"
