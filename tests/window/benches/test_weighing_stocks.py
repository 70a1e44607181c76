"""Stocks made in the window, and what was weighed for bottles put into them."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.stocks import stocks_on_shelf
from app.lookups.trays import trays_now
from app.lookups.weighings import weigh_out
from app.window.benches.weighing.bottles_page import BottlesPage
from app.window.benches.weighing.start import Start
from app.window.benches.weighing.stock_words import read_life
from app.window.benches.weighing.stocks_page import StocksPage
from app.work.bundling import make_plates
from app.work.recipes import ComponentIn, ZoneIn
from tests.lookups.waters import recipe_of
from tests.window.benches.weighing_hands import begin_weighing_bench, jar, vessel

ZONES = (ZoneIn("A", 600, 60, "sky"), ZoneIn("B", 400, 45))
POURED = (ComponentIn("B1 turquoise", "bottle", 5_000, zone="A"),
          ComponentIn("Y1 lemon", "bottle", 10_000, zone="B"))


@pytest.fixture
def bench(qtbot, settings, studio):
    """Before the stocks; Half-Tide Steps is painted from two bottles."""
    recipe_of(studio, "Half-Tide Steps", POURED, look="zones", zones=ZONES)
    studio.do(make_plates, Kind.VESSEL, [7, 8])
    yield from begin_weighing_bench(qtbot, settings, studio)


def rows(bench):
    """What the list says: bottle, dye, strength, left, and whether it keeps."""
    return [(*row[:4], row[5].startswith("past ")) for row in bench.bench.hand.table._rows]


def make(bench, grams, ml, bottle):
    """A stock of jar 1 that stands in this bottle."""
    bench.press("F9")
    bench.scan(jar(1))
    bench.type(grams)
    bench.press("Enter", *ml)
    bench.scan(vessel(bottle))


def test_a_stock_is_made_of_powder_and_says_its_strength_before_it_is_kept(bench):
    bench.press("F9")
    assert "No stock stands ready" in bench.bench.hand.table._none.text()
    make(bench, "10.2", "1000", 7)
    assert bench.bench.hand.aloud.text() == "1.02 % w/v: 10.2 g in a litre."
    assert bench.bench.hand.cup.wanted.accessibleName() == "1.02 %"
    assert bench.bench.hand.life.line.text() == "180"
    bench.press("Enter")
    assert isinstance(bench.bench.hand, StocksPage)
    assert rows(bench) == [("7", "B1 turquoise", "1.02 % w/v", "1000 mL", False)]
    assert bench.bench.hand.table._rows[0][4:] == ("of today", "3 Oct 2026", "jar 1, fill 1")
    assert bench.said == "made 1 L of 1.02 % stock from jar 1, fill 1"


def test_a_stock_is_diluted_from_another_with_a_life_of_its_own(bench):
    bench.press("F9")
    make(bench, "10", "1000", 7)
    bench.press("Enter", "F9")
    bench.scan(vessel(7))
    bench.type("100")
    bench.press("Enter", *"1000")
    assert bench.bench.hand.aloud.text() == "0.1 % w/v: 1 g in a litre."
    bench.scan(vessel(8))
    bench.bench.hand.life.line.setText("never")
    bench.press("Enter")
    assert "“never” is not a number." in bench.bench.hand.life.wrong.text()
    bench.bench.hand.life.line.setText("7 days")
    bench.press("Enter")
    assert rows(bench) == [
        ("8", "B1 turquoise", "0.1 % w/v", "1000 mL", False),
        ("7", "B1 turquoise", "1 % w/v", "900 mL", False)]
    assert [one.life_days for one in bench.studio.book.ask(stocks_on_shelf)] == [7, 180]
    bench.studio.clock.now += timedelta(days=8)
    bench.bench.hand.look()
    bench.quiet()
    assert [row[4] for row in rows(bench)] == [True, False]


def test_a_life_is_read_in_days_or_left_open():
    assert [read_life(said) for said in ("", "7", "180 days", "1 day")] == [None, 7, 180, 1]


def weigh_for_bottles(bench):
    """800 g are weighed for, and the weigh-out is closed as it is."""
    bench.type("800")
    bench.bench.hand.setFocus()
    bench.type("half")
    bench.press("Enter", "Enter", "F9")


def test_what_was_weighed_for_bottles_becomes_a_set_and_a_refill_the_next(bench):
    weigh_for_bottles(bench)
    page = bench.bench.hand
    assert isinstance(page, BottlesPage)
    assert page.so.text() == ("It will be set 1. What is painted from it and steamed in one run "
                              "is one lot.")
    assert not page.again["A"].isVisible()
    bench.press("Enter")
    assert isinstance(bench.bench.hand, Start)
    assert bench.said == "filled bottle set 1 of Half-Tide Steps"
    weigh_for_bottles(bench)
    page = bench.bench.hand
    assert "only one bottle of set 1 was filled again" in page.so.text()
    bench.click(page.again["B"])
    assert bench.said == "filled bottle B again: set 2 of Half-Tide Steps"
    (newest,) = bench.studio.book.ask(trays_now).bottles
    assert (newest.number, newest.refilled, newest.known) == (2, "B", True)
    assert not bench.studio.book.ask(trays_now).weighed


def test_left_for_later_the_weigh_out_waits_for_the_boards(bench):
    weigh_for_bottles(bench)
    bench.press("F8")
    assert isinstance(bench.bench.hand, Start)
    assert bench.studio.book.ask(weigh_out, 1).closed
    assert list(bench.studio.book.ask(trays_now).weighed.values()) == [1]
