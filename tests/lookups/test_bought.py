"""Same as last time, line by line."""

from datetime import UTC, datetime

import pytest

from app.lookups.bought import bought_by, sold_without_a_name
from app.lookups.finishing import NO_TIE
from app.work.moving import To, move
from app.work.remaking import gather
from app.work.returning import came_back
from app.work.selling import OrderIn, Wanted, call_off, know_customer, place_order, sell, take_for
from tests.counter_shop import a_shop

APRIL, MAY, JUNE = (datetime(2026, month, 1, tzinfo=UTC) for month in (4, 5, 6))


@pytest.fixture
def shop(studio):
    shop = a_shop(studio)
    shop.ada = shop.do(know_customer, "Ada Nygård")
    return shop


def told(rows):
    return [(one.number, one.lot.lot if one.lot else None, one.count, one.back) for one in rows]


def test_each_lot_of_a_sale_is_a_line_with_what_is_left_of_it(shop):
    one, two = shop.skeins
    shop.do(sell, [*one[:2], *two[:1]], shop.ada)
    rows = shop.ask(bought_by, shop.ada)
    assert sorted(told(rows)) == [("T1", shop.lots[0], 2, 0), ("T1", shop.lots[1], 1, 0)]
    assert {row.lot.lot: row.lot.left.count for row in rows} == {shop.lots[0]: 2, shop.lots[1]: 3}
    assert {row.put_up for row in rows} == {"skein"}


def test_the_last_order_comes_first_and_what_came_back_is_said(shop):
    shop.do(sell, shop.skeins[0][:2], shop.ada)
    shop.do(sell, shop.skeins[1][:1], shop.ada)
    shop.do(came_back, shop.skeins[0][:1])
    assert told(shop.ask(bought_by, shop.ada)) == [
        ("T2", shop.lots[1], 1, 0), ("T1", shop.lots[0], 2, 1)]


def test_the_lot_is_that_of_the_tag_it_wore_when_it_left(shop):
    shop.do(sell, shop.skeins[0][:1], shop.ada)
    shop.do(came_back, shop.skeins[0][:1])
    group = shop.do(gather, shop.skeins[0][:1])
    again = shop.studio.dye(group)
    (pile,) = shop.studio.finish(group, **{NO_TIE: 1})
    assert again not in shop.lots
    shop.do(move, shop.studio.tag(pile, 1), To("shelf", place=shop.shelves[0]))
    assert told(shop.ask(bought_by, shop.ada)) == [("T1", shop.lots[0], 1, 1)]


def test_what_waits_for_an_order_is_told_apart_from_what_was_sold(shop):
    wanted = Wanted("glove", 3, shop.lots[0])
    (line,) = shop.do(place_order, OrderIn(
        "1187", shop.studio.clock.now, "web", (wanted,), shop.ada))
    (row,) = shop.ask(bought_by, shop.ada)
    assert (row.count, row.waiting, row.wanted, row.lot.lot) == (0, 0, 3, shop.lots[0])
    shop.do(take_for, line, shop.skeins[0][:2])
    (row,) = shop.ask(bought_by, shop.ada)
    assert (row.count, row.waiting, row.wanted, row.over) == (0, 2, 3, False)


def test_a_line_that_was_called_off_says_so(shop):
    wanted = Wanted("glove", 3, shop.lots[0])
    (line,) = shop.do(place_order, OrderIn(
        "1187", shop.studio.clock.now, "web", (wanted,), shop.ada))
    shop.do(call_off, line)
    assert [row.over for row in shop.ask(bought_by, shop.ada)] == [True]


def test_a_sale_without_a_name_is_found_by_its_month_and_look(shop):
    shop.do(sell, [shop.skeins[0][0], shop.skeins[1][0]])
    shop.do(sell, shop.skeins[0][1:2], shop.ada)
    found = shop.ask(sold_without_a_name, APRIL, MAY, "glove tarn")
    assert sorted(told(found)) == [("T1", shop.lots[0], 1, 0), ("T1", shop.lots[1], 1, 0)]
    assert shop.ask(sold_without_a_name, MAY, JUNE, "glove") == ()
    assert shop.ask(sold_without_a_name, APRIL, MAY, "plum") == ()
