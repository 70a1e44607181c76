"""Open orders, oldest first; and what was sent."""

from datetime import timedelta

from app.lookups.orders import open_orders, order_now, sent_since
from app.work.moving import To, move
from app.work.packing import send_parcel, take_out
from app.work.selling import Wanted, call_off, sell, take_for
from tests.lookups.shop import GLOVE, ordered, shelved
from tests.makers import Studio


def test_an_order_is_open_until_all_is_sent_or_called_off(studio: Studio) -> None:
    ((lot, skeins),) = shelved(studio, 4)
    (line,) = ordered(studio, "1042", 3)
    studio.do(take_for, line, skeins[:2])
    (order,) = studio.book.ask(open_orders)
    assert (order.number, order.name, order.wanted, order.filled, order.taken, order.open) == (
        "1042", "Ada Nygård", 3, 2, 2, 1)
    assert [(one.yarn, one.lot, one.sent) for one in order.lines[0].skeins] == [
        (skeins[0], lot, False), (skeins[1], lot, False)]
    studio.do(send_parcel, "1042")
    (order,) = studio.book.ask(open_orders)
    assert (order.filled, order.taken, order.open) == (2, 0, 1)
    studio.do(call_off, line)
    assert studio.book.ask(open_orders) == ()
    gone = studio.book.ask(order_now, order.id)
    assert gone is not None
    assert (gone.wanted, gone.open, gone.lines[0].over) == (2, 0, True)


def test_what_is_taken_still_waits_though_the_rest_was_called_off(studio: Studio) -> None:
    ((_, skeins),) = shelved(studio, 2)
    (line,) = ordered(studio, "1042", 2)
    studio.do(take_for, line, skeins[:1])
    studio.do(call_off, line)
    assert [order.number for order in studio.book.ask(open_orders)] == ["1042"]


def test_the_oldest_comes_first_and_a_sale_at_the_till_is_none(studio: Studio) -> None:
    ((_, skeins),) = shelved(studio, 2)
    ordered(studio, "1043", 1)
    studio.do(sell, skeins[:1])
    assert [order.number for order in studio.book.ask(open_orders)] == ["1043"]
    studio.clock.now += timedelta(days=1)
    ordered(studio, "1042", 1, name="")
    found = studio.book.ask(open_orders)
    assert [(order.number, order.name) for order in found] == [("1043", "Ada Nygård"),
                                                               ("1042", None)]


def test_a_line_says_what_it_was_read_as_and_else_what_was_said(studio: Studio) -> None:
    ordered(studio, "1042", Wanted("a mini, please", 1, colourway=1, base=1, put_up="mini"),
            Wanted("Gift card", 1))
    read, words = studio.book.ask(open_orders)[0].lines
    assert (read.name, read.is_read, read.swatch) == (f"{GLOVE}, Tarnfield 4-ply, mini", True,
                                                      "#1B856E")
    assert (words.name, words.is_read, words.swatch) == ("Gift card", False, None)


def test_a_returned_skein_was_sent_and_one_taken_out_was_not(studio: Studio) -> None:
    ((_, skeins),) = shelved(studio, 2)
    (line,) = ordered(studio, "1042", 2)
    studio.do(take_for, line, skeins)
    shelf = 1 + len(studio.discs) + 2
    studio.do(take_out, skeins[0], shelf)
    studio.do(send_parcel, "1042")
    studio.do(move, skeins[1:], To("table"))
    (order,) = studio.book.ask(open_orders)
    assert (order.filled, order.open) == (1, 1)


def test_an_order_that_was_taken_back_is_none(studio: Studio) -> None:
    ordered(studio, "1042", 1)
    order = studio.book.ask(open_orders)[0].id
    studio.undo()
    assert studio.book.ask(open_orders) == ()
    assert studio.book.ask(order_now, order) is None


def test_what_was_sent_today_is_told_until_it_is_taken_back(studio: Studio) -> None:
    ((_, skeins),) = shelved(studio, 4)
    (one,), (two,) = ordered(studio, "1042", 1), ordered(studio, "1043", 2)
    studio.do(take_for, one, skeins[:1])
    studio.do(send_parcel, "1042")
    morning = studio.clock.now + timedelta(hours=10)
    studio.clock.now = morning
    studio.do(take_for, two, skeins[1:3])
    studio.do(send_parcel, "1043")
    studio.do(sell, skeins[3:])
    sent = studio.book.ask(sent_since, morning)
    assert [(parcel.number, parcel.name, parcel.count) for parcel in sent] == [
        ("1043", "Ada Nygård", 2)]
    assert len(studio.book.ask(sent_since, morning - timedelta(days=1))) == 2
    studio.undo(studio.last() - 1)
    assert studio.book.ask(sent_since, morning) == ()
