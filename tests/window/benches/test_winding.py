"""Winding: a cone, its count, a disc; every walk through the real window on a real book."""

import pytest
from PySide6.QtCore import Qt

from app.calculations.codes import Kind, numbered, shown
from app.lookups.bundles import bundle_facts
from app.lookups.cones import cone_facts
from app.lookups.now import NOW
from app.work.bases import describe_base
from app.work.holding import hold
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.makers import LONG_MM, tarnfield
from tests.window.benches.at_work import DONE, SPLIT, UNDO, disc, plate
from tests.window.benches.winding_hands import (
    begin_winding,
    big,
    cards,
    cone,
    groups,
    on_disc,
    today,
)
from tests.window.hands import send


@pytest.fixture
def reel(qtbot, settings, studio):
    yield from begin_winding(qtbot, settings, studio)


@pytest.fixture
def worked_cone(studio):
    """1,462 g with a centre of 64 g, moisture 13 %: the cone whose yield is worked out by hand."""
    return studio.do(receive, DeliveryIn(
        "Aske Mill", "2241", "Tarnfield 4-ply", studio.clock.now,
        (ConeIn(1_462_000, 64_000, "A-203", moisture_permille=130),)))[0]


# what is on the reel


def test_an_empty_reel_asks_for_a_cone_and_lists_those_on_hand_part_cones_first(reel, studio):
    first, second = studio.cones(2)
    studio.wind(second, 2)
    reel.quiet()
    start = cards(reel).start
    assert start.isVisible()
    assert start.cones.model.index(0, 0).data() == shown(cone(2))
    assert start.cones.model.index(0, 1).data() == "11"


def test_a_scanned_cone_shows_tie_turns_and_what_it_gives_with_the_rest(reel, worked_cone):
    reel.scan(cone(1))
    card = cards(reel).cone
    assert big(reel) == ("red", "275", "0")
    assert card.turn_words.text() == "turns × 1.50 m"
    assert card.gives.text() == "13 skeins + 255 m · 5,618 m left"
    assert card.rest.text().startswith("255.2 m make 3 minis of 55 turns, 7.7 m are left")
    assert reel.trail == [("delivery", "6 Apr"), ("cone", shown(cone(1)))]


def test_the_weighed_count_of_a_cone_changes_what_it_gives(reel, studio):
    studio.do(receive, DeliveryIn(
        "Aske Mill", "2241", "Tarnfield 4-ply", studio.clock.now,
        (ConeIn(1_462_000, 64_000, "A-203", wrap_mg=25_600, moisture_permille=130),)))
    reel.scan(cone(1))
    assert cards(reel).cone.gives.text().startswith("13 skeins + 123 m")
    assert cards(reel).cone.rest.text().endswith("count checked")


def test_a_cone_of_no_base_of_ours_says_where_to_look(reel):
    reel.scan(cone(77))
    assert "no cone in the book" in reel.trouble
    assert cards(reel).start.isVisible()


def test_a_cone_on_hold_is_wound_but_says_so_in_the_plate_and_the_sentence(reel, studio):
    studio.do(hold, "cone", studio.cone(), "oil stain")
    reel.scan(cone(1), plate(2), disc(31))
    assert on_disc(studio, 31) == ({"red": 2}, (shown(cone(1)),))
    held = [words.text() for words in cards(reel).cone.findChildren(type(cards(reel).cone.base))]
    assert f"{shown(cone(1))}: oil stain; ask OW, Osk Wray." in held


# count and disc


def test_cone_count_and_disc_are_one_deed_with_undo_in_the_foot(reel, studio):
    one = studio.cone()
    reel.scan(cone(1), plate(6))
    assert big(reel) == ("red", "275", "6")
    assert cards(reel).cone.next.text() == "Now scan the disc of this cord."
    reel.scan(disc(31))
    assert reel.said == f"wound 6 skeins of {shown(cone(1))}, red ties, on disc 031"
    assert on_disc(studio, 31) == ({"red": 6}, (shown(cone(1)),))
    assert studio.book.ask(cone_facts, one).drawn_mm == 6 * LONG_MM
    assert big(reel) == ("red", "275", "0")
    assert today(reel) == [f"disc 031: 6 red, {shown(cone(1))}"]
    reel.scan(UNDO)
    assert on_disc(studio, 31) is None
    assert today(reel) == []


def test_the_cone_stays_in_hand_with_what_is_left_of_it(reel, worked_cone):
    reel.scan(cone(1), plate(6), disc(31))
    assert cards(reel).cone.gives.text() == "7 skeins + 255 m · 3,143 m left"


def test_keys_alone_wind_a_bundle(reel, studio):
    studio.cone()
    reel.press("Escape")
    reel.type("c1")
    reel.press("Enter")
    reel.press("1", "1", "Enter")
    assert cards(reel).count.disc.isVisible()
    reel.press("3", "2", "Enter")
    assert on_disc(studio, 32) == ({"red": 11}, (shown(cone(1)),))


def test_an_enter_close_upon_its_digit_is_heard_too(reel, studio):
    studio.cone()
    reel.scan(cone(1))
    send(reel.window, "6\r", 5)
    reel._qtbot.waitUntil(lambda: cards(reel).count.disc.isVisible())
    send(reel.window, "31\r", 5)
    reel._qtbot.waitUntil(lambda: on_disc(studio, 31) is not None)
    assert on_disc(studio, 31)[0] == {"red": 6}


def test_taps_alone_wind_a_bundle_as_far_as_the_disc(reel, studio):
    studio.cone()
    reel.quiet()
    view = cards(reel).start.cones.view
    at = view.visualRect(view.model().index(0, 0)).center()
    reel._qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=at)
    reel.quiet()
    key = next(key for key in cards(reel).count.pad.findChildren(type(cards(reel).count.tie_on))
               if {"8", "skeins"} == set(key.accessibleName().replace(":", "").split()))
    reel.click(key)
    reel.click(cards(reel).count.tie_on)
    reel.type("31")
    reel.click(cards(reel).count.tie_on)
    assert on_disc(studio, 31) == ({"red": 8}, (shown(cone(1)),))


def test_digits_begin_anew_where_both_are_no_count_that_can_be(reel, studio):
    studio.cone()
    reel.scan(cone(1))
    reel.press("6", "5")
    assert big(reel)[2] == "5"
    reel.press("1", "3")
    assert big(reel)[2] == "13"
    reel.press("0")
    assert big(reel)[2] == "0"


def test_a_count_typed_into_the_scan_line_counts_too(reel, studio):
    studio.cone()
    reel.scan(cone(1))
    reel.press("Escape", "7", "Enter")
    assert big(reel)[2] == "7"


def test_a_disc_before_its_count_waits_for_it_and_done_ties_it_on(reel, studio):
    studio.cone()
    reel.scan(cone(1), disc(31))
    assert "Disc 031 is at hand" in cards(reel).cone.next.text()
    reel.scan(plate(4), DONE)
    assert on_disc(studio, 31) == ({"red": 4}, (shown(cone(1)),))


def test_more_than_the_cone_holds_is_saved_and_said(reel, studio):
    studio.cone()
    reel.scan(cone(1))
    reel.press("1", "5")
    assert "more counted than it holds" in cards(reel).cone.gives.text()
    reel.scan(disc(31))
    assert on_disc(studio, 31)[0] == {"red": 15}
    assert any("count again" in sentence for sentence in reel.found)


def test_minis_have_their_own_turns_and_their_own_word(reel, studio):
    studio.cone()
    reel.scan(cone(1))
    reel.press("m")
    assert big(reel) == ("red", "55", "0")
    reel.scan(plate(3), disc(31))
    assert reel.said == f"wound 3 minis of {shown(cone(1))}, red ties, on disc 031"
    reel.scan(SPLIT)
    assert big(reel)[1] == "275"


def test_a_form_the_base_has_not_is_refused_in_its_place(reel, studio):
    studio.do(describe_base, tarnfield(name="Gossamer Lamb", put_ups=tarnfield().put_ups[:1]))
    studio.cones(1, "Gossamer Lamb")
    reel.scan(cone(1))
    key = cards(reel).cone.form
    assert not key.isEnabled()
    assert "This base has one form." in key.accessibleDescription()


# double scans


def test_a_bounce_of_the_disc_ties_on_once_and_is_told_softly(reel, studio):
    studio.cone()
    reel.scan(cone(1), plate(6))
    reel.bounce(disc(31))
    assert reel.note.endswith("was scanned twice and taken once")
    assert (reel.trouble, on_disc(studio, 31)[0]) == ("", {"red": 6})


def test_a_cone_scanned_again_stays_in_hand_with_its_count(reel, studio):
    studio.cone()
    reel.scan(cone(1), plate(6), cone(1))
    assert groups(reel) == ["6 red"]


def test_the_same_count_for_the_next_cone_is_no_bounce(reel, studio):
    studio.cones(2)
    line = reel.window.head.scan_line
    for code in (cone(1), plate(4), cone(2), plate(4)):
        with reel._qtbot.waitSignal(line.scanned):
            send(line, code + "\r", 5)
        reel.quiet()
    assert groups(reel) == ["4 red", "4 yellow"]


def test_scans_that_come_faster_than_the_book_answers_keep_their_order(reel, studio):
    studio.cones(2)
    for code in (cone(1), plate(4), cone(2), plate(3), disc(31)):
        reel.window.head.scan_line.scanned.emit(code)
    reel.quiet()
    assert on_disc(studio, 31)[0] == {"red": 4, "yellow": 3}


def test_a_live_disc_with_nothing_counted_tells_what_it_hangs_on(reel, studio):
    studio.cone()
    reel.scan(cone(1), plate(6), disc(31), disc(31))
    assert "Disc 031 hangs on 6 skeins of Tarnfield 4-ply: 6 red ties" in reel.found[0]
    assert on_disc(studio, 31)[0] == {"red": 6}


# several cones


def test_four_cones_on_one_reel_are_four_groups_with_four_ties_on_one_disc(reel, studio):
    studio.cones(4)
    for number, count in ((1, 1), (2, 2), (3, 3), (4, 4)):
        reel.scan(cone(number), plate(count))
    assert groups(reel) == ["1 red", "2 yellow", "3 blue", "4 green"]
    reel.scan(disc(31))
    ties, cones = on_disc(studio, 31)
    assert ties == {"red": 1, "yellow": 2, "blue": 3, "green": 4}
    assert cones == tuple(shown(cone(number)) for number in (1, 2, 3, 4))
    assert len(studio.book.ask(bundle_facts, studio.discs[0], NOW).rows) == 4


def test_a_cone_without_a_count_gives_way_to_the_next(reel, studio):
    studio.cones(2)
    reel.scan(cone(1), cone(2))
    assert groups(reel) == ["0 red"]


def test_the_next_tie_passes_over_what_open_cones_of_the_base_wear(reel, studio):
    first, second, _ = studio.cones(3)
    studio.wind(first, 2, "red")
    studio.wind(second, 2, "yellow")
    reel.scan(cone(3))
    assert big(reel)[0] == "blue"


def test_a_group_is_taken_in_hand_by_its_key(reel, studio):
    studio.cones(2)
    reel.scan(cone(1), plate(4), cone(2), plate(2))
    reel.click(cards(reel).cord.keys[0])
    assert big(reel) == ("red", "275", "4")
    reel.scan(plate(5))
    assert groups(reel) == ["5 red", "2 yellow"]


def test_another_thread_is_chosen_from_its_peg(reel, studio):
    studio.cone()
    reel.scan(cone(1), plate(6))
    reel.press("t")
    keys = {key.word: key for key in cards(reel).threads.keys.keys}
    assert keys["red"].isChecked()
    reel.click(keys["white"])
    assert big(reel)[0] == "white"
    reel.scan(disc(31))
    assert on_disc(studio, 31)[0] == {"white": 6}


# plates without a cone


def test_a_plate_without_a_cone_asks_for_the_cone(reel):
    reel.scan(plate(6))
    assert reel.trouble == "No cone is on the reel yet; nothing was noted. Scan the cone first."


def test_a_code_of_another_kind_is_not_for_this_bench(reel):
    reel.scan(numbered(Kind.POT, 1).text)
    assert "this bench has no use for it" in reel.trouble
