from contextlib import closing

import pytest
from pypdfium2 import PdfDocument

from app.calculations.codes import Kind, numbered
from app.window.benches.weighing.at_the_balance import AtTheBalance
from app.window.benches.weighing.start import Start
from app.window.parts.words import Words
from tests.window.benches.at_work import DONE, disc, plate
from tests.window.benches.weighing_hands import (
    balance_types,
    begin_602,
    begin_weighing_bench,
    jar,
    out,
    shown,
    wait_a_while,
    weigh,
)


@pytest.fixture
def bench(qtbot, settings, studio):
    """At the weigh bench."""
    yield from begin_weighing_bench(qtbot, settings, studio)


def test_by_keys_alone_from_the_weight_to_a_closed_weigh_out(bench):
    begin_602(bench)
    assert shown(bench)[:2] == ("B1 turquoise", "5.12")
    bench.press("Escape")
    bench.type("1")
    bench.press("Enter")
    bench.type("5.12")
    assert shown(bench) == ("B1 turquoise", "5.12", "5.12", "GOOD")
    bench.press("Enter")
    assert shown(bench)[:2] == ("Y1 lemon", "1.32")
    assert [(line.mg, line.target_mg) for line in out(bench).lines] == [(5120, 5117)]
    for number, grams in ((2, "1.33"), (3, "0.6")):
        bench.press("Escape", *str(number), "Enter", *grams, "Enter")
    assert shown(bench)[0] == "All is in."
    bench.press("Enter")
    assert isinstance(bench.bench.hand, Start)
    assert bench.house.out(1).closed
    assert bench.house.out(1).missing == ()


def test_the_word_changes_with_what_is_in_the_cup(bench):
    begin_602(bench)
    bench.scan(jar(1))
    for typed, word in (("5.01", "TOO LITTLE"), ("5.02", "GOOD"), ("5.21", "GOOD"),
                        ("5.22", "TOO MUCH")):
        bench.bench.hand.cup.field.line.clear()
        bench.type(typed)
        assert shown(bench)[3] == word
    assert bench.bench.hand.cup.bar.accessibleName().endswith("good from 5.02 to 5.21")


def test_a_wrong_jar_is_refused_loudly_before_anything_is_weighed(bench):
    begin_602(bench)
    bench.scan(jar(4))
    assert shown(bench)[3] == "WRONG JAR"
    assert "holds N1 navy, and B1 turquoise is asked" in bench.trouble
    assert "Take jar 1, or scan this one again" in bench.trouble
    assert out(bench).lines == ()
    bench.scan(jar(1))
    assert not bench.trouble
    assert [line.kind for line in out(bench).lines] == ["taken"]


def test_a_wrong_jar_scanned_again_is_taken_instead_and_said_to_be_off_the_recipe(bench):
    begin_602(bench)
    bench.bounce(jar(4))
    assert out(bench).lines == ()
    assert "scanned twice and taken once" in bench.note
    wait_a_while()
    bench.scan(jar(4))
    (line,) = out(bench).lines
    assert (line.kind, line.asked, line.source) == (
        "instead of", "B1 turquoise", "jar 4, fill 1")
    assert any("off its recipe" in sentence for sentence in bench.found)
    bench.type("5.1")
    bench.press("Enter")
    assert shown(bench)[0] == "Y1 lemon"


def test_a_jar_that_was_weighed_already_is_not_weighed_again_by_mistake(bench):
    begin_602(bench)
    weigh(bench, 1, "5.12")
    bench.scan(jar(1))
    assert "B1 turquoise was weighed already" in bench.trouble
    assert "Take jar 2 for Y1 lemon" in bench.trouble
    assert len(out(bench).lines) == 1
    bench.scan(jar(1))
    assert len(out(bench).lines) == 2


def test_a_balance_that_types_lands_in_the_weight_and_is_taken_once(bench):
    begin_602(bench)
    bench.scan(jar(1))
    balance_types(bench, "5.12 g")
    balance_types(bench, "5.12 g")
    assert [line.mg for line in out(bench).lines] == [5120]
    assert shown(bench)[0] == "Y1 lemon"
    bench.scan(jar(2))
    balance_types(bench, "1.3")
    assert [line.mg for line in out(bench).lines] == [5120, 1300]


def test_a_slipped_point_is_asked_about_once_and_taken_if_it_is_meant(bench):
    begin_602(bench)
    bench.scan(jar(1))
    bench.type("51.17")
    bench.press("Enter")
    assert "51.17 g, where 5.12 g is asked: is the point in its place?" in bench.trouble
    assert out(bench).lines[0].mg is None
    bench.type("5.117")
    bench.press("Enter")
    assert out(bench).lines[0].mg == 5_117
    bench.scan(jar(2))
    bench.type("0.1")
    bench.press("Enter")
    bench.press("Enter")
    assert out(bench).lines[1].mg == 100


def test_done_takes_the_weight_and_undo_gives_the_cup_back(bench):
    begin_602(bench)
    bench.scan(jar(1))
    bench.scan(DONE)
    assert "Nothing is written here yet" in bench.bench.hand.cup.field.wrong.text()
    bench.type("5.1")
    bench.scan(DONE)
    assert [line.mg for line in out(bench).lines] == [5100]
    bench.press("F2")
    assert out(bench).lines[0].is_open
    assert bench.bench.hand.cup.field.isVisible()


def test_what_is_too_much_goes_back_to_its_jar_as_a_line_of_its_own(bench):
    begin_602(bench)
    weigh(bench, 1, "5.5")
    bench.press("F6")
    assert bench.bench.hand.cup.fetch.text() == "goes back to"
    bench.type("0.4")
    bench.press("Enter")
    assert [(line.kind, line.mg) for line in out(bench).lines] == [
        ("taken", 5500), ("tipped back", -400)]
    assert bench.house.jar(1).used_mg == 5100
    assert shown(bench)[0] == "Y1 lemon"


def test_another_line_may_come_first_and_a_weigh_out_may_be_closed_as_it_is(bench):
    begin_602(bench)
    bench.press("F4")
    assert shown(bench)[0] == "Y1 lemon"
    weigh(bench, 3, "0.6")
    bench.press("F9")
    assert any("Not weighed: B1 turquoise, Y1 lemon." in one for one in bench.found)
    assert bench.house.out(1).closed


def test_cautions_stand_where_weighing_begins_and_defer_to_the_makers_sheets(bench):
    words = " ".join(one.text() for one in bench.bench.hand.findChildren(Words))
    assert "Do not breathe dye powder" in words
    assert "safety data sheets and your local rules come before" in words


def test_discs_give_the_dry_weight_from_winding_and_their_yarn(bench):
    rows = [bench.studio.wind(bench.studio.cone(), count, disc=bench.studio.discs[n])
            for n, count in enumerate((3, 4))]
    bench.scan(disc(31), disc(32), disc(31))
    assert bench.bench.hand.dry.text() == "721.875 g dry from winding"
    assert "is in already" in bench.note
    bench.scan(plate(1), DONE)
    assert out(bench).yarn == tuple(rows)
    assert out(bench).dry_basis == "wound"
    assert "dry from winding" in bench.bench.hand.head.facts.text()


def test_a_damp_weight_is_a_fallback_and_says_so_with_its_range(bench):
    bench.type("1083")
    bench.press("Tab")
    bench.type("80")
    bench.press("Enter")
    assert bench.bench.hand.dry.text().endswith("damp: a fallback")
    bench.type("sluice")
    bench.press("Enter", "Enter")
    assert "601.7 g dry, reckoned from damp at 80 % pick-up (585 to 619 g)" in (
        bench.bench.hand.head.facts.text())


def test_nothing_begins_without_yarn_and_colourway_and_it_says_why(bench):
    assert "Scan the discs, or write a weight." in (
        bench.bench.hand.begin.accessibleDescription())
    bench.scan(DONE)
    assert "No colourway is chosen yet" in bench.trouble


def test_an_open_weigh_out_is_put_away_and_taken_up_again(bench):
    begin_602(bench)
    weigh(bench, 1, "5.12")
    bench.press("F8")
    assert bench.bench.hand.waiting._rows[0][1:3] == (
        "Sluice Keeper's Glove, version 1", "1 taken")
    bench.scan(plate(1))
    assert isinstance(bench.bench.hand, AtTheBalance)
    assert shown(bench)[0] == "Y1 lemon"


def test_the_sheet_of_a_weigh_out_goes_on_paper_beside_the_book(bench, monkeypatch):
    opened = []
    monkeypatch.setattr("app.window.papers.open_paper", opened.append)
    begin_602(bench)
    bench.press("F3")
    bench._qtbot.waitUntil(lambda: bench.note.startswith("The sheet is"))
    (paper,) = opened
    with closing(PdfDocument(paper)) as document:
        text = document[0].get_textpage().get_text_bounded()
    assert "602" in text
    assert "B1 turquoise" in text
    assert paper.parent == bench.studio.book.path.with_name("studio weigh-outs")


def test_the_code_on_its_sheet_takes_a_weigh_out_up_and_a_lots_code_chooses_its_colourway(bench):
    begin_602(bench)
    sheet = numbered(Kind.SHEET, out(bench).id).text
    bench.scan(jar(1), sheet)
    assert "B1 turquoise stands on the balance" in bench.trouble
    bench.type("5.12")
    bench.press("Enter", "F8")
    bench.scan(sheet)
    assert shown(bench)[0] == "Y1 lemon"
    bench.press("F9")
    bench.scan(sheet)
    assert "is closed: Sluice Keeper's Glove, version 1" in bench.trouble
    bench.scan(numbered(Kind.SHEET, 99).text)
    assert "not in this book" in bench.trouble
    bench.scan(bench.studio.code(bench.house.dye()))
    assert bench.bench.hand.recipe.colourway == "Sluice Keeper's Glove"
    assert "chosen in version 1" in bench.note
