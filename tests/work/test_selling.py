"""Orders and sales."""

import pytest

from app.calculations.codes import Kind
from app.lookups.skeins import now_of
from app.problems import NotFound, Refused
from app.records import Personal
from app.store.journal import verify
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.selling import (
    OrderIn,
    Wanted,
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
    studio.lots, studio.skeins = [], []
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
    with pytest.raises(Refused, match="wants 2 of these, and 1 are taken"):
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
    from sqlalchemy import select
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
