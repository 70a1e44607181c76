"""The finishing table: the ties are counted before the scissors, in as few taps as can be."""

import pytest

from app.calculations.codes import shown
from app.lookups.bundles import PILED, bundle_facts
from app.lookups.now import NOW
from app.lookups.piles import piles_on
from app.window.benches.finishing.counted import Counted
from app.window.benches.finishing.counting import Counting
from app.window.benches.finishing.tally import Tally, TieCount
from app.work.bundling import take_off
from app.work.dyeing import BathIn, into_bath, lift
from app.work.holding import hold
from app.work.winding import Drawn, Wound, wind
from tests.makers import LONG_MM
from tests.window.benches.at_work import DONE, MIXED, UNDO, begin_work, disc, plate


def cord(studio, place, *ties, dye=True):
    """A cord on a disc: (tie, count) of one cone each; dyed and lifted."""
    reel = [Wound((Drawn(studio.cone(), count * LONG_MM),), count, "skein", tie)
            for tie, count in ties]
    rows = studio.do(wind, reel, studio.discs[place])
    if dye:
        bath = studio.do(into_bath, BathIn(tuple(rows), studio.recipe), studio.random)
        studio.do(lift, bath["bath"])
    return rows


@pytest.fixture
def table(qtbot, settings, studio):
    """At the finishing table; 8 red and 6 yellow hang on disc 031, dyed."""
    cord(studio, 0, ("red", 8), ("yellow", 6))
    yield from begin_work(qtbot, settings, studio, 6)


def piles(table, place=0):
    """(count, ties) of the piles that have this disc as their card."""
    return [(pile.count, pile.ties)
            for pile in table.studio.book.ask(piles_on, table.studio.discs[place])]


def panels(table):
    return {panel.count.tie: panel for panel in table.bench.card.panels}


def test_eight_red_and_six_yellow_are_two_taps_and_done(table):
    table.scan(disc(31))
    assert [panel.accessibleName() for panel in table.bench.card.panels] == [
        "red ties: 8 due, not counted yet", "yellow ties: 6 due, not counted yet"]
    table.click(panels(table)["red"].right)
    table.click(panels(table)["yellow"].right)
    table.press("Enter")
    assert piles(table) == [(8, "red"), (6, "yellow")]
    assert table.said == "counted 14 skeins: 8 red, 6 yellow"
    assert table.found == []
    table.studio.check()


def test_by_scanner_alone_two_plates_and_done(table):
    table.scan(disc(31), plate(8), plate(6), DONE)
    assert piles(table) == [(8, "red"), (6, "yellow")]


def test_by_keyboard_alone_figures_enter_and_arrows(table):
    table.press("Escape")
    table.type("31")
    table.press("Enter")
    table.type("8")
    table.press("Enter")
    table.type("7")
    table.press("Left", "Backspace", "8", "Right", "-")
    assert table.bench.card.tally.counted() == {"red": 8, "yellow": 6}
    table.press("Enter")
    assert piles(table) == [(8, "red"), (6, "yellow")]


def test_one_short_is_kept_and_said_and_where_to_look(table):
    table.scan(disc(31), plate(8))
    table.click(panels(table)["yellow"].less)
    assert panels(table)["yellow"].state.text() == "5 counted, 1 missing"
    table.press("Enter")
    assert piles(table) == [(8, "red"), (5, "yellow")]
    assert table.found == ["1 skein with yellow ties missing at the count: look in the basins, "
                           "the machine and under the rack."]
    table.studio.check()


def test_one_over_is_kept_and_said_and_of_no_known_cone(table):
    table.scan(disc(31))
    table.click(panels(table)["red"].more)
    assert panels(table)["red"].state.text() == "9 counted, 1 too many"
    table.click(panels(table)["yellow"].right)
    table.press("Enter")
    assert piles(table) == [(9, "red"), (6, "yellow")]
    assert table.found == ["1 skein with red ties too many: of no known cone. Look which other "
                           "cord is short."]
    table.studio.check()


def test_a_strange_tie_stands_apart_with_no_lot_and_no_cone(table):
    table.scan(disc(31), plate(8), plate(6))
    table.press("T")
    assert "red" not in table.bench.card.strange.shown
    table.press("1", "2")
    assert table.bench.card.tally.counted() == {"red": 8, "yellow": 6, "blue": 2}
    table.press("Enter")
    assert piles(table) == [(8, "red"), (6, "yellow"), (2, "blue")]
    assert "nothing on this cord is like that" in table.found[0]
    assert table.studio.book.ask(piles_on, table.studio.discs[0])[2].lot is None


def test_a_strange_tie_by_scanner_alone(table):
    table.scan(disc(31), plate(8), plate(6), MIXED, plate(2), plate(1), DONE)
    assert piles(table) == [(8, "red"), (6, "yellow"), (1, "green")]


def test_done_before_all_ties_are_counted_is_refused_in_its_place(table):
    table.scan(disc(31))
    assert "Count the red ties first." in table.bench.card.finish.accessibleDescription()
    table.scan(plate(8), DONE)
    assert "The yellow ties are not counted yet." in table.trouble
    assert table.studio.book.ask(bundle_facts, table.studio.discs[0], NOW).stage != PILED


def test_twelve_by_plates_are_ten_and_two(table):
    cord(table.studio, 1, ("blue", 12), ("red", 2))
    table.scan(disc(32), plate(10))
    assert table.bench.card.tally.now.tie == "blue"
    table.scan(plate(2), plate(2), DONE)
    assert piles(table, 1) == [(12, "blue"), (2, "red")]


def test_ten_of_twelve_by_plates_goes_on_with_done(table):
    cord(table.studio, 1, ("blue", 12), ("red", 2))
    table.scan(disc(32), plate(10), DONE, plate(2), DONE)
    assert piles(table, 1) == [(10, "blue"), (2, "red")]


def test_the_disc_stays_on_the_piles_as_their_card(table):
    table.scan(disc(31), plate(8), plate(6), DONE)
    assert isinstance(table.bench.card, Counted)
    assert table.bench.card.headline.text() == (
        "14 counted: 2 piles. Keep them apart, then trim and twist.")
    assert table.bench.card.card.text() == (
        "Disc 031 stays on the piles as their card until the last tag is tied on.")
    table.press("F8")
    table.scan(disc(31))
    assert isinstance(table.bench.card, Counted)


def test_a_count_that_was_taken_back_is_asked_for_again(table):
    table.scan(disc(31), plate(8), plate(6), DONE, UNDO)
    assert isinstance(table.bench.card, Counting)
    assert table.bench.card.tally.counted() == {}
    assert piles(table) == []


def test_what_was_counted_stays_when_something_else_is_saved_meanwhile(table):
    table.scan(disc(31), plate(8))
    cord(table.studio, 1, ("blue", 3))
    table.quiet()
    assert table.bench.card.tally.counted() == {"red": 8}


def test_a_cord_that_lost_its_disc_meanwhile_is_put_away(table):
    table.scan(disc(31))
    table.studio.do(take_off, table.studio.discs[0])
    table.quiet()
    assert not isinstance(table.bench.card, Counting)
    assert table.trail == []


def test_a_join_and_a_hold_are_to_be_looked_for_before_the_ties_are_gone(table):
    studio = table.studio
    one, other = studio.cones(2)
    rows = studio.do(wind, [
        Wound((Drawn(one, 5 * LONG_MM),), 5, "skein", "red"),
        Wound((Drawn(one, 255_200), Drawn(other, 157_300)), 1, "skein", "red and blue")],
        studio.discs[1])
    studio.do(into_bath, BathIn(tuple(rows), studio.recipe, studio.pot), studio.random)
    studio.do(hold, "cone", other, "oil stain")
    table.scan(disc(32))
    stays, join, held = table.bench.card.look_for.text().splitlines()
    assert stays == "The book has it in the pot still: it was never lifted there."
    assert join.startswith("1 skein with red and blue ties spans a join:")
    assert "62 %" in join
    assert held == "HOLD lies on this yarn: it goes on, marked."
    table.scan(plate(5), plate(1), DONE)
    assert piles(table, 1) == [(5, "red"), (1, "red and blue")]


def test_a_cord_that_was_never_dyed_is_asked_about_and_counted_all_the_same(table):
    cord(table.studio, 1, ("blue", 3), dye=False)
    table.scan(disc(32))
    assert "is it the right disc?" in table.bench.card.look_for.text()
    table.scan(plate(3), DONE)
    assert piles(table, 1) == [(3, "blue")]


def test_the_empty_table_says_what_to_do_and_lists_what_waits(table):
    waiting = table.bench.waiting
    lot = table.studio.code(1)
    assert [tuple(row) for row in waiting.waiting._rows] == [("031", shown(lot), "14", "")]
    waiting.waiting.opened.emit(0)
    table.quiet()
    assert isinstance(table.bench.card, Counting)
    table.scan(plate(8), plate(6), DONE)
    assert waiting.cords == []
    assert [row[:2] for row in waiting.last._rows] == [("6", "yellow"), ("8", "red")]


def test_a_disc_on_nothing_and_a_count_without_a_cord_are_told(table):
    table.scan(disc(45))
    assert "Disc 045 hangs on nothing." in table.trouble
    table.scan(plate(3))
    assert "No cord is on the table; nothing was counted." in table.trouble


def test_a_count_plate_that_bounced_counts_once(table):
    table.scan(disc(31))
    table.bounce(plate(8))
    assert table.bench.card.tally.counted() == {"red": 8}
    assert table.bench.card.tally.now.tie == "yellow"


def test_cords_that_were_mixed_are_told_apart_by_their_ties(table):
    facts = table.studio.book.ask(bundle_facts, table.studio.discs[0], NOW)
    table.studio.mix(*facts.rows)
    table.scan(disc(31), plate(8), plate(6), DONE)
    assert piles(table) == [(8, "red"), (6, "yellow")]


def test_figures_make_twelve_and_then_begin_anew():
    count = TieCount("red", 12, 12)
    for figure in (1, 2):
        count.figure(figure)
    assert count.counted == 12
    count.figure(7)
    assert count.counted == 7
    count.step(1)
    count.figure(3)
    assert count.counted == 3


def test_a_range_says_how_far_it_is_off_its_nearer_end():
    count = TieCount("red", 5, 7)
    assert count.due == "5 to 7"
    states = []
    for number in (4, 5, 7, 8):
        count.set(number)
        states.append(count.state)
    assert states == ["4 counted, 1 missing", "5 counted", "7 counted", "8 counted, 1 too many"]


def test_a_strange_tie_that_is_on_the_cord_after_all_is_only_taken_up():
    tally = Tally([TieCount("red", 8, 8), TieCount("yellow", 6, 6)])
    tally.add_strange("yellow")
    assert len(tally.ties) == 2
    assert tally.now.tie == "yellow"
