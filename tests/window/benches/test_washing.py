"""The wash: place and discs, then DONE; wet hands, a scanner, and nothing else."""

from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.window.benches.washing.filling import Filling
from app.window.benches.washing.nothing import Nothing
from app.window.benches.washing.place_cards import MOST_LINES
from app.window.cords.mixing import Mixing, Told
from app.window.cords.splitting import Parted, Splitting
from app.window.parts.hold_plate import HoldPlate
from app.work.holding import hold
from app.work.loading import into_load
from app.work.mixing import split
from app.work.remaking import gather
from tests.window.benches.at_work import DONE, MIXED, SPLIT, UNDO, disc, plate, pot
from tests.window.benches.washing_hands import (
    MACHINE,
    STEAMER,
    TUB,
    begin_washing,
    dyed_cord,
    in_places,
    on_screen,
    rail,
    vessel,
    waits,
)


@pytest.fixture
def wash(qtbot, settings, studio):
    """At the wash."""
    yield from begin_washing(qtbot, settings, studio)


def test_place_and_discs_and_done_are_a_load_and_the_place_is_on_the_screen(wash):
    assert waits(wash) == ["031", "032"]
    wash.scan(TUB, disc(31), disc(33))
    hand = wash.bench.hand
    assert hand.headline.text() == "Soak\nin soak tub"
    assert hand.number.accessibleName() == "1"
    assert hand.total.text() == "13 skeins in 2 bundles"
    assert in_places(wash) == {}
    wash.scan(DONE)
    assert in_places(wash) == {"in soak tub 1": {"031": ("soak", 8), "033": ("soak", 5)}}
    assert wash.said == "soak 1 in soak tub 1: 13 skeins"
    assert on_screen(wash) == {"in soak tub 1": ["031", "033"]}
    name = wash.bench.places.cards[0].accessibleName()
    assert name.startswith("soak tub 1; 13 skeins; since ")
    assert "disc 033, 5 skeins" in name
    assert waits(wash) == ["032"]
    assert isinstance(wash.bench.hand, Nothing)
    wash.studio.check()


def test_the_day_of_a_lot_by_scanner_alone_wash_spin_and_rail(wash):
    wash.scan(MACHINE, plate(2), disc(31), disc(32), DONE)
    assert wash.said == "wash 1 in machine 2: 14 skeins"
    wash.scan(MACHINE, MACHINE)
    assert wash.bench.hand.headline.text() == "Spin\nin machine"
    assert wash.bench.hand.total.text() == "14 skeins in 2 bundles"
    wash.scan(DONE)
    assert wash.said == "spin 2 in machine 2: 14 skeins"
    wash.scan(rail(2), disc(31), DONE, rail(1), disc(32), DONE)
    assert in_places(wash) == {"on rail 2": {"031": ("rail", 8)},
                               "on rail 1": {"032": ("rail", 6)}}
    assert on_screen(wash) == {"on rail 2": ["031"], "on rail 1": ["032"]}
    assert wash.trouble == ""
    wash.scan(disc(31))
    assert [stop for stop in wash.trail if stop[0] in ("wash", "spin", "rail")] == [
        ("wash", "load 1"), ("spin", "load 2"), ("rail", "load 3")]


def test_a_machine_is_asked_about_once_and_remembers(wash):
    wash.scan(MACHINE, disc(31), DONE)
    assert "soak, wash or spin" in wash.trouble
    assert wash.bench.hand.headline.text() == "What is done\nin machine"
    wash.press("2", "Enter")
    assert wash.said == "wash 1 in machine 2: 8 skeins"
    wash.scan(MACHINE, disc(32))
    assert wash.bench.hand.step == "wash"
    assert wash.bench.hand.steps["wash"].isChecked()
    wash.press("3")
    assert wash.bench.hand.step == "spin"


def test_discs_first_and_the_place_after_is_the_same_load(wash):
    wash.scan(disc(31), disc(32))
    assert wash.bench.hand.close_it.accessibleDescription().endswith(
        "Scan the tub, machine, rail or steamer.")
    wash.scan(DONE)
    assert "Scan the tub, machine, rail or steamer." in wash.trouble
    wash.scan(rail(1), DONE)
    assert in_places(wash) == {"on rail 1": {"031": ("rail", 8), "032": ("rail", 6)}}


def test_another_place_before_done_is_asked_about_for_done_may_be_forgotten(wash):
    wash.scan(MACHINE, plate(2), disc(31), rail(1))
    assert "The load in machine 2 is not closed yet; nothing was saved." in wash.trouble
    assert wash.bench.hand.place.where == "in machine 2"
    wash.scan(DONE)
    assert in_places(wash) == {"in machine 2": {"031": ("wash", 8)}}
    wash.scan(rail(1), disc(32), rail(2), rail(2), DONE)
    assert in_places(wash)["on rail 2"] == {"032": ("rail", 6)}


def test_by_keyboard_alone_a_card_and_numbers(wash):
    wash.press("Escape")
    wash.type("L2")
    wash.press("Enter", "Escape")
    wash.type("31")
    wash.press("Enter")
    assert wash.bench.hand.headline.text() == "On rail, door side"
    wash.bench.setFocus()
    wash.press("Enter")
    assert in_places(wash) == {"on rail 2": {"031": ("rail", 8)}}
    card = wash.bench.places.cards[0]
    card.setFocus()
    QTest.keyClick(card, Qt.Key.Key_Space)
    wash.quiet()
    assert wash.bench.hand.place.where == "on rail 2"
    assert wash.bench.hand.there.text().startswith("There since ")
    wash.press("F8")
    assert isinstance(wash.bench.hand, Nothing)


def test_a_disc_on_nothing_is_told_and_the_rest_is_recorded(wash):
    wash.scan(rail(1), disc(45))
    assert "Disc 045 hangs on nothing, so it is in no load." in wash.trouble
    wash.scan(disc(31), DONE)
    assert in_places(wash) == {"on rail 1": {"031": ("rail", 8)}}


def test_a_disc_twice_is_in_once_and_one_may_be_taken_out(wash):
    wash.scan(rail(1), disc(31), disc(32), disc(31))
    assert [cord.number for cord in wash.bench.hand.cords] == ["031", "032"]
    assert wash.note == "disc 031 is in already"
    row = wash.bench.hand._rows.itemAt(0).widget()
    row.out.emit()
    wash.quiet()
    assert wash.bench.hand.total.text() == "6 skeins in 1 bundle"


def test_five_lots_in_one_wash_are_warned_of_and_kept(wash):
    for place in (3, 4, 5):
        dyed_cord(wash.studio, place, 2, "green")
    wash.scan(MACHINE, plate(2), *(disc(n) for n in (31, 32, 34, 35)))
    assert not wash.bench.hand.warnings.isVisible()
    wash.scan(disc(36))
    assert wash.bench.hand.warnings.text() == (
        "5 lots in one wash: what bleeds in it is on all of them.")
    wash.scan(DONE)
    assert len(in_places(wash)["in machine 2"]) == 5
    assert wash.found == ["5 lots in one wash: what bleeds in it is on all of them."]


def test_a_soak_that_was_too_long_is_warned_of(wash):
    wash.scan(TUB, disc(33), DONE)
    wash.studio.clock.now += timedelta(hours=40)
    wash.scan(MACHINE, plate(2), disc(33))
    assert wash.bench.hand.warnings.text() == (
        "Disc 033 was in the soak for 40 hours: smell at it.")


def test_a_hold_is_said_in_outline_and_the_load_goes_on(wash):
    wash.studio.do(hold, "cone", 1, "oil stain")
    wash.scan(rail(1), disc(31))
    row = wash.bench.hand._rows.itemAt(0).widget()
    assert [one.accessibleName() for one in row.findChildren(HoldPlate)] == ["below a hold"]
    wash.scan(DONE)
    assert in_places(wash) == {"on rail 1": {"031": ("rail", 8)}}


def test_half_a_cord_goes_elsewhere_and_the_load_in_hand_waits_for_the_split(wash):
    wash.scan(MACHINE, plate(2), disc(32), disc(31), SPLIT)
    assert isinstance(wash.bench.hand, Splitting)
    wash.scan(disc(31), plate(5), plate(3), disc(40))
    assert isinstance(wash.bench.hand, Parted)
    wash.press("F8")
    assert isinstance(wash.bench.hand, Filling)
    assert [(cord.number, cord.count) for cord in wash.bench.hand.cords] == [
        ("032", 6), ("031", 5)]
    wash.scan(DONE, vessel(1), plate(2), disc(40), DONE)
    assert in_places(wash) == {
        "in machine 2": {"032": ("wash", 6), "031": ("wash", 5)},
        "in soak tub 1": {"040": ("wash", 3)}}
    wash.scan(disc(40))
    assert ("wash", "load 2") in wash.trail
    wash.studio.check()


def test_after_a_split_the_next_disc_goes_into_the_load_that_waited(wash):
    wash.scan(MACHINE, plate(2), disc(32), SPLIT, disc(31), plate(5), disc(40), disc(40), DONE)
    assert in_places(wash) == {"in machine 2": {"032": ("wash", 6), "040": ("wash", 3)}}


def test_cords_that_burst_in_a_tub_are_mixed_by_its_plate(wash):
    row = wash.studio.wind(wash.studio.cone(), 4, "blue", wash.studio.discs[6])
    wash.studio.do(into_load, "soak", yarn=[row], plate=23)
    wash.scan(TUB, disc(33), DONE, MIXED)
    assert isinstance(wash.bench.hand, Mixing)
    wash.scan(MACHINE)
    assert "Nothing is in machine 2 by the book." in wash.trouble
    wash.scan(TUB, DONE)
    assert isinstance(wash.bench.hand, Told)
    assert wash.bench.hand.told.text() == "Each is one of two, 5 + 4"
    assert sum(count for _, count in in_places(wash)["in soak tub 1"].values()) == 9


def test_undo_takes_a_load_back_and_the_cord_waits_again(wash):
    wash.scan(rail(1), disc(31), DONE, UNDO)
    assert (in_places(wash), on_screen(wash)) == ({}, {})
    assert waits(wash) == ["031", "032"]


def test_what_was_gathered_is_told_beside_what_was_lifted(wash):
    row = dyed_cord(wash.studio, 3, 2, "green")
    (pile,) = wash.studio.finish(row, green=2)
    wash.studio.do(gather, wash.studio.tag(pile, 2), wash.studio.discs[9])
    wash.quiet()
    assert waits(wash) == ["031", "032"]
    assert wash.bench.waiting.again.text() == (
        "Tied on a cord once more, for a bath or a wash: 2 skeins on disc 040.")
    wash.bench.waiting.table.opened.emit(1)
    wash.quiet()
    assert [cord.number for cord in wash.bench.hand.cords] == ["032"]


def test_a_long_rail_says_how_many_more_hang_there(wash):
    for place in range(3, 10):
        row = wash.studio.wind(wash.studio.cone(), 2, "green", wash.studio.discs[place])
        wash.studio.do(into_load, "rail", yarn=[row], plate=26)
    wash.quiet()
    (card,) = wash.bench.places.cards
    assert len(card.lines) == MOST_LINES
    assert card.more == "and 1 more: 2 skeins"
    assert "disc 040, 2 skeins" in card.accessibleName()


def test_a_plate_that_is_in_no_book_and_one_of_no_use_are_told(wash):
    wash.scan(vessel(77))
    assert "is no tub, machine, rail or steamer in the book" in wash.trouble
    wash.scan(pot(1))
    assert "this bench has no use for it" in wash.trouble
    wash.scan(disc(88))
    assert "is no disc in the book" in wash.trouble
    assert isinstance(wash.bench.hand, Nothing)


def test_a_tray_in_the_steamer_is_no_reason_to_warn(wash):
    dyed_cord(wash.studio, 3, 4, "green", lifted=False)
    wash.scan(STEAMER, disc(34))
    assert wash.bench.hand.headline.text() == "In steamer"
    assert not wash.bench.hand.warnings.isVisible()
    wash.scan(DONE)
    assert in_places(wash) == {"in steamer 1": {"034": ("steamer", 4)}}


def test_a_load_of_yesterday_finds_the_cord_as_it_hung_then(wash):
    studio = wash.studio
    then = studio.clock.now
    studio.clock.now += timedelta(hours=20)
    row = studio.book.ask(bundle_facts, studio.discs[0], NOW).rows[0]
    studio.do(split, row, (5, 3), (studio.discs[9],))
    wash.window.session.late = then
    wash.scan(rail(1), disc(31))
    assert wash.bench.hand.total.text() == "8 skeins in 1 bundle"
    wash.scan(DONE)
    wash.window.session.late = None
    assert in_places(wash) == {"on rail 1": {"031": ("rail", 5), "040": ("rail", 3)}}
    studio.check()
