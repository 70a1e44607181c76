"""Customers by name, and orders by number."""

import pytest

from app.lookups.customers import customer_known, customers_named, names_of, order_numbered
from app.work.selling import OrderIn, Wanted, forget_customer, know_customer, place_order, sell
from tests.counter_shop import a_shop


@pytest.fixture
def shop(studio):
    shop = a_shop(studio)
    shop.ada, shop.bo = (shop.do(know_customer, name) for name in ("Ada Nygård", "Bo Ada-Lind"))
    shop.do(sell, shop.skeins[0][:1], shop.bo)
    return shop


def test_words_begin_the_words_of_a_name_whatever_their_case(shop):
    assert [one.name for one in shop.ask(customers_named, "NYGÅ")] == ["Ada Nygård"]
    assert [one.name for one in shop.ask(customers_named, "nyg ada")] == ["Ada Nygård"]
    assert shop.ask(customers_named, "ygård") == ()
    assert shop.ask(customers_named, " ") == ()


def test_who_bought_last_comes_first(shop):
    named = shop.ask(customers_named, "ada")
    assert [(one.id, one.orders) for one in named] == [(shop.bo, 1), (shop.ada, 0)]
    shop.do(sell, shop.skeins[0][1:2], shop.ada)
    assert [one.id for one in shop.ask(customers_named, "ada")] == [shop.ada, shop.bo]


def test_a_removed_name_is_found_no_more(shop):
    shop.do(forget_customer, shop.ada)
    assert [one.id for one in shop.ask(customers_named, "ada")] == [shop.bo]
    assert shop.ask(customer_known, shop.ada) is None
    assert shop.ask(names_of, [shop.ada, shop.bo, None]) == {shop.bo: "Bo Ada-Lind"}
    assert shop.ask(customer_known, shop.bo).name == "Bo Ada-Lind"


def test_an_order_is_found_by_its_number_and_tells_the_buyer(shop):
    found = shop.ask(order_numbered, "t1")
    assert (found.number, found.name, found.channel) == ("T1", "Bo Ada-Lind", "shop")
    wanted = Wanted("glove", 1, shop.lots[0])
    shop.do(place_order, OrderIn("w-55", shop.studio.clock.now, "web", (wanted,)))
    assert shop.ask(order_numbered, "w-55").name is None
    assert shop.ask(order_numbered, "1187") is None
