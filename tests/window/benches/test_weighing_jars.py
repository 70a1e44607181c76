import pytest

from app.calculations.codes import Kind, numbered
from app.calculations.moments import day_words
from app.lookups.jars import jar_with
from app.window.benches.weighing.jars_page import JarsPage
from app.window.benches.weighing.start import Start
from app.work.jars import set_reorder, weigh_jar
from tests.window.benches.weighing_hands import balance_types, begin_weighing_bench, jar


@pytest.fixture
def bench(qtbot, settings, studio):
    """Before the jars."""
    yield from begin_weighing_bench(qtbot, settings, studio)


def row(bench, number):
    """What the list says of a jar: left, strength, made of, what to look at."""
    found = next(row for row in bench.bench.hand.table._rows if row[0] == str(number))
    return found[2], found[3], found[4], found[6]


def test_a_jar_is_refilled_with_one_scan_and_its_grams(bench):
    bench.house.take(bench.house.begin(), bench.house.fills[1], 360_000)
    bench.scan(jar(1))
    assert isinstance(bench.bench.hand, JarsPage)
    bench.type("500")
    bench.press("Tab", "q", "Enter")
    now = bench.house.jar(1)
    assert now.number == 2
    assert row(bench, 1) == ("640 g", "not known", "22 % p, 78 % q", "")
    assert any("strength of fill 2 is not known" in one for one in bench.found)
    assert [part.said for part in bench.studio.book.ask(jar_with, jar(2)).parts] == ["p"]
    card = bench.bench.hand.card
    assert "How strong is the mixture?" in card.asked.text()
    bench.type("94")
    bench.press("Enter")
    assert row(bench, 1)[:2] == ("640 g", "94 %")


def test_grams_alone_are_a_refill_of_a_lot_that_is_not_stated(bench):
    bench.scan(jar(2))
    balance_types(bench, "500 g")
    bench.press("Enter")
    assert row(bench, 2)[:3] == ("1000 g", "not known", "50 % p, 50 % lot not stated")


def test_what_cannot_be_read_of_a_refill_is_said_and_stays_as_typed(bench):
    bench.scan(jar(1))
    bench.press(*"500", "Tab", "q", "Tab", "Tab", *"31/02/2027", "Enter")
    card = bench.bench.hand.card
    assert "“31/02/2027” is no day." in card.until.wrong.text()
    assert (card.amount.line.text(), card.lot.line.text()) == ("500", "q")
    assert bench.house.jar(1).number == 1
    card.until.line.setText("2026-04")
    bench.press("Enter")
    assert bench.house.jar(1).number == 2
    assert row(bench, 1)[3] == ""


def test_the_weight_to_buy_at_is_set_and_taken_away_again(bench):
    bench.scan(jar(1))
    bench.press("F10", *"450", "Enter")
    assert (bench.house.jar(1).reorder_mg, row(bench, 1)[3]) == (450_000, "buy soon")
    bench.studio.do(set_reorder, 2, 600_000)
    bench.bench.hand.look()
    bench.quiet()
    assert bench.bench.hand.to_look_at.text() == (
        "To look at: jar 1 B1 turquoise, buy soon; jar 2 Y1 lemon, buy more.")
    bench.press("Enter")
    assert bench.house.jar(1).reorder_mg is None
    bench.press("0", "Enter")
    assert "More is bought before nothing is left" in bench.trouble


def test_its_strength_is_told_again(bench):
    bench.scan(jar(1))
    bench.press("F7")
    bench.type("92")
    bench.press("Enter")
    assert row(bench, 1)[1] == "92 %"


def test_a_jar_that_is_weighed_says_its_gap_and_the_pair_names_the_wrong_jar(bench):
    bench.house.weighed(jars=(1, 2, 3))
    bench.studio.do(weigh_jar, 4, 494_883)
    bench.scan(jar(1))
    bench.press("F6")
    balance_types(bench, "500 g")
    bench.press("Enter")
    assert "Weighed 500 g, 5.117 g more than its lines say." in bench.bench.hand.card.gap.text()
    assert bench.bench.hand.swapped.text() == (
        "About 5.1 g came from jar 4 and stands in the book of jar 1, most likely for "
        "weigh-out 1.")


def test_what_must_be_bought_is_said(bench):
    bench.studio.do(set_reorder, 1, 600_000)
    bench.press("F4")
    assert row(bench, 1)[3] == "buy more"


def test_a_new_jar_is_opened_from_its_label(bench):
    bench.press("F4", "F9")
    bench.type("T1 tan")
    bench.press("Tab")
    bench.press(*"Osk Dyes", "Tab", *"77-A", "Tab", *"250", "Tab", *"03/2030", "Enter")
    assert isinstance(bench.bench.hand, JarsPage)
    assert row(bench, 5)[:3] == ("250 g", "not known", "77-A")
    found = bench.studio.book.ask(jar_with, numbered(Kind.JAR, 5).text)
    assert (found.dye, found.parts[0].supplier) == ("T1 tan", "Osk Dyes")
    assert day_words(found.expires) == "31 Mar 2030"
    bench.press("F8")
    assert isinstance(bench.bench.hand, Start)


def test_a_new_jar_without_its_dye_is_not_opened_and_says_why(bench):
    bench.press("F4", "F9", "Enter")
    assert bench.bench.hand.dye.wrong.text() == "Say which dye it is."
