from dataclasses import replace
from pathlib import Path

import pytest

from app.lookups.pots import recipes
from app.lookups.recipe_amounts import amounts
from app.lookups.recipes import recipe_then, versions
from app.problems import BadInput
from app.window.benches.weighing.notebook_page import NotebookPage
from app.window.benches.weighing.recipe_draft import read_component, read_ratio
from app.window.benches.weighing.start import Start
from tests.window.benches.weighing_hands import begin_weighing_bench

NOTEBOOK = """Colourway,What goes in,Amount %
Ferry Ledger,N1 navy,0.40
,K1 black,0.04
"""


@pytest.fixture
def bench(qtbot, settings, studio):
    """At the bench, with recipes to write."""
    yield from begin_weighing_bench(qtbot, settings, studio)


def written(bench, colourway):
    """(version, amounts) of a colourway's newest recipe."""
    newest = next(one for one in bench.studio.book.ask(recipes) if one.colourway == colourway)
    return newest.number, [(one.named, one.words)
                           for one in bench.studio.book.ask(amounts, newest.version)]


def add(bench, substance, amount, unit=""):
    """One row, three fields."""
    bench.press(*substance, "Tab", *amount, "Tab", *unit, "Enter")


def test_a_recipe_is_written_three_fields_at_a_time(bench):
    bench.press("F6", *"Moth", "F6")
    add(bench, "N1 navy", "0.4", "%")
    add(bench, "citric acid", "2")
    bench.bench.hand.unit.clear()
    add(bench, "levelling agent", "1.5", "g/L")
    bench.press("F9")
    assert written(bench, "Moth") == (1, [
        ("N1 navy", "0.4 %"), ("citric acid", "2 %"), ("levelling agent", "1.5 g/L")])
    newest = next(one for one in bench.studio.book.ask(recipes) if one.colourway == "Moth")
    assert [one.role for one in bench.studio.book.ask(recipe_then, newest.version).components
            ] == ["dye", "assistant", "assistant"]


def test_a_recipe_that_was_used_becomes_the_next_version_with_a_reason(bench):
    bench.house.weighed()
    bench.press("F6", *"sluice", "Enter")
    add(bench, "Y1 lemon", "0.25")
    bench.press("F9")
    assert "written already; nothing was saved" in bench.trouble
    bench.bench.hand.reason.setFocus()
    bench.press(*"warmer", "F9")
    assert written(bench, "Sluice Keeper's Glove")[0] == 2
    assert bench.bench.hand.changed.text() == "What changed: Y1 lemon 0.22 → 0.25 %."
    second, first = bench.studio.book.ask(versions, 1)
    assert (first.frozen, second.reason) == (True, "warmer")
    assert ("Y1 lemon", "0.22 %") in [
        (one.named, one.words) for one in bench.studio.book.ask(amounts, first.version)]


def test_a_recipe_nothing_was_dyed_by_is_put_right_without_a_reason(bench):
    bench.press("F6", *"sluice", "Enter")
    assert "Nothing was dyed by it yet" in bench.bench.hand.unused.text()
    add(bench, "Y1 lemon", "0.25")
    bench.press("F9")
    assert written(bench, "Sluice Keeper's Glove")[0] == 1
    assert ("Y1 lemon", "0.25 %") in written(bench, "Sluice Keeper's Glove")[1]


def test_four_lots_keep_what_they_were_dyed_by_and_the_next_version_says_what_changed(bench):
    for _ in range(4):
        bench.house.dye(bench.house.weighed())
    bench.press("F6", *"sluice", "Enter")
    add(bench, "Y1 lemon", "0.25")
    bench.bench.hand.reason.setFocus()
    bench.press(*"a bit more yellow", "F9")
    second, first = bench.studio.book.ask(versions, 1)
    assert (len(first.lots), second.lots) == (4, ())
    shown = {one.number: {a.named: a.words for a in bench.studio.book.ask(
        amounts, one.version)} for one in (first, second)}
    assert (shown[1]["Y1 lemon"], shown[2]["Y1 lemon"]) == ("0.22 %", "0.25 %")
    assert bench.bench.hand.changed.text() == "What changed: Y1 lemon 0.22 → 0.25 %."
    bench.bench.hand.colourways.line.clear()
    bench.press(*"sluice", "Enter")
    lines = bench.bench.hand.history.lines
    assert lines[0].endswith(": Y1 lemon 0.22 → 0.25 %.")
    assert lines[1:3] == ["Why: a bit more yellow. B1 turquoise 0.85 %, Y1 lemon 0.25 %, K1 black "
                          "0.1 %.", "Nothing was dyed by it yet."]
    assert lines[4] == "B1 turquoise 0.85 %, Y1 lemon 0.22 %, K1 black 0.1 %."
    assert lines[5] == f"Dyed by it: 4 lots, {', '.join(first.lots)}."


def test_a_zone_that_is_changed_keeps_its_colour(bench):
    bench.press("F6", *"Moth", "F6", "F4", "A", "Tab", *"40", "Tab", *"60", "Enter")
    looks = bench.bench.hand.looks
    looks.show_rows([replace(looks.rows[0], swatch="#9FC4CF")])
    looks.table.opened.emit(0)
    looks.ml.line.setText("55")
    looks.letter.setFocus()
    bench.press("Enter")
    assert (looks.rows[0].ml_per_100_g, looks.rows[0].swatch) == (55, "#9FC4CF")


def test_the_form_of_an_assistant_is_asked_for(bench):
    bench.press("F6", *"sluice", "Enter")
    add(bench, "sodium sulphate", "5")
    assert "anhydrous or crystals: 1 g of the one is 2.27 g" in bench.bench.hand.doubt.text()
    add(bench, "sodium sulphate (crystals)", "11.3")
    assert bench.bench.hand.doubt.text().count("crystals") == 0


def test_steps_are_written_with_heat_and_minutes_and_go_on_into_the_next(bench):
    bench.press("F6", *"Moth", "F6")
    add(bench, "N1 navy", "0.4", "%")
    bench.press("F3", *"heat up slowly", "Tab", *"85", "Tab", *"46", "Enter")
    bench.press(*"hold", "Tab", "Tab", *"40", "Enter")
    assert bench.bench.hand.steps.table._rows == [
        ("heat up slowly", "85", "46"), ("hold", "", "40")]
    bench.press(*"boil it", "Tab", *"140", "Enter")
    assert "140 °C is no heat of a bath." in bench.trouble
    assert bench.bench.hand.steps.what.line.text() == "boil it"
    bench.press("F3", "F9")
    newest = next(one for one in bench.studio.book.ask(recipes) if one.colourway == "Moth")
    then = bench.studio.book.ask(recipe_then, newest.version)
    assert [(one.words, one.decidegrees, one.minutes) for one in then.steps] == [
        ("heat up slowly", 850, 46), ("hold", None, 40)]


def test_zones_are_written_with_their_room_and_their_bottles(bench):
    bench.press("F6", *"Late Bus", "F6", "F4")
    for letter, part, ml in (("A", "40", "60"), ("B", "30", "45"), ("C", "20", "30"),
                             ("D", "10", "12")):
        bench.press(*letter, "Tab", *part, "Tab", *ml, "Enter")
    looks = bench.bench.hand.looks
    assert looks.room.text() == (
        "147 mL are laid on 100 g; spun to 80 % it has room for 140 mL. 7 mL would puddle: spin "
        "it harder, or make a bottle stronger.")
    looks.fibre.line.setText("wool")
    bench.press("F4")
    for letter, strength in (("A", "0.5"), ("B", "1"), ("C", "0.25"), ("D", "2")):
        bench.bench.hand.unit.clear()
        add(bench, "N1 navy", strength, f"% in {letter}")
    bench.press("F9")
    newest = next(one for one in bench.studio.book.ask(recipes) if one.colourway == "Late Bus")
    then = bench.studio.book.ask(recipe_then, newest.version)
    assert (then.look, then.base_class) == ("zones", "wool")
    assert [(zone.letter, zone.share_permille, zone.ml_per_100_g) for zone in then.zones] == [
        ("A", 400, 60), ("B", 300, 45), ("C", 200, 30), ("D", 100, 12)]
    assert [one.zone for one in then.components] == ["A", "B", "C", "D"]


def test_a_row_is_poured_earlier(bench):
    bench.press("F6", *"sluice", "Enter")
    before = [one.substance for one in bench.bench.hand.rows]
    bench.bench.hand.table.opened.emit(2)
    bench.press("F10")
    assert [one.substance for one in bench.bench.hand.rows] == [before[0], before[2], before[1]]


def test_a_zone_that_cannot_be_is_said_and_kept_as_typed(bench):
    bench.press("F6", *"Moth", "F6", "F4", *"AB", "Tab", *"40", "Tab", *"60", "Enter")
    assert "is no letter of a zone" in bench.trouble
    assert bench.bench.hand.looks.letter.line.text() == "AB"
    bench.press("F7")
    assert bench.bench.hand.looks.rows == []


def test_what_looks_odd_is_said_and_not_refused(bench):
    bench.press("F6", *"sluice", "Enter")
    add(bench, "Y1 lemon", "22")
    assert "All dyes together are" in bench.bench.hand.doubt.text()


def test_a_row_comes_back_into_its_fields_and_may_be_taken_out(bench):
    bench.press("F6", *"sluice", "Enter")
    bench.bench.hand.table.opened.emit(1)
    assert bench.bench.hand.amount.line.text() == "0.22"
    bench.press("F7")
    assert [one.substance for one in bench.bench.hand.rows] == ["B1 turquoise", "K1 black"]


@pytest.mark.parametrize(("said", "why"), [
    (("", "1", "%"), "Nobody said what it is."), (("acid", "much", "%"), "is no amount"),
    (("acid", "0", "%"), "more than nothing"), (("acid", "1", "% in A"), "is no unit")])
def test_a_row_that_cannot_be_read_says_what_is_wrong(said, why):
    with pytest.raises(BadInput, match=why):
        read_component(*said, (), ())


def test_a_row_is_read_with_its_form_and_its_zone():
    salt = read_component("sodium sulphate (crystals)", "11.34", "%", (), ())
    assert (salt.substance, salt.form, salt.amount, salt.role) == (
        "sodium sulphate", "crystals", 113_400, "assistant")
    painted = read_component("N1 navy", "0.5", "% in a", ("n1 navy",), ("A",))
    assert (painted.unit, painted.zone, painted.amount) == ("bottle", "A", 5_000)
    assert [read_ratio(said) for said in ("", "20", "20 : 1", "12,5:1")] == [None, 200, 200, 125]


def test_a_notebook_is_looked_at_its_column_named_once_and_taken_in(bench, tmp_path: Path):
    path = tmp_path / "notebook.csv"
    path.write_text(NOTEBOOK, encoding="utf-8")
    bench.bench.take_file(path)
    bench.quiet()
    page = bench.bench.hand
    assert isinstance(page, NotebookPage)
    bench.click(page.columns.keys["substance", "What goes in"])
    assert page.table._rows == [("Ferry Ledger", "2", "a new colourway")]
    bench.press("Enter")
    assert isinstance(bench.bench.hand, Start)
    assert written(bench, "Ferry Ledger") == (1, [("N1 navy", "0.4 %"), ("K1 black", "0.04 %")])
    bench.bench.take_file(path)
    bench.quiet()
    assert bench.bench.hand.table._rows == [("Ferry Ledger", "2", "in the book already")]
    assert "settled before" in bench.bench.hand.notes.text()
