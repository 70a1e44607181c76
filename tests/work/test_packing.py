"""What goes into a parcel, comes out of it, and leaves."""

from datetime import timedelta

import pytest

from app.lookups.orders import open_orders
from app.lookups.skeins import now_of
from app.problems import Refused
from app.work.holding import hold
from app.work.moving import To, move, put_by
from app.work.offering import agree_line
from app.work.packing import (
    call_rest_off,
    pack,
    send_parcel,
    take_out,
)
from app.work.selling import Wanted, know_customer
from tests.lookups.cards import read_lot
from tests.lookups.shop import ordered, shelved

SHELF = 21 + 2  # the first plate after those of the studio


@pytest.fixture
def shop(studio):
    """Two lots on two shelves, and order 1042 for three of them."""
    (studio.one, studio.skeins), (studio.two, studio.others) = shelved(studio, 4, 2)
    (studio.line,) = ordered(studio, "1042", 3)
    studio.buyer = studio.book.ask(open_orders)[0].customer
    return studio


def filled(shop):
    (order,) = shop.book.ask(open_orders)
    return order.filled, order.wanted


def test_skeins_go_in_one_by_one_and_leave_together(shop):
    for skein in shop.skeins[:3]:
        assert shop.do(pack, shop.line, skein) == ""
    assert filled(shop) == (3, 3)
    assert shop.done(send_parcel, "1042").said == "sent order 1042: 3 skeins"
    assert shop.book.ask(open_orders) == ()
    shop.check()


def test_a_line_from_two_lots_is_said_with_how_far_they_are_apart(shop):
    shop.do(pack, shop.line, shop.skeins[0])
    done = shop.done(pack, shop.line, shop.others[0])
    assert done.answer == done.findings[0]
    assert done.answer.startswith("One line from 2 lots:")
    assert "how far apart they are was not measured. Ask the customer" in done.answer


def test_two_lots_that_were_read_are_told_with_their_number(shop):
    read_lot(shop, shop.one, (48.3, -36.6, 3.3))
    read_lot(shop, shop.two, (48.2, -36.6, 3.3))
    shop.do(pack, shop.line, shop.skeins[0])
    assert "the least alike are 0.1 ± 0.5 apart" in shop.do(pack, shop.line, shop.others[0])


def test_a_skein_that_is_put_by_goes_to_nobody_else(shop):
    other, week = shop.do(know_customer, "Bo Lind"), shop.clock.now + timedelta(days=7)
    shop.do(put_by, shop.skeins[:1], None, week, other)
    shop.do(put_by, shop.skeins[1:2], None, week, shop.buyer)
    shop.do(put_by, shop.skeins[2:3], None, week)
    for skein in (shop.skeins[0], shop.skeins[2]):
        with pytest.raises(Refused, match="put by for somebody else until 13 Apr 2026"):
            shop.do(pack, shop.line, skein)
    shop.do(pack, shop.line, shop.skeins[1])
    shop.clock.now += timedelta(days=8)
    shop.do(pack, shop.line, shop.skeins[0])
    assert filled(shop) == (2, 3)


def test_what_is_taken_out_lies_on_a_shelf_and_is_wanted_again(shop):
    shop.do(pack, shop.line, shop.skeins[0])
    said = shop.done(take_out, shop.skeins[0], SHELF).said
    assert said.endswith("out of order 1042: shelf 003")
    assert filled(shop) == (0, 3)
    assert shop.book.ask(now_of, shop.skeins[0]).place == "003"
    with pytest.raises(Refused, match="is not taken for an order"):
        shop.do(take_out, shop.skeins[0], SHELF)
    shop.do(pack, shop.line, shop.skeins[0])
    shop.check()


def test_a_part_leaves_and_the_rest_stays_open_or_is_called_off(shop):
    shop.do(pack, shop.line, shop.skeins[0])
    shop.do(send_parcel, "1042")
    assert filled(shop) == (1, 3)
    shop.do(pack, shop.line, shop.skeins[1])
    done = shop.done(send_parcel, "1042", call_rest_off=True)
    assert done.said == "sent order 1042: 1 skein; the rest is called off"
    assert shop.book.ask(open_orders) == ()
    shop.undo()
    assert filled(shop) == (2, 3)


def test_nothing_taken_is_called_off_and_nothing_open_is_not(shop):
    with pytest.raises(Refused, match="Nothing is taken for order 1042"):
        shop.do(send_parcel, "1042", call_rest_off=True)
    assert filled(shop) == (0, 3)
    assert shop.done(call_rest_off, "1042").said == "called off what was open of order 1042"
    assert shop.book.ask(open_orders) == ()
    with pytest.raises(Refused, match="Nothing of order 1042 is open"):
        shop.do(call_rest_off, "1042")


def test_a_hold_that_came_after_the_taking_stops_the_parcel(shop):
    shop.do(pack, shop.line, shop.skeins[0])
    shop.do(hold, "lot", shop.one, "weak jar")
    with pytest.raises(Refused, match="HOLD"):
        shop.do(send_parcel, "1042")
    assert shop.book.ask(now_of, shop.skeins[0]).state == "taken"
    shop.do(take_out, shop.skeins[0], SHELF)
    with pytest.raises(Refused, match="HOLD"):
        shop.do(pack, shop.line, shop.skeins[0])


def test_a_promised_lot_and_a_full_line_are_kept_to(shop):
    (line,) = ordered(shop, "1043", Wanted("Glove", 1, shop.two, colourway=1))
    with pytest.raises(Refused, match="was promised"):
        shop.do(pack, line, shop.skeins[0])
    shop.do(pack, line, shop.others[0])
    with pytest.raises(Refused, match="wants 1 of these"):
        shop.do(pack, line, shop.others[1])


def test_a_line_from_two_lots_leaves_when_it_was_answered_and_a_third_lot_is_a_new_question(shop):
    for skein in (shop.skeins[0], shop.others[0]):
        shop.do(pack, shop.line, skein)
    with pytest.raises(Refused, match="nobody said yet what the customer wants; nothing was sent"):
        shop.do(send_parcel, "1042")
    shop.do(agree_line, shop.line, "customer agreed")
    assert shop.do(pack, shop.line, shop.skeins[1]) == ""
    _, more = shop.tagged(shop.cone(), 1)
    shop.do(move, more, To("shelf", place=SHELF))
    shop.do(take_out, shop.skeins[1], SHELF)
    assert "One line from 3 lots" in shop.do(pack, shop.line, more[0])
    with pytest.raises(Refused, match="from 3 lots"):
        shop.do(send_parcel, "1042")
    shop.do(agree_line, shop.line, "rows card put in")
    assert shop.do(send_parcel, "1042") == 3
    shop.check()


def test_a_parcel_that_is_known_to_have_left_is_recorded_and_marked(shop):
    at = shop.clock.now
    shop.clock.now += timedelta(hours=1)
    for skein in (shop.skeins[0], shop.others[0]):
        shop.do(pack, shop.line, skein, happened=at)
    done = shop.done(send_parcel, "1042", happened=at)
    assert any("nobody said yet" in found for found in done.findings)
