"""The pots at work: weigh-out, water, the pot's room, steps with their minutes, readings, more."""

import re
from contextlib import closing
from datetime import timedelta

import pytest
from pypdfium2 import PdfDocument
from sqlalchemy import select

from app.calculations.codes import Kind, numbered
from app.lookups.pot_steps import pots_at_work
from app.lookups.weighings import weighed_with
from app.records import Bath
from app.window.parts.key_button import KeyButton
from app.work.bundling import make_plates
from app.work.loading import into_load
from app.work.recipes import StepIn
from app.work.weighing import close_weighing
from tests.dyehouse import ACID, DYES, Dyehouse
from tests.lookups.waters import recipe_of
from tests.window.benches.at_work import DONE, begin_work, disc, plate, pot

STEPS = (StepIn("heat up", 850, 46), StepIn("second acid, 6 g"), StepIn("hold", 850, 40))


def jar(number):
    return numbered(Kind.JAR, number).text


class House(Dyehouse):
    """A recipe at 20 : 1 with three steps, a pot 7 of 20 L, six soaked skeins on disc 031."""

    def __init__(self, studio):
        super().__init__(studio)
        self.recipe = recipe_of(studio, "Ferry Ledger", (*DYES, ACID), liquor_tenths=200,
                                steps=STEPS)
        studio.do(make_plates, Kind.POT, [7], "20 L")
        self.row = studio.wind(studio.cone(), 6, "red", studio.discs[0])
        studio.wind(studio.cone(), 3, "yellow", studio.discs[1])
        studio.do(into_load, "soak", yarn=[self.row])


@pytest.fixture
def house(studio):
    return House(studio)


@pytest.fixture
def pots(qtbot, settings, studio, house):
    """At the pots."""
    yield from begin_work(qtbot, settings, studio, 4)


def poured(pots):
    return pots.studio.book.ask(lambda c: c.execute(select(Bath.weighing)).scalars().all())


def weigh(pots, house, *rows):
    weighing = house.begin(*rows)
    house.take(weighing, house.fills[1], 5_117)
    pots.studio.do(close_weighing, weighing)
    return weighing


def test_the_one_weigh_out_for_these_bundles_goes_in_by_itself(pots, house):
    weighing = weigh(pots, house, house.row)
    pots.scan(pot(7), disc(31))
    hand = pots.bench.hand
    assert hand.water.weigh_out.text().startswith(f"Weigh-out {weighing} goes in: Ferry Ledger")
    assert hand.recipe.colourway == "Ferry Ledger"
    pots.scan(DONE)
    assert poured(pots) == [weighing]
    (work,) = pots.studio.book.ask(pots_at_work)
    lot = pots.studio.book.ask(lambda c: c.exec_driver_sql("select id from dye_lot").scalar())
    assert pots.studio.book.ask(weighed_with, lot).fills == {house.fills[1]}
    assert work.pot.colourway == "Ferry Ledger"
    pots.studio.check()


def test_a_weigh_out_for_more_is_offered_and_taken_by_one_key_and_left_by_another(pots, house):
    other = pots.studio.wind(pots.studio.cone(), 3, "blue", pots.studio.discs[2])
    weighing = weigh(pots, house, house.row, other)
    pots.scan(pot(7), disc(31))
    water = pots.bench.hand.water
    assert water.poured is None
    assert water.weigh_out.text() == "One weigh-out is for these bundles and not poured yet."
    pots.press("F7")
    assert water.poured.weighing == weighing
    assert "not for just these bundles" in water.weigh_out.text()
    pots.press("F7")
    assert water.poured is None
    pots.press("Enter")
    assert poured(pots) == [None]


def test_another_colourway_leaves_what_was_weighed_in_its_cups(pots, house):
    weigh(pots, house, house.row)
    pots.scan(pot(7), disc(31))
    hand = pots.bench.hand
    place = next(n for n, tile in enumerate(hand.colourways.tiles, 1)
                 if tile.recipe.colourway != "Ferry Ledger")
    pots.scan(plate(place))
    assert hand.water.poured is None
    pots.scan(DONE)
    assert poured(pots) == [None]


def test_the_water_to_add_is_said_from_the_dry_weight_and_what_the_yarn_brings(pots, house):
    weigh(pots, house, house.row)
    pots.scan(pot(7), disc(31))
    water = pots.bench.hand.water
    # 618.75 g: 12.375 L, 0.619 L in the yarn
    assert water.add_l.accessibleName() == "11.8 L of water to add"
    assert water.why.text() == (
        "6 skeins, 619 g dry, at 20 : 1: 12.38 L of bath. The wet yarn brings 0.62 L. "
        "With the yarn it stands at 12.85 L of 15 L.")
    assert pots.found == []


def test_without_a_ratio_or_a_size_nothing_is_claimed(pots, house):
    pots.scan(pot(1), disc(31))
    hand = pots.bench.hand
    assert not hand.water.add_l.isVisible()
    pots.scan(plate(2))  # Sluice Keeper's Glove, written at 20 : 1; pot 1 says no size
    assert hand.water.add_l.isVisible()
    assert "of 15 L" not in hand.water.why.text()
    pots.scan(disc(32))
    assert pots.found == []


def choose(pots, name):
    tiles = pots.bench.hand.colourways.tiles
    pots.scan(plate(next(n for n, tile in enumerate(tiles, 1) if tile.recipe.colourway == name)))


def test_too_much_for_the_pot_is_two_pots_by_one_tap(pots, house):
    pots.scan(pot(7), disc(31), disc(32))
    choose(pots, "Ferry Ledger")
    (sentence,) = pots.found
    assert sentence == (
        "19.27 L with the yarn, and pot 7 takes 15 L. 5 + 4 skeins in two pots make two lots, "
        "each with its own code. At 15 : 1 all of it fits.")
    answer(pots, "Two pots")
    assert [one.number for one in pots.bench.hand.discs] == ["031"]
    assert pots.note == "disc 032 is left for the next pot: a lot of its own"
    assert pots.found == []


def test_too_much_may_go_in_all_the_same_and_the_book_keeps_that(pots, house):
    pots.scan(pot(7), disc(31), disc(32))
    choose(pots, "Ferry Ledger")
    answer(pots, "All in this one")
    assert pots.found == []
    pots.scan(DONE)
    pots._qtbot.waitUntil(lambda: any(
        "is more than the 15.00 L this pot takes" in one for one in pots.found))


def answer(pots, words):
    key = next(key for key in pots.window.floor.findings.findChildren(KeyButton)
               if key.accessibleName() == words and key.isVisible())
    pots.click(key)


def test_the_card_tells_the_step_and_the_minutes_without_a_touch(pots, house):
    pots.scan(pot(7), disc(31))
    choose(pots, "Ferry Ledger")
    pots.scan(DONE)
    pots.press("F8")
    (card,) = pots.bench.pots.cards
    assert card.step == "heat up, 85 °C"
    assert 40 <= int(card.minutes) <= 46
    pots.studio.clock.now += timedelta(minutes=20)
    pots.bench.pots.tick()
    assert 20 <= int(card.minutes) <= 27
    pots.studio.clock.now += timedelta(minutes=30)
    pots.bench.pots.tick()
    assert card.minutes.startswith("+")
    assert card.step == "over: heat up, 85 °C"
    assert "heat up, 85 °C" in card.accessibleName()
    assert "26·15·" in card.accessibleName()
    pots.studio.clock.now += timedelta(hours=20)
    pots.bench.pots.tick()
    assert card.minutes == ""
    assert re.fullmatch(r"in the pot for 2[01] h: lift it, or scan where it lies now", card.step)


def test_steps_are_done_by_plate_to_the_last_and_then_it_is_lifted(pots, house):
    pots.scan(pot(7), disc(31))
    choose(pots, "Ferry Ledger")
    pots.scan(DONE)
    tending = pots.bench.hand.tending
    assert tending.step.text() == "min: heat up, 85 °C"
    assert tending.next.text() == "then second acid, 6 g"
    pots.scan(DONE)
    assert pots.said == "bath 1: heat up"
    assert (tending.step.text(), tending.minutes.isVisible()) == ("second acid, 6 g", False)
    pots.press("Enter")
    pots.scan(DONE)
    assert tending.step.text() == "all steps are done: cool, then lift"
    pots.press("L")
    assert pots.said == "lifted pot 7"
    pots.studio.check()


def test_what_is_read_is_one_short_line(pots, house):
    pots.scan(pot(7), disc(31))
    choose(pots, "Ferry Ledger")
    pots.scan(DONE)
    pots.press("F4")
    pots.type("pH 4.3 85 clear")
    pots.press("Enter")
    assert pots.said == "bath 1: pH 4.30, 85 °C, clear"
    tending = pots.bench.hand.tending
    assert [one.words for one in tending.work.steps.read] == ["pH 4.3", "85 °C", "clear"]
    assert tending.field.line.text() == ""
    assert tending.step.text() == "min: heat up, 85 °C"
    pots.press("F4")
    pots.type("murky")
    pots.press("F4")
    assert tending.field.line.text() == "murky"
    assert "cannot be read" in tending.field.wrong.text()
    tending.field.line.setText("11.4 L")
    pots.press("F4")
    assert pots.said == "bath 1: 11.4 L of water added"


def test_an_addition_is_a_jar_and_an_amount(pots, house):
    pots.scan(jar(2))
    assert "No bath is in hand" in pots.trouble
    pots.scan(pot(7), disc(31))
    choose(pots, "Ferry Ledger")
    pots.scan(DONE, jar(2))
    adding = pots.bench.hand.adding
    assert adding.headline.text() == "Y1 lemon goes in, from jar 2"
    pots.type("0.6")
    pots.press("F7")
    assert pots.said == "added 0.6 g Y1 lemon to bath 1"
    assert any("off its recipe" in one for one in pots.found)
    assert not adding.isVisible()
    assert house.jar(2).left_mg == 499_400


def test_more_acid_has_no_jar_and_is_named(pots, house):
    pots.scan(pot(7), disc(31))
    choose(pots, "Ferry Ledger")
    pots.scan(DONE)
    pots.press("F6")
    adding = pots.bench.hand.adding
    adding.name.line.setText("Citric acid")
    pots.press("F7")
    assert "is no amount" in adding.amount.wrong.text()
    adding.amount.line.setText("6 g")
    pots.press("F7")
    assert pots.said == "added 6 g citric acid to bath 1"
    pots.studio.check()


def test_the_card_of_a_bath_goes_on_paper_beside_the_book(pots, house, monkeypatch):
    opened = []
    monkeypatch.setattr("app.window.papers.open_paper", opened.append)
    pots.scan(pot(7), disc(31))
    choose(pots, "Ferry Ledger")
    pots.scan(DONE)
    pots.press("P")
    pots._qtbot.waitUntil(lambda: pots.note.startswith("The card is"))
    (paper,) = opened
    with closing(PdfDocument(paper)) as document:
        text = document[0].get_textpage().get_text_bounded()
    assert "Bath card" in text
    assert "Ferry Ledger" in text
    assert paper.parent == pots.studio.book.path.with_name("studio bath cards")


def test_a_pot_at_a_step_is_lifted_only_by_a_second_scan(pots, house):
    pots.scan(pot(7), disc(31))
    choose(pots, "Ferry Ledger")
    pots.scan(DONE, pot(7), pot(7))
    assert "Pot 7 is still at a step: heat up." in pots.trouble
    pots.scan(plate(2))
    assert pots.said == "bath 1: tinted"
    assert [key.isChecked() for key in pots.bench.hand.tending.clearness] == [False, True, False]
    pots.scan(pot(7), pot(7))
    assert pots.said == "lifted pot 7"


def test_another_pot_before_done_is_refused_until_it_is_scanned_again(pots, house):
    pots.scan(pot(7), disc(31), pot(1))
    assert "Pot 7 is not begun yet" in pots.trouble
    assert pots.bench.hand.pot.number == 7
    pots.scan(pot(1))
    assert pots.bench.hand.pot.number == 1
