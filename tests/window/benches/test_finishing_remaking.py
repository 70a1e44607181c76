"""Finished skeins at the table once more: minis, balls, back on a cord, seconds."""

import pytest

from app.calculations.codes import Kind, shown
from app.lookups.destinations import destinations
from app.lookups.finished import scanned_tag
from app.lookups.origins import origins
from app.lookups.present import Amount
from app.lookups.tagging import tag_text
from app.lookups.things import by_code
from app.window.benches.finishing.counting import Counting
from app.window.benches.finishing.remade import Remade
from app.window.benches.finishing.remaking import SkeinsInHand
from app.work.bundling import make_plates
from app.work.dyeing import lift, name_colourway
from app.work.holding import hold
from app.work.loading import into_load
from app.work.selling import sell
from tests.makers import EACH_MG
from tests.window.benches.at_work import DONE, SECONDS, SPLIT, UNDO, disc, plate, pot
from tests.window.benches.remaking_hands import begin_remaking, hangs, mark_of, marks, piles, void


@pytest.fixture
def table(qtbot, settings, studio, opened):
    """At the finishing table; eight finished skeins lie there."""
    yield from begin_remaking(qtbot, settings, studio)


def write(table, field, text):
    """Write into a field with one's fingers."""
    field.setFocus()
    table.type(text)


def first(table, count=1):
    """The marks of the first skeins."""
    return [mark_of(table.studio, skein) for skein in table.studio.skeins[:count]]


def test_one_skein_becomes_five_minis_with_tags_of_the_same_lot(table):
    (old,) = first(table)
    table.scan(old)
    assert isinstance(table.bench.card, SkeinsInHand)
    table.press("M")
    assert table.bench.card.asked.sum.text() == "103.1 g to be shared"
    table.type("5")
    write(table, table.bench.card.asked.lost, "0.6")
    assert table.bench.card.asked.sum.text() == "103.1 g = 5 × 20.5 g + 0.6 g lost"
    table.press("Enter")
    assert isinstance(table.bench.card, Remade)
    assert table.said == "1 skein became 5 minis"
    assert table.bench.card.told.text() == f"5 minis of {shown(table.studio.code(1))}"
    assert table.bench.card.void.text() == f"Void now: {shown(old)}. Throw its tag away."
    assert piles(table.studio) == [(table.studio.code(1), "mini", 5)]
    table.scan(old)
    assert f"{shown(old)} is void: its skein became 5 minis." in table.trouble
    table.studio.check()


def test_the_minis_are_tagged_at_the_tag_table_by_their_own_weight_and_length(table):
    old = first(table)
    table.scan(*old, SPLIT, plate(5), DONE, DONE)
    table.enter(7)
    table.scan(table.studio.code(1))
    pile = table.bench.in_hand.pile
    words = table.studio.book.ask(tag_text, pile, table.studio.version)
    assert (words.net, words.lot) == ("20 g   77.6 m", table.studio.code(1))
    before = set(marks(table.studio))
    table.scan(DONE)
    new = [mark for mark in marks(table.studio) if mark not in before]
    assert len(new) == 5
    assert {mark[:7] for mark in new} == {table.studio.code(1)}
    table.scan(*new)
    assert piles(table.studio) == []
    table.scan(*old)
    assert f"{shown(old[0])} is void: its skein became 5 minis." in table.trouble
    assert table.studio.present()["table", "mini"] == Amount(5, EACH_MG)
    assert table.studio.present()["table", "skein"].count == 7
    table.studio.check()


def test_what_was_lost_is_asked_for_before_it_is_cut(table):
    table.scan(*first(table), SPLIT, plate(5), DONE)
    assert isinstance(table.bench.card, SkeinsInHand)
    assert table.bench.card.asked.lost.wrong.text().startswith("Was nothing lost")
    table.scan(DONE)
    assert table.bench.card.how.text() == "103.1 g = 5 × 20.6 g"
    table.scan(UNDO)
    assert not isinstance(table.bench.card, Remade)
    assert piles(table.studio) == []


def test_a_count_that_is_missing_and_a_loss_that_is_too_much_are_told_and_kept(table):
    table.scan(*first(table), SPLIT, DONE)
    assert table.bench.card.asked.how_many.wrong.text().startswith("Nothing is written here yet")
    table.scan(plate(2))
    write(table, table.bench.card.asked.lost, "200")
    table.press("Enter")
    assert "200 g cannot be lost of 103.125 g; nothing was saved." in table.trouble
    assert table.bench.card.asked.lost.line.text() == "200"
    table.press("F8")
    assert table.bench.card.asked is None
    assert set(marks(table.studio)) == set(first(table, 8))


def test_two_balls_are_cut_and_it_is_said_that_no_ball_is_described(table):
    table.scan(*first(table))
    table.press("B")
    asked = table.bench.card.asked
    assert asked.doubt.text().startswith("What a ball of Tarnfield 4-ply holds is not described")
    assert asked.forms["ball"].isChecked()
    table.type("2")
    write(table, asked.lost, "0.3")
    assert asked.sum.text() == "103.1 g = 2 × 51.4 g + 0.3 g lost"
    table.press("Enter")
    assert piles(table.studio) == [(table.studio.code(1), "ball", 2)]
    assert table.bench.card.told.text().startswith("2 balls of")


def test_several_skeins_are_not_cut_at_once(table):
    table.scan(*first(table, 2))
    assert table.bench.card.total.accessibleName() == "2 skeins"
    assert "One skein at a time." in table.bench.card.minis.accessibleDescription()
    table.scan(SPLIT)
    assert "Several skeins are in hand; nothing was cut." in table.trouble
    table.bench.card._rows.itemAt(1).widget().out.emit()
    table.quiet()
    table.scan(SPLIT)
    assert table.bench.card.asked is not None


def test_six_skeins_are_dyed_once_more_and_both_baths_are_in_their_past(table):
    studio = table.studio
    studio.do(name_colourway, "Coal Hatch", "#1D191C")
    old, old_lot = first(table, 6), studio.code(1)
    table.scan(*old)
    table.press("C")
    assert table.bench.card.asked.void.text() == "Their 6 tags come off and are void then."
    table.scan(disc(36))
    assert table.bench.card.told.text() == "6 skeins on disc 036"
    assert all(shown(mark) in table.bench.card.void.text() for mark in old)
    assert table.said == "gathered 6 skeins, their tags are void"
    assert void(studio, old[0]) == "went back on a cord, disc 036"

    table.enter(4)
    table.scan(pot(1), disc(36))
    assert "in again makes another lot, an overdye" in table.bench.hand.warnings.text()
    table.scan(plate(1), DONE, pot(1), pot(1))
    new_lot = studio.code(2)
    assert new_lot not in (None, old_lot)

    table.enter(6)
    table.scan(disc(36))
    assert isinstance(table.bench.card, Counting)
    table.scan(plate(6), DONE)
    table.enter(7)
    table.scan(disc(36), DONE)
    new = marks(studio, 2)
    assert len(new) == 6
    table.scan(*new)
    assert not hangs(studio, studio.discs[5])

    skein = studio.book.ask(by_code, new[0]).id
    above = studio.book.ask(origins, {skein: 1})
    assert [one.code for one in above if one.kind == "lot"] == [shown(old_lot), shown(new_lot)]
    assert [one.sure for one in above if one.kind == "cone"] == ["known"]
    assert len(marks(studio, 1)) == 2
    assert studio.present()["table", "skein"] == Amount(8, 8 * EACH_MG)
    both = studio.book.ask(destinations, "lot", 1)
    assert sum(amount.count for amount in both.totals.values()) == 8
    studio.check()

    table.enter(6)
    table.scan(old[0])
    assert (f"{shown(old[0])} is void: its skein went back on a cord and was dyed again: "
            f"{shown(new_lot)}.") in table.trouble
    table.scan(new[0])
    assert [stop for stop in table.trail if stop[0] == "dye lot"] == [
        ("dye lot", shown(old_lot)), ("dye lot", shown(new_lot))]


def test_a_disc_that_hangs_already_is_refused_and_without_being_asked_it_is_a_cord(table):
    studio = table.studio
    studio.wind(studio.cone(), 5, "blue", studio.discs[0])
    table.scan(*first(table, 2))
    table.press("C")
    table.scan(disc(31))
    assert "Disc 031 hangs on 5 skeins already; nothing was gathered." in table.trouble
    assert isinstance(table.bench.card, SkeinsInHand)
    table.press("F8")
    table.scan(disc(31))
    assert isinstance(table.bench.card, Counting)
    assert len(marks(studio)) == 8


def test_a_disc_may_be_typed(table):
    table.scan(*first(table, 2))
    table.press("C")
    table.type("36")
    table.press("Enter")
    assert table.bench.card.told.text() == "2 skeins on disc 036"
    table.press("F2")
    assert len(marks(table.studio)) == 8
    assert not isinstance(table.bench.card, Remade)


def test_what_hangs_on_a_rail_says_so_in_the_list_of_what_waits(table):
    studio = table.studio
    row = studio.wind(studio.cone(), 4, "blue", studio.discs[0])
    studio.dye(row)
    studio.do(lift, 2)
    (place,) = studio.do(make_plates, Kind.RAIL, [2])
    studio.do(into_load, "rail", yarn=[row], plate=place)
    table.quiet()
    assert [tuple(row) for row in table.bench.waiting.waiting._rows] == [
        ("031", shown(studio.code(2)), "4", "on rail 2")]


def test_seconds_have_a_reason_and_it_is_offered_the_next_time(table):
    one, two = first(table, 2)
    table.scan(one, SECONDS)
    table.press("Enter")
    assert table.bench.card.asked.why.wrong.text() == "Say what is seen."
    table.type("tie mark")
    table.press("Enter")
    assert table.said == "1 skein called a second: tie mark"
    row = table.bench.card._rows.itemAt(0).widget()
    assert row.skein.second == "tie mark"
    table.press("F8")
    table.scan(two)
    table.press("S")
    assert table.bench.card.asked.reasons == ("tie mark",)
    table.scan(plate(1), DONE)
    assert table.studio.book.ask(scanned_tag, two).skein.second == "tie mark"
    assert len(marks(table.studio)) == 8


def test_a_skein_twice_is_in_hand_once_and_the_last_one_laid_back_empties_the_table(table):
    (one,) = first(table)
    table.scan(one, one)
    assert table.bench.card.total.accessibleName() == "1 skein"
    assert "is in hand already" in table.note
    table.bench.card._rows.itemAt(0).widget().out.emit()
    table.quiet()
    assert not isinstance(table.bench.card, SkeinsInHand)
    assert table.trail == []


def test_what_cannot_be_taken_in_hand_says_why(table):
    studio, (one, *_) = table.studio, first(table, 1)
    printed = studio.print(studio.finish(studio.mix(*_dyed_two(studio)), red=4)[0], 1)
    waiting = next(mark for mark in marks(studio, 2))
    table.scan(waiting)
    assert "hangs on no skein yet" in table.trouble
    assert printed
    studio.do(sell, [studio.skeins[0]])
    table.scan(one)
    assert "is sold by the book" in table.trouble
    table.scan(SECONDS)
    assert "No finished skein is in hand; nothing was saved." in table.trouble


def _dyed_two(studio):
    rows = [studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2)]
    studio.dye(*rows)
    return rows


def test_a_hold_is_in_outline_on_a_skein_in_hand(table):
    table.studio.do(hold, "cone", 1, "oil")
    table.scan(*first(table))
    assert table.bench.card.skeins[0].held
    table.scan(SPLIT, plate(5), DONE, DONE)
    assert piles(table.studio) == [(table.studio.code(1), "mini", 5)]


def test_what_was_gathered_elsewhere_meanwhile_is_out_of_hand(table):
    from app.work.remaking import gather

    table.scan(*first(table, 2))
    table.studio.do(gather, table.studio.skeins[:1], table.studio.discs[3])
    table.quiet()
    assert [skein.yarn for skein in table.bench.card.skeins] == [table.studio.skeins[1]]
