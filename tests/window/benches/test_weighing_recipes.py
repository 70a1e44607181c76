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
