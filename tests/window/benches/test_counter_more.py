"""The counter: more of a lot is wanted; what can be offered, and what was said to it."""

from datetime import timedelta
from time import perf_counter

import pytest
from sqlalchemy import select

from app.calculations.codes import shown
from app.lookups.agreed import agreed_lines, offers_of
from app.lookups.left_to_sell import wanting
from app.lookups.skeins import now_of
from app.records import Whereabouts
from app.work.holding import hold
from app.work.kits import make_kit
from app.work.moving import put_by
from app.work.selling import know_customer
from tests.lookups.cards import read_lot
from tests.window.benches.at_work import plate
from tests.window.benches.counter_hands import open_counter, shelf

GLOVE, BEFORE, FAR = (48.3, -36.6, 3.3), (48.2, -36.6, 3.3), (48.3, -36.6, 5.3)


@pytest.fixture
def counter(qtbot, settings, studio):
    """Three of a lot: one free, one put by, one in a kit not sold; four of one read nearly alike.
    """
    for at in open_counter(qtbot, settings, studio):
        at.lot, at.code, at.skeins, at.marks = at.shelved(3, studio.shelves[0])
        at.near, at.near_code, at.near_skeins, _ = at.shelved(4, studio.shelves[1])
        read_lot(studio, at.lot, GLOVE)
        read_lot(studio, at.near, BEFORE)
        studio.do(put_by, at.skeins[:1], None, studio.clock.now + timedelta(days=2))
        studio.do(make_kit, "Stair-Rail Cowl", at.skeins[1:2])
        yield at


def ways(counter):
    """The keys of the ways that are shown."""
    counter._qtbot.waitUntil(lambda: counter.question.endswith(shown(counter.code))
                  and hasattr(counter.hand.question, "free"))
    return [key.accessibleName() for key in counter.hand.question.keys]


def kept(counter):
    return counter.studio.book.ask(offers_of, counter.lot)


def test_two_scans_show_what_can_be_offered_for_two_more(counter):
    began = perf_counter()
    counter.scan(counter.code, plate(2))  # two actions from the lot to the answer
    assert len(ways(counter)) >= 5
    print(f"from the scan to the ways: {perf_counter() - began:.2f} s of the machine")  # noqa: T201
    words = counter.words(counter.hand.question)
    assert counter.hand.question.free.accessibleName() == "1 left to sell 2 skeins wanted"
    assert "1 free: 1 on shelf 004" in words
    assert "in kit Stair-Rail Cowl, not sold: open it" in words
    assert "put by, and that ends on" in words
    assert f"{shown(counter.near_code)}" in words
    assert "0.1 ± 0.5, looks the same" in words


def test_the_rest_of_a_piece_is_reckoned_from_what_was_used(counter):
    counter.scan(counter.code)
    counter.press("F11")
    asked = counter.hand.question
    assert asked.does.accessibleDescription() == "key Enter"
    asked.used.line.setFocus()
    counter.type("3")
    counter.fill(asked.done, "62")
    ways(counter)
    words = counter.words(counter.hand.question)
    assert "749 m with the allowance, 1.93 reckoned: it only just fits" in words
    assert "2 skeins wanted" in counter.hand.question.free.accessibleName()


def test_nothing_typed_and_wrong_words_are_said_and_kept(counter):
    counter.scan(counter.code)
    counter.press("F11", "Enter")
    assert "Say how many are wanted" in counter.words(counter.hand.question)
    counter.fill(counter.hand.question.metres, "long")
    assert counter.hand.question.metres.line.text() == "long"
    assert "“long” is no number above nothing." in counter.words(counter.hand.question)


def test_what_is_taken_of_the_near_lot_is_kept_with_its_number_and_put_by(counter):
    counter.scan(counter.code, plate(2))
    number = next(n for n, key in enumerate(ways(counter), 1)
                  if "lot" in key and "Same" not in key)
    counter.press(str(number), "1")
    keeps = f"Put by some of {shown(counter.near_code)}"
    counter._qtbot.waitUntil(lambda: counter.question == keeps)
    assert kept(counter) == ()  # nothing is kept before it is done
    counter.fill(counter.hand.question.whom.field, "Bo")
    (offer,) = kept(counter)
    assert (offer.wanted, offer.answer, offer.ciede2000) == (2, "taken", 0.1)
    assert offer.other == counter.near_code
    assert counter.question == ""  # two were wanted, two are kept
    states = [counter.studio.book.ask(now_of, skein).state for skein in counter.near_skeins]
    assert sorted(states) == ["put by", "put by", "shelf", "shelf"]


def way(counter, words):
    """The number of the way in which these words stand."""
    ways(counter)
    return next(n for n, one in enumerate(counter.hand.question.found.ways, 1)
                if words in one.words)


def test_the_kit_that_is_taken_is_opened_with_one_key_and_both_are_put_by_with_the_next(counter):
    counter.studio.do(know_customer, "Bo Ek")
    counter.ask("bo")  # it is they who are served
    counter.scan(counter.code, plate(2))
    counter.press(str(way(counter, "in kit")))
    does = counter.hand.question.keys[0].accessibleName()
    assert does == "Open it: its skeins on shelf 004"
    counter.press("1")
    assert counter.studio.book.ask(now_of, counter.skeins[1]).state == "shelf"
    assert counter.hand.question.free.accessibleName() == "2 left to sell 2 skeins wanted"
    counter.press("1")
    assert counter.hand.question.keys[0].accessibleName() == "Put 2 by for Bo Ek, until 13 Apr"
    counter.press("1")
    assert counter.said == "put by 2 skeins until 13 Apr 2026"
    assert counter.note.startswith("fetch ")
    assert counter.question == ""
    assert [(one.way, one.answer) for one in kept(counter)] == 2 * [("same lot", "taken")]
    counter.studio.check()


def test_a_put_by_that_is_about_to_end_is_ended_where_it_lies(counter):
    ada = counter.studio.do(know_customer, "Ada Nygård")
    ends = counter.studio.clock.now + timedelta(days=2)
    counter.studio.do(put_by, counter.skeins[2:], counter.studio.shelves[1], ends, ada)
    counter.scan(counter.code, plate(2))
    ways(counter)
    whose = {one.of[0].name: n for n, one in enumerate(counter.hand.question.found.ways, 1)
             if "put by" in one.words}
    counter.press(str(whose["Ada Nygård"]))
    assert "put by for Ada Nygård: ask before" in counter.words(counter.hand.question)
    counter.press("1")
    assert counter.said == "ended the put-by of 1 skein: on the shelf again"
    assert counter.studio.book.ask(now_of, counter.skeins[2]).place == "the window"
    counter.press(str(way(counter, "put by, and that ends on")), "1")  # nobody said where it lies
    counter.scan(shelf(4))
    assert counter.studio.book.ask(now_of, counter.skeins[0]).state == "shelf"
    assert counter.hand.question.free.accessibleName() == "2 left to sell 2 skeins wanted"


def test_a_lot_of_another_day_goes_on_an_order_and_that_the_customer_agreed_is_kept(counter):
    counter.scan(counter.code, plate(2))
    counter.press(str(way(counter, shown(counter.near_code))), "4")
    assert counter.question == f"Promise some of {shown(counter.near_code)}"
    counter.fill(counter.hand.question.whom.field, "Bo")
    assert counter.said == (f"promised 2 skeins of {shown(counter.near_code)}, order T1; the "
                            "customer agreed to this lot")
    assert counter.studio.book.ask(agreed_lines, [1])[1].how == "customer agreed"
    counter.press("F8")
    counter.ask("T1")
    assert "order T1; customer agreed 6 Apr 2026" in counter.rows[0]
    counter.studio.check()


def test_what_no_key_can_do_here_says_where_and_a_redye_is_noted(counter):
    counter.scan(counter.code, plate(9))
    counter.press(str(way(counter, "Dye at least 3 to match")))
    assert [key.accessibleName() for key in counter.hand.question.keys] == [
        "Note it for the dyer", "Thinks it over", "Declined"]
    counter.press("1")
    assert [(one.way, one.wanted, one.answer) for one in kept(counter)] == [("redye", 9, "taken")]


def test_a_declined_offer_is_kept_and_the_other_ways_stand_there_still(counter):
    counter.scan(counter.code, plate(2))
    ways(counter)
    counter.press("1", "3")
    counter._qtbot.waitUntil(lambda: bool(kept(counter)))
    assert [(one.way, one.answer) for one in kept(counter)] == [("same lot", "declined")]
    assert counter.hand.question.free.accessibleName() == "1 left to sell 2 skeins wanted"
    counter.press("F8")
    assert counter.question == ""
    assert counter.hand.lot_card.offers.text() == (
        "Offered 6 Apr 2026, 2 wanted: same lot; declined.")
    counter.press("F2")
    assert counter.hand.lot_card.offers.isHidden()


def test_the_allowance_is_a_field_and_the_gauge_says_what_must_be_left_of_each_lot(counter):
    counter.scan(counter.code)
    counter.press("F11")
    asked = counter.hand.question
    asked.allowance.line.setText("8")
    counter.press("F6")
    for field, words in ((asked.gauge.stitches, "27"), (asked.gauge.rows, "36"),
                         (asked.gauge.each, "1,30"), (asked.gauge.round, "120")):
        field.line.setText(words)
    asked.used.line.setText("3")
    counter.fill(asked.done, "62")
    ways(counter)
    words = counter.words(counter.hand.question)
    assert "770 m with the allowance, 1.99 reckoned: it only just fits" in words  # 713 x 1.08
    assert "over 29 rows; 61 m of each lot must be left" in words


def test_of_a_held_lot_the_hold_is_shown_and_only_other_lots_are_offered(counter):
    counter.studio.do(hold, "lot", counter.lot, "oil")
    counter.scan(counter.code, plate(2))
    ways(counter)
    assert "oil. Ask OW" in counter.words(counter.card)
    words = counter.words(counter.hand.question)
    assert counter.hand.question.free.accessibleName() == "0 left to sell 2 skeins wanted"
    assert "in kit" not in words
    assert "0.1 ± 0.5, looks the same" in words


def test_what_no_lot_can_fill_names_the_lots_and_the_worst_pair(counter):
    counter.scan(counter.code, plate(5))
    ways(counter)
    words = counter.words(counter.hand.question)
    assert "The fewest lots for it: " in words
    assert ", 5 free; least alike are " in words
    assert "0.10 apart." in words


def test_a_key_pressed_twice_and_two_keys_at_once_answer_once(counter):
    counter.studio.do(know_customer, "Bo Ek")
    counter.ask("bo")
    counter.scan(counter.code, plate(2))
    counter.press(str(way(counter, shown(counter.near_code))))
    put_by_key, thinks, _, on_order = counter.hand.question.keys
    on_order.click(), on_order.click(), thinks.click(), put_by_key.click()
    counter.quiet()
    assert counter.trouble == ""
    assert [one.answer for one in kept(counter)] == ["taken"]
    assert [one.open for one in counter.studio.book.ask(wanting, counter.near)] == [2]


def test_a_shelf_that_is_scanned_opens_the_kit_there(counter):
    counter.scan(counter.code, plate(2))
    counter.press(str(way(counter, "in kit")))
    counter.scan(shelf(7))
    assert counter.said.startswith("opened kit ")
    now = counter.studio.book.ask(now_of, counter.skeins[1])
    assert (now.state, now.place) == ("shelf", "the window")
    assert known_as(counter, counter.skeins[1]) == "scanned"
    counter.studio.do(know_customer, "Bo Ek")
    counter.ask("bo")
    counter.scan(counter.code, plate(2))
    counter.press(str(way(counter, "2 free")), "1")  # no tag is scanned: it is said which they are
    assert counter.said.startswith("put by 2 skeins until ")
    assert known_as(counter, counter.skeins[1]) == "stated"


def known_as(counter, skein):
    """How it is known where it is now."""
    return counter.studio.book.ask(lambda connection: connection.execute(
        select(Whereabouts.basis).where(Whereabouts.yarn == skein, Whereabouts.until.is_(None),
                                        Whereabouts.struck.is_(None))).scalar())
