"""A put-up is weighed at the tag table, without accusing the winder of the weather."""

import json

import pytest

from app.calculations.codes import shown
from app.lookups.printed import TIED_ON, VOID, WAITING, worn_by
from app.lookups.skeins import now_of
from app.scanning.balance_ear import Wiring
from app.window.benches.tagging.choosing import Choosing
from app.window.benches.tagging.weigh_card import WeighCard
from app.work.put_up_weights import read_humidity, weigh_reference
from tests.calculations.test_put_up_weight import THIRTEEN
from tests.window.a_wire import AWire
from tests.window.benches.at_work import DONE, SECONDS, begin_work, disc
from tests.window.benches.tag_table_hands import (
    add_up,
    eleven_on_the_table,
    in_hand,
    pile_of,
    tags,
)


@pytest.fixture
def table(qtbot, settings, studio, opened):
    """Eleven skeins on disc 031 are in hand, their tags are printed."""
    studio.pile = eleven_on_the_table(studio)
    for at_work in begin_work(qtbot, settings, studio, 7):
        at_work.scan(disc(31), DONE)
        yield at_work


def card(table):
    assert isinstance(in_hand(table).aside, WeighCard)
    return in_hand(table).aside


def write(table, field, text):
    field.line.setFocus()
    field.line.clear()
    table.type(text)


def verdict(table):
    return card(table).verdict.accessibleName()


def first(table, state):
    return tags(table, table.studio.pile, state)[0]


def kept(table):
    return table.studio.book.ask(lambda c: [tuple(row) for row in c.exec_driver_sql(
        "SELECT yarn, mg, regain_permille, regain_from, sell_as_mg FROM put_up_weight "
        "WHERE struck IS NULL ORDER BY id")])


def test_one_reading_passes_in_the_heated_shop_and_is_light_in_the_wet_autumn(table):
    pile = table.studio.pile
    table.press("F7")
    assert card(table).said.text().endswith("The room was not read today: weigh the reference "
                                            "skein of wool, or read the humidity.")
    table.type("97.2")
    table.press("Enter")
    assert verdict(table).startswith("97.2 grams as it lies there The weather is not taken out")
    assert not card(table).sell.isVisible()
    assert kept(table) == [(pile, 97_200, None, "", None)]
    write(table, card(table).reference, "55")
    write(table, card(table).dry, "50")
    table.press("F6")
    assert "Wool holds 10 % by its reference skein, weighed at" in card(table).said.text()
    assert card(table).field.line.text() == "97.2"
    table.press("Enter")
    assert verdict(table) == (
        "102.5 grams: full weight at the agreed 16 % of moisture")
    assert not card(table).sell.isVisible()
    write(table, card(table).reference, "58.5")
    assert card(table).dry.line.text() == "50"
    table.press("Enter")
    write(table, card(table).field, "97.2")
    table.press("Enter")
    assert verdict(table).startswith("96.4 grams: light, but tolerable at the agreed 16 %")
    assert card(table).sell.accessibleName() == "Sell as 96 g"
    assert not card(table).sell.isEnabled()
    assert kept(table)[1:] == [(pile, 97_200, 100, "reference skein", None),
                               (pile, 97_200, 170, "reference skein", None)]


def test_a_light_skein_is_sold_as_what_it_holds_and_its_tag_says_so(table):
    table.studio.do(weigh_reference, "wool", 58_500, 50_000)
    table.press("F7")
    table.type("97.2")
    table.press("Enter")
    mark = first(table, WAITING).mark
    table.scan(mark)
    assert card(table).whose.text() == shown(mark)
    for _ in range(2):  # a press that comes twice
        card(table).sell.click()
    table.quiet()
    old = next(tag for tag in tags(table, table.studio.pile, VOID) if tag.mark == mark)
    new = first(table, TIED_ON)
    assert (old.successor, old.state) == (new.mark, VOID)
    assert table.said == f"sold as 96 g: {shown(new.mark)} takes the place of its tag"
    words = json.loads(table.studio.book.ask(worn_by, new.skein).words)
    assert words["net"] == "96 g   372 m"
    assert kept(table) == [(new.skein, 97_200, 170, "reference skein", 96_000)]
    assert card(table).said.text().startswith("1 skein sold as less. ")
    assert not card(table).sell.isVisible()
    assert add_up(table)
    table.press("F2")
    assert first(table, TIED_ON).mark == mark
    table.press("F8")
    assert in_hand(table).aside is in_hand(table).print_card


def test_a_skein_that_is_far_too_light_is_called_a_second_by_its_tag(table):
    table.studio.do(read_humidity, 650)
    mark = first(table, WAITING).mark
    table.scan(mark)
    table.press("F7")
    assert card(table).whose.text() == shown(mark)
    assert "Wool holds about 16 %: estimated from 65 % humidity" in card(table).said.text()
    table.scan("90.0 g")
    assert verdict(table).startswith("90.0 grams: far too light: none may be at the agreed 16 % of "
                                     "moisture, estimated from the humidity of the room")
    assert "is too light for 100 g" in table.found[0]
    table.scan(SECONDS)
    assert table.said == "1 skein called a second: light: 90.0 g"
    skein = first(table, TIED_ON).skein
    assert table.studio.book.ask(now_of, skein).mark == mark
    assert kept(table) == [(skein, 90_000, 160, "humidity", None)]
    assert card(table).said.text().startswith(
        "1 weighed of the lot: mean 90.00 g, 1 below 95.5 g, 1 below 91.0 g. Wool")


def test_the_wire_and_the_plates_mean_the_balance_while_it_is_in_hand(qtbot, table):
    wire, balance = AWire(), table.window.balance
    balance.wire(Wiring(port=wire.port))
    table.press("F7", "F7")
    for _ in range(3):
        wire.say("  98.40 g\r\n")
        qtbot.wait(450)
    qtbot.waitUntil(lambda: card(table).wire.text() == "98.40 g stands", timeout=4000)
    table.press("Enter")
    assert kept(table)[0][1] == 98_400
    balance.close()
    wire.unplug()
    table.scan(SECONDS)
    assert "Nothing light was weighed" in table.trouble
    table.type("101")
    table.scan(DONE)
    assert kept(table)[1][1] == 101_000
    table.press("F8")
    table.scan(SECONDS)
    assert isinstance(in_hand(table).aside, Choosing)


def test_thirteen_of_a_lot_pass_barely_by_their_mean(table):
    table.studio.do(read_humidity, 650)
    table.press("F7")
    for weight in THIRTEEN.split():
        table.window.reception.scanned(f"{weight} g")
        table.quiet()
    assert card(table).said.text().startswith(
        "13 weighed of the lot: mean 100.09 g, none below 95.5 g, none below 91.0 g. They pass. ")


def test_with_all_tags_tied_on_a_weight_wants_its_tag(qtbot, settings, studio, opened):
    one = pile_of(studio, 1, 0)
    (skein,) = studio.tag(one, 1)
    other = pile_of(studio, 1, 1)
    assert other
    for table in begin_work(qtbot, settings, studio, 7):
        table.scan(studio.book.ask(now_of, skein).mark)
        table.press("F7")
        table.type("101")
        table.press("Enter")
        table.type("99")
        table.press("Enter")
        assert "Which skein lies on the balance is not known" in table.trouble
        assert card(table).field.line.text() == "99"
        assert len(kept(table)) == 1


def test_a_weight_that_is_taken_twice_at_once_is_kept_once(table):
    table.press("F7")
    table.type("97")
    for _ in range(2):
        card(table).take.click()
    table.quiet()
    assert kept(table) == [(table.studio.pile, 97_000, None, "", None)]
