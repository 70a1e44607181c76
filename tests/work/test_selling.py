"""Orders and sales."""

import pytest
from sqlalchemy import select

from app.calculations.codes import Kind
from app.lookups.left_to_sell import left_to_sell
from app.lookups.skeins import now_of
from app.problems import NotFound, Refused
from app.records import OrderLine, Personal
from app.store.journal import verify
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.remaking import cut
from app.work.returning import came_back
from app.work.selling import (
    OrderIn,
    Wanted,
    call_off,
    forget_customer,
    know_customer,
    place_order,
    sell,
    send,
    set_price,
    take_for,
)


@pytest.fixture
def shop(studio):
    """Two lots with four skeins each on a shelf."""
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    studio.lots, studio.skeins, studio.shelf = [], [], shelf
    for _ in range(2):
        group = studio.wind(studio.cone(), 4)
        studio.lots.append(studio.dye(group))
        (pile,) = studio.finish(group, red=4)
        skeins = studio.tag(pile, 4)
        studio.do(move, skeins, To("shelf", place=shelf))
        studio.skeins.append(skeins)
    return studio


def order(shop, count=3, lot=0, number="1187", customer=None):
    wanted = Wanted("Sluice Keeper's Glove", count, None if lot is None else shop.lots[lot], 2400)
    return OrderIn(number, shop.clock.now, "web", (wanted,), customer)


def test_an_order_is_taken_by_scan_and_sent(shop):
    buyer = shop.do(know_customer, "Ada Nygård")
    (line,) = shop.do(place_order, order(shop, customer=buyer))
    shop.do(take_for, line, shop.skeins[0][:3])
    assert shop.done(send, "1187").said == "sent order 1187: 3 skeins"
    now = shop.book.ask(now_of, shop.skeins[0][0])
    assert (now.state, now.order, now.customer) == ("sent", "1187", buyer)
    assert shop.present()["sent, buyer known", "skein"].count == 3


def test_no_more_than_is_left_can_be_promised(shop):
    shop.do(place_order, order(shop, 3))
    with pytest.raises(Refused, match="1 of .* can still be promised, not 2"):
        shop.do(place_order, order(shop, 2, number="1188"))


def test_more_than_the_line_wants_is_refused(shop):
    (line,) = shop.do(place_order, order(shop, 2))
    shop.do(take_for, line, shop.skeins[0][:1])
    with pytest.raises(Refused, match="wants 2 of these, and 1 is taken"):
        shop.do(take_for, line, shop.skeins[0][1:3])


def test_another_lot_than_promised_is_refused_and_two_lots_in_one_line_are_said(shop):
    (line,) = shop.do(place_order, order(shop, 2))
    with pytest.raises(Refused, match="was promised"):
        shop.do(take_for, line, shop.skeins[1][:1])
    (free,) = shop.do(place_order, order(shop, 2, None, "1190"))
    done = shop.done(take_for, free, [shop.skeins[0][0], shop.skeins[1][0]])
    assert done.findings[0].startswith("One line from 2 lots")


def test_a_walk_in_sale_has_no_name_and_the_studios_price(shop):
    shop.do(set_price, 1, "skein", 2450)
    done = shop.done(sell, shop.skeins[0][:2])
    assert done.said == "sold 2 skeins, buyer not known"
    assert shop.present()["sent, buyer not known", "skein"].count == 2


def test_an_order_number_is_used_once(shop):
    shop.do(place_order, order(shop, 1))
    with pytest.raises(Refused, match="in the book already"):
        shop.do(place_order, order(shop, 1))


def test_nothing_taken_is_not_sent(shop):
    shop.do(place_order, order(shop, 1))
    with pytest.raises(Refused, match="Nothing is taken"):
        shop.do(send, "1187")
    with pytest.raises(NotFound):
        shop.do(take_for, 999, shop.skeins[0][:1])


def test_a_forgotten_customer_leaves_the_yarns_history(shop):
    buyer = shop.do(know_customer, "Ada Nygård", {"mail": "ada@post.example"})
    shop.do(sell, shop.skeins[0][:1], buyer)
    shop.do(forget_customer, buyer)
    values = shop.book.ask(lambda c: c.execute(
        select(Personal.value).where(Personal.customer == buyer)).scalars().all())
    assert values == [None, None]
    assert shop.present()["sent, buyer known", "skein"].count == 1
    assert len(shop.book.ask(verify).removed) == 2
    with pytest.raises(NotFound):
        shop.do(forget_customer, buyer)


def test_a_customer_needs_a_name_and_an_order_a_line(shop):
    with pytest.raises(Refused, match="needs a name"):
        shop.do(know_customer, "  ")
    with pytest.raises(Refused, match="needs a line"):
        shop.do(place_order, OrderIn("9", shop.clock.now, "web", ()))


def left(shop, lot=0, put_up=None):
    return shop.book.ask(left_to_sell, shop.lots[lot], put_up).count


def test_what_is_promised_of_a_lot_is_counted_over_all_lines_of_an_order(shop):
    lines = (Wanted("glove", 3, shop.lots[0]), Wanted("once more", 2, shop.lots[0]))
    with pytest.raises(Refused, match="4 of .* can still be promised, not 5"):
        shop.do(place_order, OrderIn("9", shop.clock.now, "web", lines))


def test_a_line_keeps_what_it_was_read_as(shop):
    (line,) = shop.do(place_order, OrderIn("9", shop.clock.now, "web", (
        Wanted("2 x the green one", 2, colourway=1, base=1, put_up="mini"),)))
    row = shop.book.ask(lambda c: c.execute(select(OrderLine).where(OrderLine.id == line)).one())
    assert (row.what, row.colourway, row.base, row.put_up) == ("2 x the green one", 1, 1, "mini")


def test_what_is_called_off_may_be_sold_again(shop):
    (line,) = shop.do(place_order, order(shop, 3))
    shop.do(take_for, line, shop.skeins[0][:1])
    assert left(shop) == 1
    assert shop.done(call_off, line).said == "called off 2 of 3 of order 1187"
    assert left(shop) == 3
    with pytest.raises(Refused, match="called off already"):
        shop.do(call_off, line)
    with pytest.raises(Refused, match="was called off; nothing"):
        shop.do(take_for, line, shop.skeins[0][1:2])
    shop.undo(shop.last())
    assert left(shop) == 1
    shop.do(take_for, line, shop.skeins[0][1:3])
    with pytest.raises(Refused, match="Nothing of this line of order 1187 is open"):
        shop.do(call_off, line)
    with pytest.raises(NotFound):
        shop.do(call_off, 999)


def test_what_was_put_back_is_wanted_still_and_what_came_back_is_not(shop):
    (line,) = shop.do(place_order, order(shop, 2))
    shop.do(take_for, line, shop.skeins[0][:2])
    shop.do(move, shop.skeins[0][:1], To("shelf", place=shop.shelf))
    assert left(shop) == 2  # three lie there, one of them is still wanted
    shop.do(take_for, line, shop.skeins[0][2:3])
    shop.do(send, "1187")
    shop.do(came_back, shop.skeins[0][1:3], "1187")
    shop.do(move, shop.skeins[0][1:3], To("shelf", place=shop.shelf))
    assert left(shop) == 4
    with pytest.raises(Refused, match="Nothing of this line"):
        shop.do(call_off, line)


def test_a_line_of_any_lot_may_not_be_filled_with_what_another_was_promised(shop):
    shop.do(place_order, order(shop, 3))
    (any_lot,) = shop.do(place_order, order(shop, 2, None, "1190"))
    with pytest.raises(Refused, match="order 1187 wants 3 of the 4 on the shelf, so 1 may go"):
        shop.do(take_for, any_lot, shop.skeins[0][:2])
    shop.do(take_for, any_lot, [shop.skeins[0][0], shop.skeins[1][0]])


def test_a_sale_has_a_line_for_each_put_up_with_its_price(shop):
    minis = shop.tag(shop.do(cut, shop.skeins[1][0], 5, "mini", 600), 5)
    shop.do(move, minis, To("shelf", place=shop.shelf))
    shop.do(set_price, 1, "skein", 2450)
    shop.do(set_price, 1, "mini", 600)
    sale = shop.do(sell, [*minis[:2], shop.skeins[1][1]])
    lines = shop.book.ask(lambda c: c.execute(
        select(OrderLine.wanted, OrderLine.put_up, OrderLine.price)
        .where(OrderLine.customer_order == sale).order_by(OrderLine.put_up)).all())
    assert [tuple(line) for line in lines] == [(2, "mini", 600), (1, "skein", 2450)]
    with pytest.raises(NotFound):
        shop.do(sell, [999])


def test_minis_are_no_skeins_of_the_lot(shop):
    minis = shop.tag(shop.do(cut, shop.skeins[0][0], 5, "mini", 600), 5)
    shop.do(move, minis, To("shelf", place=shop.shelf))
    assert (left(shop), left(shop, 0, "skein"), left(shop, 0, "mini")) == (8, 3, 5)
    wanted = Wanted("glove", 4, shop.lots[0], put_up="skein")
    with pytest.raises(Refused, match="3 of .* can still be promised, not 4"):
        shop.do(place_order, OrderIn("8", shop.clock.now, "web", (wanted,)))
    wanted = Wanted("glove", 3, shop.lots[0], put_up="skein")
    shop.do(place_order, OrderIn("9", shop.clock.now, "web", (wanted,)))
    assert (left(shop), left(shop, 0, "skein"), left(shop, 0, "mini")) == (5, 0, 5)
    shop.do(sell, minis)
    with pytest.raises(Refused, match="order 9 wants 3 of the 3 on the shelf, so none may go"):
        shop.do(sell, shop.skeins[0][1:2])
