import pytest

from app.calculations.codes import Kind
from app.lookups.weigh_sources import stock_now
from app.window.benches.weighing.for_stock import ForStock
from app.work.bundling import make_plates
from app.work.recipes import ComponentIn
from tests.dyehouse import ACID, BLUE
from tests.window.benches.weighing_hands import (
    begin_602,
    begin_weighing_bench,
    jar,
    out,
    shown,
    vessel,
)

PALE = ComponentIn("K1 black", "owf", 200)
VINEGAR = ComponentIn("acetic acid", "owf", 15_000, "assistant", "5 % vinegar")
SALT = ComponentIn("sodium sulphate", "owf", 113_400, "assistant", "crystals")


@pytest.fixture
def pale(qtbot, settings, studio):
    """A recipe with so little black that a balance of 0.01 g cannot weigh it for 602 g."""
    for bench in begin_weighing_bench(qtbot, settings, studio, (PALE, BLUE)):
        begin_602(bench)
        yield bench


@pytest.fixture
def helped(qtbot, settings, studio):
    """A recipe with acid, vinegar and salt."""
    for bench in begin_weighing_bench(qtbot, settings, studio, (ACID, VINEGAR, SALT)):
        begin_602(bench)
        yield bench


def test_below_the_balances_least_the_rule_is_named_and_the_stock_in_its_place(pale):
    words = pale.bench.hand.cup.way.text()
    assert words == ("0.12 g is less than 0.5 g, the least on a balance that reads to 0.01 g "
                     "(common practice: one step is 2 % of it). Weigh 0.5 g and make it up to "
                     "25 mL: 2 % stock. Take 6 mL of 2 % stock.")


def test_powder_below_the_balances_least_is_refused(pale):
    pale.scan(jar(3))
    assert "K1 black is not weighed on this balance" in pale.trouble
    assert "Take 6 mL of 2 % stock." in pale.trouble
    assert out(pale).lines == ()
    pale.scan(jar(1))
    assert len(out(pale).lines) == 1


def test_the_stock_is_made_in_place_and_then_poured(pale):
    pale.press("Enter")
    assert isinstance(pale.bench.hand, ForStock)
    assert shown(pale)[:2] == ("K1 black", "0.50")
    pale.scan(jar(1))
    assert "the stock is made of K1 black" in pale.trouble
    pale.scan(jar(3))
    pale.type("0.5")
    pale.press("Enter")
    assert pale.bench.hand.volume.line.text() == "25"
    pale.studio.do(make_plates, Kind.VESSEL, [7])
    pale.scan(vessel(7))
    assert "will stand in U·007" in pale.note
    pale.press("Enter")
    assert pale.studio.book.ask(stock_now, 1).mg_per_l == 20_000
    assert pale.studio.book.ask(stock_now, 1).plate
    assert shown(pale)[:2] == ("K1 black", "6")
    assert pale.bench.hand.cup.plate.accessibleName() == "2 % stock"
    assert "Take 6 mL of 2 % stock." in pale.bench.hand.cup.way.text()
    pale.scan(vessel(7))
    assert shown(pale)[:2] == ("K1 black", "6")
    pale.type("6 mL")
    pale.press("Enter")
    assert [(line.stock, line.ul) for line in out(pale).lines] == [(1, 6_000)]
    assert shown(pale)[0] == "B1 turquoise"


def test_a_finer_balance_may_weigh_it(pale):
    pale.press("F8", "F7")
    assert "0.001 g" in pale.bench.hand.step.accessibleName()
    pale.bench.hand.count(1)
    pale.quiet()
    pale.scan(jar(3))
    assert shown(pale)[:2] == ("K1 black", "0.120")


def test_assistants_name_their_form_and_are_weighed_without_a_jar(helped):
    assert shown(helped)[:2] == ("citric acid", "12.04")
    helped.press("Enter")
    helped.type("12")
    helped.press("Enter")
    assert shown(helped)[:2] == ("acetic acid", "180.6")
    assert helped.bench.hand.cup.plate.accessibleName() == "5 % vinegar"
    assert helped.bench.hand.cup.unit.text() == "mL wanted"
    helped.press("Enter")
    helped.type("180")
    helped.press("Enter")
    assert shown(helped)[:2] == ("sodium sulphate", "68.27")
    assert helped.bench.hand.cup.plate.accessibleName() == "crystals"
    assert [(line.mg, line.ul) for line in out(helped).lines] == [(12_000, None), (None, 180_000)]
