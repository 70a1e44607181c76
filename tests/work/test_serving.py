"""At the counter: someone known or new is served by one deed."""

from datetime import timedelta

import pytest
from sqlalchemy import func, select

from app.lookups.customers import customers_named
from app.lookups.skeins import now_of
from app.problems import NotFound, Refused
from app.records import Customer, OrderLine
from app.store.journal import verify
from app.work.kits import make_kit
from app.work.selling import know_customer, set_price
from app.work.serving import Buyer, keep_for, promise, sell_kit_to, sell_to
from tests.counter_shop import a_shop


@pytest.fixture
def shop(studio):
    return a_shop(studio)


def customers(shop):
    return shop.ask(lambda c: c.execute(select(func.count(Customer.id))).scalar())


def test_someone_new_is_known_and_sold_to_by_one_deed(shop):
    before = shop.studio.last()
    done = shop.studio.done(sell_to, shop.skeins[0][:2], Buyer(name="Ada Nygård"))
    assert shop.studio.last() == before + 1
    assert "Ada" not in done.said
    (ada,) = shop.ask(customers_named, "ada")
    assert shop.ask(now_of, shop.skeins[0][0]).customer == ada.id
    shop.studio.undo()
    assert customers(shop) is not None
    assert shop.ask(now_of, shop.skeins[0][0]).state == "shelf"
    shop.ask(verify)


def test_someone_known_is_not_written_twice(shop):
    ada = shop.do(know_customer, "Ada Nygård")
    shop.do(sell_to, shop.skeins[0][:1], Buyer(ada))
    assert customers(shop) == 1
    assert shop.ask(now_of, shop.skeins[0][0]).customer == ada


def test_nobody_new_is_kept_where_the_sale_is_refused(shop):
    shop.do(sell_to, shop.skeins[0][:1], Buyer(name="Ada Nygård"))
    with pytest.raises(Refused):
        shop.do(sell_to, shop.skeins[0][:1], Buyer(name="Bo Lind"))
    assert shop.ask(customers_named, "bo") == ()


def test_what_is_put_by_stays_where_it_lies_or_goes_where_it_is_laid(shop):
    until = shop.studio.clock.now + timedelta(days=7)
    shop.do(keep_for, shop.skeins[0], until, Buyer(name="Ada Nygård"))
    assert [shop.ask(now_of, skein).place for skein in shop.skeins[0]] == [
        "004", "004", "004", "the window"]
    shop.do(keep_for, shop.skeins[1][:1], until, Buyer(name="Bo Lind"), shop.shelves[1])
    now = shop.ask(now_of, shop.skeins[1][0])
    assert (now.state, now.place, now.ends) == ("put by", "the window", until)


def test_nothing_is_put_by_for_a_day_that_is_over_and_nobody_new_kept(shop):
    with pytest.raises(Refused, match="over already"):
        shop.do(keep_for, shop.skeins[0][:1], shop.studio.clock.now - timedelta(days=1),
                Buyer(name="Ada Nygård"))
    with pytest.raises(Refused, match="No skein was chosen"):
        shop.do(keep_for, [], shop.studio.clock.now + timedelta(days=1), Buyer(name="Ada"))
    assert customers(shop) == 0


def test_a_promise_is_an_order_for_the_lot_at_todays_price(shop):
    shop.do(set_price, 1, "skein", 2450)
    number = shop.do(promise, shop.lots[0], 3, Buyer(name="Ada Nygård"))
    line = shop.ask(lambda c: c.execute(select(
        OrderLine.lot, OrderLine.wanted, OrderLine.price, OrderLine.put_up)).one())
    assert (number, *line) == ("T1", shop.lots[0], 3, 2450, "skein")
    with pytest.raises(Refused, match="1 of .* can still be promised, not 2"):
        shop.do(promise, shop.lots[0], 2, Buyer(name="Bo Lind"))
    with pytest.raises(NotFound):
        shop.do(promise, 999, 1, Buyer(name="Bo Lind"))


def test_a_kit_is_sold_whole_to_someone_new_by_one_deed(shop):
    kit = shop.do(make_kit, "Weir Cap", shop.skeins[0][:2])
    done = shop.studio.done(sell_kit_to, kit, Buyer(name="Ada Nygård"))
    assert "Ada" not in done.said
    (ada,) = shop.ask(customers_named, "ada")
    assert shop.ask(now_of, shop.skeins[0][0]).customer == ada.id
