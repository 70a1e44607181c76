"""Wash and dry: what is not to be together, rinses and how they look, when a rail is dry."""

import pytest

from app.lookups.load_warnings import APART
from app.lookups.loads import wet_work
from app.lookups.now import NOW
from app.lookups.recent import entries
from app.lookups.rinsing import rinsing
from app.window.benches.washing.nothing import Nothing
from app.window.benches.washing.rinsing import InWater
from app.window.benches.washing.wet_row import WetRow
from tests.lookups.waters import NAVY, PALE, RED, lot_of, washed
from tests.window.benches.at_work import DONE, begin_work, disc, plate
from tests.window.benches.washing_hands import MACHINE, TUB, furnish, in_places, rail, waits


@pytest.fixture
def wash(qtbot, settings, studio):
    """Disc 031 a pale blue of 0.055 %, 032 a red of 1.70 % that bled, 033 a navy."""
    furnish(studio)
    lot_of(studio, "Whey Blue", PALE, studio.discs[0])
    red, _ = lot_of(studio, "Seventh Buoy", RED, studio.discs[1])
    lot_of(studio, "Ferry Ledger", NAVY, studio.discs[2])
    washed(studio, red, how=2)
    yield from begin_work(qtbot, settings, studio, 5)


def marks(wash):
    return {line.cord.number: line.mark.text() for line in wash.bench.hand.findChildren(WetRow)
            if line.isVisible()}


def test_a_pale_lot_and_a_deep_red_are_not_together_and_why_is_told(wash):
    wash.scan(MACHINE, plate(2), disc(31))
    hand = wash.bench.hand
    assert hand.apart.accessibleName() == ""
    assert marks(wash) == {"031": "pale, 0.055 %"}
    wash.scan(disc(32))
    assert hand.apart.accessibleName() == "NOT TOGETHER"
    assert hand.apart.isVisible()
    assert "(pale, 0.055 %) with " in hand.why.text()
    assert "(deep, 1.70 %, bleeds strongly)" in hand.why.text()
    assert hand.close_it.accessibleName() == "Together all the same"
    assert marks(wash)["032"] == "deep, 1.70 %, bleeds strongly"
    assert "Not together" not in hand.warnings.text()


def test_one_tap_goes_on_and_the_book_keeps_the_warning(wash):
    wash.scan(MACHINE, plate(2), disc(31), disc(32), DONE)
    assert list(in_places(wash)["in machine 2"]) == ["031", "032"]
    assert wash.found[0].startswith(APART)
    assert wash.studio.book.ask(entries)[0].findings[0].startswith(APART)


def test_one_of_them_taken_out_clears_the_word(wash):
    wash.scan(MACHINE, plate(2), disc(31), disc(32))
    wash.click(next(line for line in wash.bench.hand.findChildren(WetRow)
                    if line.cord.number == "032").findChild(type(wash.bench.hand.close_it)))
    assert wash.bench.hand.apart.accessibleName() == ""
    assert wash.bench.hand.close_it.accessibleName() == "They are in"


def test_what_is_in_the_water_already_counts(wash):
    wash.scan(MACHINE, plate(2), disc(31), DONE)
    wash.scan(MACHINE, disc(32))
    wash.press("2")
    assert wash.bench.hand.apart.accessibleName() == "NOT TOGETHER"


def test_a_pale_lot_and_a_navy_that_does_not_bleed_go_without_a_word(wash):
    wash.scan(MACHINE, plate(2), disc(31), disc(33))
    assert not wash.bench.hand.apart.isVisible()
    wash.press("3")
    wash.scan(disc(32))
    assert wash.bench.hand.apart.accessibleName() == ""  # a spin of what was rinsed


def rinsed(wash):
    place = next(one for one in wash.studio.book.ask(wet_work, NOW).places
                 if one.where == "in machine 2")
    return wash.studio.book.ask(rinsing, place.cords[-1].load).looks


def test_rinses_are_counted_by_one_scan_and_looks_by_a_plate_until_it_is_clear(wash):
    wash.scan(MACHINE, plate(2), disc(33), DONE, MACHINE)
    hand = wash.bench.hand
    assert isinstance(hand, InWater)
    wash.scan(DONE)
    wash.scan(plate(3))
    assert rinsed(wash) == (2,)
    assert hand.rinses.accessibleName() == "1 rinse"
    assert hand.next.text() == "Rinse once more."
    wash.press("Enter", "2", "Enter", "1")
    assert rinsed(wash) == (2, 1, 0)
    assert hand.next.text() == "The water is clear: spin, then hang it."
    assert hand.looks[0].isChecked()
    wash.scan(MACHINE)
    assert wash.bench.hand.step == "spin"
    wash.scan(DONE)
    assert in_places(wash)["in machine 2"] == {"033": ("spin", 6)}
    wash.studio.check()


def test_a_rinse_as_strong_as_the_one_before_is_bleeding(wash):
    wash.scan(MACHINE, plate(2), disc(33), DONE, MACHINE)
    wash.press("Enter", "3", "Enter", "2", "Enter", "2")
    hand = wash.bench.hand
    assert hand.next.text() == ("This rinse is as strong as the one before: it is bleeding, back "
                                "to heat and acid.")
    wash.press("Enter")
    assert any("the dye is not fixed" in one for one in wash.found)
    assert hand.rinses.accessibleName() == "4 rinses that is many"
    assert marks(wash)["033"].endswith("bleeds slightly")
    wash.press("F8")
    assert isinstance(wash.bench.hand, Nothing)


def test_of_two_lots_the_one_that_bleeds_is_told_by_one_tap(wash):
    wash.scan(MACHINE, plate(2), disc(31), disc(33), DONE, MACHINE)
    wash.press("Enter", "2")
    assert marks(wash)["033"].endswith("in a water that bled slightly")
    line = next(line for line in wash.bench.hand.findChildren(WetRow)
                if line.cord.number == "033" and line.isVisible())
    wash.click(line.findChild(type(wash.bench.hand.rinse)))
    assert marks(wash)["033"].endswith("bleeds strongly")


def test_the_room_is_read_once_and_every_rail_has_its_hour(wash):
    assert not wash.bench.room.isVisible()
    wash.scan(TUB, disc(33), DONE, MACHINE, plate(3), disc(33), DONE, rail(1), disc(33), DONE)
    (card,) = [card for card in wash.bench.places.cards if card.place.where == "on rail 1"]
    assert card.dry == ""
    assert wash.bench.room.isVisible()
    wash.press("F4")
    wash.type("18")
    wash.press("F4")
    wash.type("60")
    wash.press("F4")
    assert wash.bench.room.said.text().startswith("The room has 18 °C, 60 %, read ")
    (card,) = [card for card in wash.bench.places.cards if card.place.where == "on rail 1"]
    assert card.dry.startswith("dry about ")
    assert card.dry in card.accessibleName()
    assert "033" not in waits(wash)


def test_a_room_that_cannot_be_keeps_what_was_typed(wash):
    wash.scan(rail(1), disc(33), DONE)
    room = wash.bench.room
    room.heat.line.setText("18")
    room.damp.line.setText("600")
    wash.press("F4")
    assert "Write a number from 0 to 100 %." in room.damp.wrong.text()
    assert (room.heat.line.text(), room.damp.line.text()) == ("18", "600")
