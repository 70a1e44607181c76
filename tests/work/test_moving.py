"""Where finished skeins go."""

from datetime import timedelta

import pytest
from sqlalchemy import select

from app.calculations.codes import Kind
from app.lookups.left_to_sell import left_to_sell
from app.lookups.skeins import now_of
from app.problems import Refused
from app.records import Whereabouts
from app.work.bundling import make_plates
from app.work.holding import clear, hold, lift_hold
from app.work.kits import make_kit
from app.work.moving import To, call_second, end_put_bys, lay, move, put_by
from app.work.selling import sell
from tests.deeds import customer


@pytest.fixture
def shop(studio):
    """Six tagged skeins of one lot on shelf 3."""
    cone = studio.cone()
    group = studio.wind(cone, 6)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=6)
    skeins = studio.tag(pile, 6)
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3], "window side")
    studio.do(move, skeins, To("shelf", place=shelf))
    studio.cone_in_shop, studio.lot, studio.skeins, studio.shelf = cone, lot, skeins, shelf
    return studio


def left(shop):
    return list(shop.book.ask(left_to_sell, shop.lot).skeins)


def test_what_is_put_by_stays_so_on_the_shelf_it_lies_on(studio):
    _, skeins = studio.tagged(studio.cone(), 3)
    ada = studio.do(customer, "Ada Nygård")
    until = studio.clock.now + timedelta(days=3)
    studio.do(put_by, skeins[:2], studio.pot, until, ada)
    said = studio.done(lay, skeins, studio.pot2).said
    assert said == "3 skeins on shelf 002, 2 of them put by as before"
    assert studio.present().keys() == {("put by", "skein"), ("shelf", "skein")}
    rows = studio.book.ask(lambda c: c.execute(
        select(Whereabouts.state, Whereabouts.place, Whereabouts.customer, Whereabouts.ends)
        .where(Whereabouts.until.is_(None)).order_by(Whereabouts.yarn)).all())
    assert rows == [("put by", studio.pot2, ada, until)] * 2 + [
        ("shelf", studio.pot2, None, None)]
    studio.clock.now = until + timedelta(minutes=1)
    studio.do(lay, skeins[:1], studio.pot)
    assert studio.present()["shelf", "skein"].count == 2
    studio.check()


def test_a_skein_met_outside_its_kit_leaves_it_and_that_is_marked(studio):
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(make_kit, "Stair-Rail Cowl", skeins)
    (found,) = studio.done(lay, skeins[:1], studio.pot).findings
    assert "was in a kit, which lacks it now" in found
    assert {k[0]: a.count for k, a in studio.present().items()} == {"shelf": 1, "kit": 1}


def test_what_is_on_a_shelf_is_left_to_sell(shop):
    assert left(shop) == shop.skeins
    assert shop.book.ask(now_of, shop.skeins[0]).place == "window side"


def test_put_by_is_not_left_to_sell_until_its_day_is_over(shop):
    shop.do(put_by, shop.skeins[:2], shop.shelf, shop.clock.now + timedelta(days=7))
    assert left(shop) == shop.skeins[2:]
    none = shop.done(end_put_bys, shop.shelf)
    assert (none.answer, none.said) == (0, "no put-by is over yet")
    shop.clock.now += timedelta(days=8)
    assert shop.do(end_put_bys, shop.shelf) == 2
    assert left(shop) == shop.skeins


def test_a_put_by_that_is_over_already_is_refused(shop):
    with pytest.raises(Refused, match="over already"):
        shop.do(put_by, shop.skeins[:1], shop.shelf, shop.clock.now - timedelta(days=1))


def test_a_held_skein_may_not_go_to_a_buyer_and_a_cleared_one_may(shop):
    first = shop.do(hold, "cone", shop.cone_in_shop, "oil under the lamp")
    assert left(shop) == []
    with pytest.raises(Refused, match="HOLD"):
        shop.do(sell, shop.skeins[:1])
    shop.do(clear, first, shop.skeins[0], "lamp: clean")
    assert left(shop) == shop.skeins[:1]
    shop.do(lift_hold, first, "washed out")
    shop.do(hold, "cone", shop.cone_in_shop, "it came back")
    assert left(shop) == []


def test_a_sale_before_the_hold_was_written_is_kept_and_marked(shop):
    before = shop.clock.now
    shop.do(hold, "cone", shop.cone_in_shop, "oil")
    done = shop.done(sell, shop.skeins[:1], happened=before)
    assert any("HOLD" in finding for finding in done.findings)
    assert shop.book.ask(now_of, shop.skeins[0]).state == "sent"


def test_nothing_is_sold_twice(shop):
    shop.do(sell, shop.skeins[:1])
    with pytest.raises(Refused, match="is sold: it cannot be sold"):
        shop.do(sell, shop.skeins[:1])


def test_a_skein_that_came_back_can_be_sold_again(shop):
    shop.do(sell, shop.skeins[:1])
    shop.do(move, shop.skeins[:1], To("table"))
    shop.do(move, shop.skeins[:1], To("shelf", place=shop.shelf))
    shop.do(sell, shop.skeins[:1])
    assert shop.book.ask(now_of, shop.skeins[0]).state == "sent"


def test_to_the_fair_two_sold_one_lost_the_rest_come_back(shop):
    (fair,) = shop.do(make_plates, Kind.SHELF, [90], "spring fair")
    shop.do(move, shop.skeins[:5], To("fair", place=fair))
    assert left(shop) == shop.skeins[5:]
    shop.do(sell, shop.skeins[:2], None, "fair")
    shop.do(move, shop.skeins[2:3], To("lost"))
    shop.do(move, shop.skeins[3:5], To("shelf", place=shop.shelf))
    assert {key[0]: amount.count for key, amount in shop.present().items()} == {
        "sent, buyer not known": 2, "lost": 1, "shelf": 3}
    with pytest.raises(Refused, match="is lost"):
        shop.do(sell, shop.skeins[2:3])


def test_all_of_them_go_or_none(shop):
    shop.do(sell, shop.skeins[:1])
    with pytest.raises(Refused):
        shop.do(move, shop.skeins[:3], To("taken"))
    assert left(shop) == shop.skeins[1:]


def test_a_second_keeps_its_lot_and_says_why(shop):
    assert shop.done(call_second, shop.skeins[:2], "a knot").said == (
        "2 skeins called seconds: a knot")
    assert shop.done(call_second, shop.skeins[1:3], "a knot").said == (
        "1 skein called a second: a knot")
    with pytest.raises(Refused, match="called a second already"):
        shop.do(call_second, shop.skeins[:3], "a knot")
    assert left(shop) == shop.skeins
    with pytest.raises(Refused, match="reason"):
        shop.do(call_second, shop.skeins[:1], " ")


def test_nothing_scanned_is_refused(shop):
    with pytest.raises(Refused, match="No skein was scanned"):
        shop.do(move, [], To("shelf", place=shop.shelf))
