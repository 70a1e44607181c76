"""At the weigh bench with two balances, one of them on a wire: a real pair of terminals."""

from decimal import Decimal
from time import monotonic

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.balances import balances_now
from app.scanning.balance_ear import Sends, Wiring
from app.window.benches.weighing.balances_page import BalancesPage
from app.work.balances import BalanceIn, set_up_balance
from app.work.recipes import ComponentIn
from tests.dyehouse import ACID, BLUE
from tests.window.a_wire import AWire
from tests.window.benches.weighing_hands import (
    balance_types,
    begin_602,
    begin_weighing_bench,
    jar,
    out,
    shown,
)

D = Decimal
KITCHEN = BalanceIn(1, "kitchen balance", D("0.1"), D(3000))
FINE = BalanceIn(3, "fine balance", D("0.01"), D(600))
WHIFF = ComponentIn("citric acid", "owf", 300, "assistant")
DROP = ComponentIn("acetic acid", "owf", 30, "assistant", "5 % vinegar")


def plate(number):
    return numbered(Kind.BALANCE, number).text


@pytest.fixture
def bench(qtbot, settings, studio):
    yield from begin_weighing_bench(qtbot, settings, studio, (BLUE, ACID))


@pytest.fixture
def two(bench):
    for one in (KITCHEN, FINE):
        bench.studio.do(set_up_balance, one)
    begin_602(bench)
    return bench


@pytest.fixture
def little(qtbot, settings, studio):
    studio.do(set_up_balance, FINE)
    for bench in begin_weighing_bench(qtbot, settings, studio, (WHIFF, DROP)):
        begin_602(bench)
        yield bench


@pytest.fixture
def wire():
    made = AWire()
    yield made
    made.unplug()


def wired(bench, wire, **more):
    """A jar stands on the balance that is on the wire."""
    balance = bench.window.balance
    balance.wire(Wiring(wire.port, **more))
    bench._qtbot.wait(150)
    begin_602(bench)
    bench.scan(jar(1))
    return bench.bench.hand.cup


def says(bench, wire, text, wanted):
    wire.say(text)
    bench._qtbot.waitUntil(lambda: bench.bench.hand.cup.cup.accessibleName() == wanted)


def test_the_plate_chooses_the_balance_and_the_line_keeps_it(two):
    cup = two.bench.hand.cup
    two.scan(plate(1))
    assert "not less than 5 g" in two.note
    assert shown(two)[1] == "5.1"
    two.scan(plate(3))
    assert cup.change.accessibleName() == "On fine balance 03"
    two.scan(jar(1))
    two.type("5.12")
    two.press("Enter")
    assert [(line.mg, line.balance) for line in out(two).lines] == [(5120, "fine balance")]
    two.scan(plate(9))
    assert "is no balance in the book" in two.trouble


def test_f7_goes_on_to_the_other_balance_and_it_is_remembered_here(two, settings):
    two.press("F7")
    first = settings.balances.used
    two.press("F7")
    assert {first, settings.balances.used} == {1, 3}


def test_too_little_for_the_kitchen_balance_names_the_fine_one(qtbot, settings, studio):
    pale = ComponentIn("K1 black", "owf", 1_000)
    for bench in begin_weighing_bench(qtbot, settings, studio, (pale,)):
        for one in (KITCHEN, FINE):
            studio.do(set_up_balance, one)
        begin_602(bench)
        bench.scan(plate(1))
        way = bench.bench.hand.cup.way.text()
        assert way.startswith("0.602 g is less than 5 g, the least on kitchen balance 01")
        assert way.endswith("On fine balance 03 it can be weighed.")
        bench.scan(jar(3))
        assert "K1 black is not weighed on this balance" in bench.trouble
        bench.scan(plate(3), jar(3))
        assert shown(bench)[:2] == ("K1 black", "0.60")


def test_more_than_a_balance_carries_goes_onto_another_or_in_parts(qtbot, settings, studio):
    salt = ComponentIn("sodium sulphate", "owf", 1_130_000, "assistant", "crystals")
    for bench in begin_weighing_bench(qtbot, settings, studio, (salt,)):
        studio.do(set_up_balance, FINE)
        begin_602(bench)
        assert bench.bench.hand.cup.way.text() == (
            "680.3 g is more than fine balance 03 carries (600 g, the cup with it): weigh it in "
            "parts, one line after another.")
        studio.do(set_up_balance, KITCHEN)
        bench.scan(plate(3))
        assert bench.bench.hand.cup.way.text().endswith("weigh it on kitchen balance 01.")


def test_too_little_of_an_assistant_is_made_up_and_poured(little):
    """0.18 g of acid by 9 mL of 2 %, and vinegar of 5 % thinned one in ten."""
    cup = little.bench.hand.cup
    assert "0.181 g is less than 0.5 g, the least on fine balance 03" in cup.way.text()
    assert "Weigh 0.5 g and make it up to 25 mL: 2 % stock. Take 9 mL" in cup.way.text()
    little.press("Enter")
    assert [(line.mg, line.why, line.balance) for line in out(little).lines] == [
        (180, "9 mL of 2 %", None)]
    assert "Take 5 mL of the 5 % and make it up to" in cup.way.text()
    little.press("Enter")
    acid = out(little).lines[-1]
    assert abs(acid.ul / D(1000) * 5 / 100 - D(602) * 30 / 1_000_000) < D("0.001")
    assert out(little).missing == ()


def test_the_wires_weight_moves_the_cup_and_enter_takes_it_when_it_stands(bench, wire):
    cup = wired(bench, wire)
    says(bench, wire, "4.00 g\r\n", "4.00")
    assert (shown(bench)[3], cup.cup_words.text()) == ("TOO LITTLE", "still moving")
    bench.press("Enter")
    assert "still moves" in bench.trouble
    assert out(bench).lines[0].is_open
    says(bench, wire, "5.12 g\r\n", "5.12")
    bench._qtbot.waitUntil(lambda: cup.cup_words.text() == "in the cup")
    assert shown(bench)[3] == "GOOD"
    bench.press("Enter")
    assert [line.mg for line in out(bench).lines] == [5120]


def test_the_balances_own_key_takes_the_weight_once(bench, wire):
    wired(bench, wire, sends=Sends.PRINTED)
    wire.say("N  5.12 g\r\n")
    bench._qtbot.waitUntil(lambda: not out(bench).lines[0].is_open)
    bench.quiet()
    assert [line.mg for line in out(bench).lines] == [5120]


def test_unplugged_in_mid_line_nothing_is_lost_and_typing_works_on(bench, wire):
    cup = wired(bench, wire)
    says(bench, wire, "4.00 g\r\n5.1", "4.00")
    wire.unplug()
    bench._qtbot.waitUntil(lambda: "is unplugged" in cup.wire.text())
    assert cup.cup.accessibleName() == "–"
    bench.type("5.12")
    bench.press("Enter")
    assert [line.mg for line in out(bench).lines] == [5120]


def test_garbage_is_no_weight_and_carats_are_a_sentence(bench, wire):
    cup = wired(bench, wire)
    wire.say("\xfe\x81\x00zz\r\xff\xff\r\x80q\r")
    bench._qtbot.waitUntil(lambda: "speed, bits and parity" in cup.wire.text())
    wire.say("25.60 ct\r\n")
    bench._qtbot.waitUntil(lambda: "carats" in cup.wire.text())
    assert cup.cup.accessibleName() == "–"


def test_a_flood_does_not_hold_the_window_up(bench, wire):
    cup = wired(bench, wire)
    longest = 0.0
    for n in range(150):
        wire.say(f"{n / 100:.2f} g\r\n" * 2)
        before = monotonic()
        bench._qtbot.wait(5)
        longest = max(longest, monotonic() - before)
    bench._qtbot.waitUntil(lambda: cup.cup.accessibleName() == "1.49")
    assert longest < 0.25
    bench.type("5.12")
    assert cup.cup.accessibleName() == "5.12"


@pytest.mark.parametrize("typed", ["+  5.12 g", "N   5.12 g"])
def test_a_balance_that_types_lands_in_the_weight_whatever_has_the_focus(bench, typed):
    begin_602(bench)
    bench.scan(jar(1))
    bench.window.head.scan_line.setFocus()
    balance_types(bench, typed)
    assert [line.mg for line in out(bench).lines] == [5120]


def test_a_balance_that_types_never_lands_in_words_that_are_being_written(bench):
    bench.press("F5")
    page = bench.bench.hand
    page.name.setFocus()
    bench.type("fi")
    balance_types(bench, "1001.005")
    assert page.name.line.text() == "fi"
    assert "No weight is wanted here now; 1001.005 was not taken" in bench.trouble


def test_typed_carats_and_a_pan_below_zero_are_said(bench):
    begin_602(bench)
    bench.scan(jar(1))
    balance_types(bench, "25.60 ct")
    assert "carats" in bench.trouble
    balance_types(bench, "- 0.03 g")
    assert "below zero" in bench.trouble
    assert out(bench).lines[0].is_open


def test_a_balance_is_set_up_and_the_rule_chosen_by_keys(bench):
    bench.press("F5")
    page = bench.bench.hand
    assert isinstance(page, BalancesPage)
    page.name.line.setText("fine balance")
    page.step.line.setText("0.01 g")
    page.most.line.setText("600")
    bench.press("Enter")
    (one,) = bench.studio.book.ask(balances_now)
    assert (one.title, one.facts.minimum_g) == ("fine balance 01", D("0.5"))
    bench.press("F7")
    (one,) = bench.studio.book.ask(balances_now)
    assert one.facts.minimum_g == D("8.2")
    assert "USP General Chapter 41" in page.by_rule.text()


def test_the_page_of_the_balances_shows_what_arrives(bench, wire):
    bench.press("F5")
    card = bench.bench.hand.wire
    card.port.line.setText(wire.port)
    card.speed.line.setText("4")
    bench.press("F9")
    assert "no speed of a wire" in card.speed.wrong.text()
    card.speed.line.setText("9600")
    bench.press("F6", "F6", "F6", "F9")
    bench._qtbot.wait(150)
    wire.say("+ 5.12 g\r\nnonsense\r\n")
    bench._qtbot.waitUntil(lambda: "nonsense" in card.lines.text())
    assert card.says.text().startswith("5.12 g")
