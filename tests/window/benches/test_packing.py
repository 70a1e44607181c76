"""The packing bench: the right skeins into the right parcel, each by one scan."""

from datetime import timedelta

import pytest
from PySide6.QtWidgets import QLabel

from app.calculations.codes import shown
from app.lookups.recent import entries
from app.lookups.skeins import now_of
from app.window.benches.packing.held import Held
from app.work.holding import hold
from app.work.moving import put_by
from app.work.reporting import FaultIn, report_fault
from app.work.selling import know_customer, sell
from app.work.tagging import spoil_tags
from tests.window.benches.at_work import DONE, UNDO, plate
from tests.window.benches.packing_hands import (
    MOTH,
    SLUICE,
    again,
    at_packing,
    order,
    shelf,
    stocked,
)
from tests.window.hands import pause


@pytest.fixture(scope="module")
def kept(studio_file, tmp_path_factory):
    """Skeins on two shelves and order 1042, made once."""
    return stocked(studio_file, tmp_path_factory.mktemp("packing"))


@pytest.fixture
def shop(book, kept):
    """A book of its own for every test."""
    return again(book, kept)


@pytest.fixture
def packing(qtbot, settings, shop):
    """At the packing bench."""
    yield from at_packing(qtbot, settings, shop)


def test_an_order_is_opened_by_its_number_filled_by_tags_and_sent_with_one_key(packing, shop):
    assert packing.listed == [("1042", "now, each from one lot", "0 of 4", "Ada Nygård",
                               "6 Apr")]
    packing.scan("1042")
    assert packing.headline.startswith("4 to take for order 1042 for Ada Nygård")
    packing.scan(*shop.marks[0][:3], shop.marks[2][0])
    assert packing.lines == [f"{SLUICE}, Tarnfield 4-ply: 3 of 3",
                             f"{MOTH}, Tarnfield 4-ply: 1 of 1"]
    assert packing.headline == "4 taken: order 1042 may leave for Ada Nygård · of 6 Apr 2026"
    packing.press("Enter")
    assert packing.said == "sent order 1042: 4 skeins"
    assert packing.bench.waiting.isVisible()
    assert packing.bench.waiting.title.text() == "No order waits."
    assert [row[:3] for row in packing.bench.waiting.sent._rows] == [("1042", "Ada Nygård", "4")]
    assert shop.book.ask(now_of, shop.skeins[2][0]).state == "sent"
    shop.check()


def test_by_scanner_alone_and_what_was_sent_is_taken_back_with_one_plate(packing, shop):
    packing.scan("#1042", *shop.marks[0][:3], shop.marks[2][0], DONE)
    assert packing.orders() == {}
    packing.scan(UNDO)
    assert packing.orders() == {"1042": (4, 4)}
    assert packing.listed[0][1] == "all taken: to be sent"


def test_the_oldest_waits_first_and_arrows_and_enter_choose(packing, shop):
    shop.clock.now += timedelta(days=1)
    order(shop, "1043", (SLUICE, 5, 1, None), name="")
    order(shop, "1044", (MOTH, 4, shop.moth, None))
    order(shop, "1045", ("Surprise me", 1, None, None))
    packing.quiet()
    assert [(row[0], row[3], row[1]) for row in packing.listed] == [
        ("1042", "Ada Nygård", "now, each from one lot"),
        ("1043", "buyer not known", "only from several lots"),
        ("1044", "Ada Nygård", "1 too few"),
        ("1045", "Ada Nygård", "words to be looked at")]
    packing.press("Down", "Enter")
    assert packing.headline.startswith("5 to take for order 1043 for buyer not known")
    packing.press("F8")
    assert packing.bench.waiting.open.accessibleName() == "Pack order 1043"
    packing.press("Up")
    assert packing.bench.waiting.open.accessibleName() == "Pack order 1042"


def test_a_typed_number_opens_its_order_and_an_unknown_one_is_said(packing):
    packing.type("1042")
    packing.press("Enter")
    assert packing.card.order.number == "1042"
    packing.scan("9999")
    assert "No order 9999 is in the book." in packing.trouble
    assert packing.card.order.number == "1042"


def test_a_name_that_waits_twice_chooses_none_and_an_unknown_one_is_said(packing, shop):
    order(shop, "1060", (MOTH, 1, shop.moth, None))
    packing.press("F8")
    packing.enter(8)
    packing.type("ada")
    packing.press("Enter")
    assert packing.trouble.startswith("2 orders wait for “ada”: 1042, 1060. Type the number")
    assert packing.bench.in_hand is None
    packing.press("Enter")
    assert packing.card.order.number == "1042"
    packing.press("F8")
    packing.type("zoe")
    packing.press("Enter")
    assert "No order zoe is in the book, and none waits for anybody so called." in packing.trouble


def test_done_says_of_each_order_why_it_does_not_leave(packing, shop):
    packing.scan("1042", DONE)
    assert packing.trouble == ("Order 1042 was not sent: 4 of 4 are still to be taken. Take what "
                               "is wanted, or call it off with F7.")
    packing.scan(*shop.marks[0][:3], shop.marks[2][0], DONE)
    packing.scan("1042", DONE)
    assert packing.trouble.startswith("Nothing of order 1042 is left to send; nothing was saved.")
    packing.scan(shop.marks[0][3])
    assert packing.trouble.endswith("nothing was taken. Put this one back.")


def test_the_line_says_where_free_ones_lie_the_lot_that_can_fill_it_first(packing, shop):
    packing.scan("1042")
    def lies(lot, count):
        return f"{shown(shop.code(shop.lots[lot]))}: {count} on shelf 003".replace(" ", "\u00a0")

    offered = packing.card.rows[0].offers.text()
    assert offered == f"{lies(0, 4)}   {lies(1, 2)}"
    packing.scan(shop.marks[0][0])
    assert packing.card.rows[0].offers.text() == f"{lies(0, 3)}   {lies(1, 2)}"
    assert packing.card.rows[0].taken.text() == f"In the parcel: {shown(shop.marks[0][0])}."


def test_what_nobody_wants_is_refused_with_what_is_wanted(packing, shop):
    order(shop, "1050", (MOTH, 1, shop.moth, None))
    packing.scan("1050", shop.marks[0][0])
    assert packing.trouble == (
        f"This is {SLUICE}; order 1050 wants {MOTH}. Nothing was taken. Put it back, and take "
        "what is wanted.")
    assert packing.orders()["1050"] == (0, 1)


def test_one_more_than_is_wanted_is_refused(packing, shop):
    packing.scan("1042", shop.marks[2][0], shop.marks[2][1])
    assert f"This is {MOTH}, and order 1042 has the one it wants" in packing.trouble
    packing.scan(*shop.marks[0][:3], shop.marks[0][3])
    assert "Order 1042 wants nothing more" in packing.trouble


def test_a_line_that_was_promised_its_lot_takes_no_other(packing, shop):
    order(shop, "1051", (SLUICE, 2, 1, shop.lots[1]))
    packing.scan("1051")
    assert packing.card.rows[0].name.text().endswith(
        f"· promised {shown(shop.code(shop.lots[1]))}")
    packing.scan(shop.marks[0][0])
    assert (f"This is of {shown(shop.code(shop.lots[0]))}; order 1051 was promised "
            f"{shown(shop.code(shop.lots[1]))}") in packing.trouble
    packing.scan(*shop.marks[1])
    assert packing.orders()["1051"] == (2, 2)


def test_a_lot_that_another_order_was_promised_is_refused(packing, shop):
    order(shop, "1051", (SLUICE, 2, 1, shop.lots[1]))
    packing.scan("1042", shop.marks[1][0])
    assert "order 1051 wants 2" in packing.trouble
    assert packing.orders()["1042"] == (0, 4)


def test_two_lots_in_one_line_are_said_and_the_answer_is_kept(packing, shop):
    packing.scan("1042", *shop.marks[0][:2], shop.marks[1][0])
    assert packing.found[0].startswith("One line from 2 lots:")
    packing.scan(shop.marks[2][0])
    assert packing.found[0].startswith("One line from 2 lots:")
    assert packing.card.rows[0].taken.text().startswith("From 2 lots. In the parcel:")
    packing.answer("Customer agreed")
    assert packing.said == "order 1042, a line from two lots: customer agreed"
    assert packing.found == []
    assert shop.book.ask(entries)[0].said == packing.said
    packing.scan(DONE)
    assert packing.orders() == {}


def test_a_line_from_two_lots_leaves_only_when_it_was_answered_and_is_asked_about_once(
    packing, shop
):
    packing.scan("1042", *shop.marks[0][:1], shop.marks[1][0], shop.marks[2][0], DONE)
    assert "2 lots" in packing.found[0]
    packing.press("F6")
    assert "a line of it is from several lots" in packing.trouble
    assert packing.orders()["1042"] == (3, 4)
    packing.press("F8")
    packing.scan("1042")
    assert packing.found[0].startswith("One line from 2 lots:")
    packing.scan(plate(2))
    assert packing.said == "order 1042, a line from two lots: rows card put in"
    packing.scan(shop.marks[0][1])
    assert packing.found == []
    packing.scan(DONE)
    assert packing.orders() == {}


def test_two_lots_that_were_undone_are_not_asked_about_any_more(packing, shop):
    packing.scan("1042", shop.marks[0][0], shop.marks[1][0], UNDO)
    assert packing.found == []
    assert packing.orders()["1042"] == (1, 4)


def test_a_bounce_counts_once_and_later_it_is_asked_to_come_out(packing, shop):
    mark = shop.marks[0][0]
    packing.scan("1042")
    packing.bounce(mark)
    assert packing.orders()["1042"] == (1, 4)
    assert packing.note == f"{shown(mark)} was scanned twice: it counts once"
    for _ in range(3):
        pause()
    packing.scan(mark)
    assert packing.asked == "TakeOut"
    packing.press("F8")
    assert packing.orders()["1042"] == (1, 4)
    packing.scan(mark)
    packing.press("Enter")
    assert packing.said == f"took {shown(mark)} out of order 1042: shelf 003"
    assert packing.orders()["1042"] == (0, 4)
    assert shop.book.ask(now_of, shop.skeins[0][0]).place == "003"
    packing.scan(mark)
    assert packing.orders()["1042"] == (1, 4)


def test_the_plate_of_a_shelf_puts_it_there(packing, shop):
    packing.scan("1042", shop.marks[0][0], shop.marks[0][0], shelf(4))
    assert shop.book.ask(now_of, shop.skeins[0][0]).place == "004"
    packing.scan(shelf(4))
    assert "this bench has no use for it" in packing.trouble


def test_hold_stops_it_in_its_plate_and_says_whom_to_ask_and_what_may_go(packing, shop):
    order(shop, "1052", (SLUICE, 1, 1, None))
    shop.do(hold, "lot", shop.lots[0], "weak jar")
    packing.scan("1052", shop.marks[0][0])
    held = packing.card.aside
    assert isinstance(held, Held)
    assert "may not leave. Nothing was taken: put it back." in held.sentence
    assert "weak jar" in held.why[0]
    assert held.why[0].endswith("ask OW, Osk Wray.")
    assert held.instead.text() == (f"Instead: {shown(shop.code(shop.lots[1]))}: 2 on shelf 003, "
                                   "not measured: hold them side by side")
    packing.scan(shop.marks[1][0])
    assert packing.asked == ""
    assert packing.orders()["1052"] == (1, 1)


def test_void_sold_put_by_and_taken_elsewhere_are_refused_each_with_a_way_out(packing, shop):
    sold, kept, elsewhere, ours = shop.marks[0]
    shop.do(sell, shop.skeins[0][:1])
    ada, other = shop.do(know_customer, "Ada Nygård"), shop.do(know_customer, "Bo Lind")
    shop.do(put_by, shop.skeins[0][1:2], None, shop.clock.now + timedelta(days=7), other)
    order(shop, "1060", (SLUICE, 1, 1, None))
    packing.scan("1060", elsewhere, "1042", sold)
    assert "was sold already with order" in packing.trouble
    assert "take it back at the Counter first" in packing.trouble
    packing.scan(kept)
    assert f"{shown(kept)} is put by for Bo Lind until 13 Apr 2026" in packing.trouble
    packing.scan(elsewhere)
    assert f"{shown(elsewhere)} is taken for order 1060" in packing.trouble
    packing.scan(ours)
    assert packing.orders()["1042"] == (1, 4)
    assert ada != other


def test_a_void_tag_names_its_successor_and_a_tag_of_nobody_is_said(packing, shop):
    tag = shop.print(shop.finish(_dyed(shop), red=1)[0], 1)[0]
    shop.do(spoil_tags, [tag], "smudged")
    mark = shop.book.ask(_mark_of, tag)
    packing.scan("1042", mark)
    assert f"{shown(mark)} is void" in packing.trouble
    assert "Throw this tag away" in packing.trouble


def test_a_skein_that_fits_two_lines_is_asked_about_by_one_key_or_plate(packing, shop):
    order(shop, "1070", (f"{SLUICE} for the back", 1, 1, None), (SLUICE, 2, 1, None))
    packing.scan("1070", shop.marks[0][0])
    assert packing.asked == "WhichLine"
    packing.press("1")
    packing.scan(shop.marks[0][1])
    assert packing.orders()["1070"] == (2, 3)
    assert [row.line.filled for row in packing.card.rows] == [1, 1]


def test_words_that_nobody_read_are_asked_about_and_may_be_called_off(packing, shop):
    order(shop, "1080", ("Surprise skein", 1, None, None), ("Gift card", 1, None, None))
    packing.scan("1080", shop.marks[2][0])
    packing.scan(plate(1))
    assert packing.orders()["1080"] == (1, 2)
    assert packing.card.off.accessibleName() == "Send 1, call 1 off"
    packing.press("F7")
    assert packing.said == "sent order 1080: 1 skein; the rest is called off"
    assert "1080" not in packing.orders()


def test_a_part_may_leave_and_the_rest_stays_open(packing, shop):
    packing.scan("1042", *shop.marks[0][:2])
    packing.scan(DONE)
    assert "Order 1042 was not sent: 2 of 4 are still to be taken." in packing.trouble
    packing.press("F6")
    assert packing.said == "sent order 1042: 2 skeins"
    assert packing.orders()["1042"] == (2, 4)
    packing.scan("1042")
    assert packing.card.rows[0].taken.text().startswith("Sent: ")


def test_without_an_order_in_hand_a_taken_skein_opens_its_order_and_others_are_refused(
    packing, shop
):
    packing.scan("1042", shop.marks[0][0])
    packing.press("F8")
    packing.scan(shop.marks[0][1])
    assert "No order is in hand; nothing was taken." in packing.trouble
    packing.scan(shop.marks[0][0])
    assert packing.card.order.number == "1042"
    assert packing.asked == ""


def test_the_words_on_the_bench_name_nobody_but_the_buyer(packing):
    packing.scan("1042")
    words = [label.text() for label in packing.bench.in_hand.findChildren(QLabel)]
    assert any("Ada Nygård" in one for one in words)
    assert not any("@" in one for one in words)


def _dyed(studio):
    group = studio.wind(studio.cone(), 1)
    studio.dye(group)
    return group


def _mark_of(connection, tag):
    from sqlalchemy import select

    from app.records import Tag
    return connection.execute(select(Tag.mark).where(Tag.id == tag)).scalar_one()


def test_a_skein_told_faulty_is_taken_with_the_warning_said(packing, shop):
    shop.do(report_fault, FaultIn("streak", "counter"), shop.skeins[0][:1])
    packing.scan("1042", shop.marks[0][0])
    words = (f"“streak” was told of {shown(shop.marks[0][0])} on 6 Apr 2026; nobody closed it.")
    assert (packing.found, packing.orders()) == ([words], {"1042": (1, 4)})
    assert shop.book.ask(entries, 1)[0].findings == (words,)
    packing.press("F6")
    assert packing.said == "sent order 1042: 1 skein"
    assert packing.found == [words]
