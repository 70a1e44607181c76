"""One lot as the shop sees it: everything of it in one state, and adding up."""

from collections import Counter

import pytest

from app.lookups.counter import at_counter, place_words
from app.work.holding import clear, hold
from app.work.kits import make_kit
from app.work.moving import To, call_second, move
from app.work.remaking import cut, gather
from app.work.selling import (
    OrderIn,
    Wanted,
    forget_customer,
    know_customer,
    place_order,
    sell,
    set_price,
)
from tests.counter_shop import a_shop


@pytest.fixture
def shop(studio):
    return a_shop(studio)


def states(lot):
    return Counter(one.state for one in lot.skeins)


def test_what_is_free_lies_lowest_place_first_with_its_metres(shop):
    lot = shop.ask(at_counter, shop.lots[0])
    assert [(one.place_words, one.mm) for one in lot.free] == [
        ("shelf 004", 388_000)] * 3 + [("shelf 007, the window", 388_000)]
    assert [one.mark for one in lot.free[:3]] == sorted(one.mark for one in lot.free[:3])
    assert (lot.line.colourway, lot.line.base) == ("Sluice Keeper's Glove", "Tarnfield 4-ply")
    assert lot.line.dyed is not None


def test_every_skein_of_its_tags_is_in_one_state_and_they_add_up(shop):
    one = shop.skeins[0]
    shop.do(make_kit, "Stair-Rail Cowl", one[:1])
    shop.do(sell, one[1:2])
    shop.do(gather, one[2:3])
    lot = shop.ask(at_counter, shop.lots[0])
    assert states(lot) == {"kit": 1, "sent": 1, "shelf": 1}
    assert (len(lot.skeins) + lot.remade + lot.undone, lot.remade) == (4, 1)
    assert lot.left.count == 1
    assert next(s.kit for s in lot.skeins if s.state == "kit") == "Stair-Rail Cowl"


def test_the_minis_of_a_cut_skein_are_of_the_lot_and_their_parent_is_remade(shop):
    pile = shop.do(cut, shop.skeins[0][0], 5, "mini", 600)
    shop.studio.tag(pile, 5)
    lot = shop.ask(at_counter, shop.lots[0])
    assert Counter(one.put_up for one in lot.skeins) == {"skein": 3, "mini": 5}
    assert {one.mm for one in lot.skeins if one.put_up == "mini"} == {77_600}
    assert lot.remade == 1
    shop.do(move, [one.yarn for one in lot.skeins if one.put_up == "mini"],
            To("shelf", place=shop.shelves[0]))
    free = shop.ask(at_counter, shop.lots[0]).free
    assert [one.put_up for one in free] == ["skein"] * 3 + ["mini"] * 5


def test_a_buyer_is_named_until_the_name_is_removed(shop):
    ada = shop.do(know_customer, "Ada Nygård", {"mail": "ada@post.example"})
    shop.do(sell, shop.skeins[0][:2], ada)
    sold = [one for one in shop.ask(at_counter, shop.lots[0]).skeins if one.state == "sent"]
    assert [(one.name, one.customer, one.order) for one in sold] == [("Ada Nygård", ada, "T1")] * 2
    shop.do(forget_customer, ada)
    sold = [one for one in shop.ask(at_counter, shop.lots[0]).skeins if one.state == "sent"]
    assert [(one.name, one.customer) for one in sold] == [(None, ada)] * 2


def test_promises_are_told_with_their_orders(shop):
    wanted = Wanted("glove", 3, shop.lots[0])
    shop.do(place_order, OrderIn("1187", shop.studio.clock.now, "web", (wanted,)))
    lot = shop.ask(at_counter, shop.lots[0])
    assert (lot.left.count, lot.left.promised) == (1, 3)
    assert [(one.order, one.open) for one in lot.promises] == [("1187", 3)]


def test_a_hold_is_told_for_each_skein_it_reaches_and_for_none_that_was_cleared(shop):
    one = shop.do(hold, "lot", shop.lots[0], "oil")
    shop.do(clear, one, shop.skeins[0][0], "seen under the lamp")
    lot = shop.ask(at_counter, shop.lots[0])
    assert Counter(bool(skein.holds) for skein in lot.skeins) == {True: 3, False: 1}
    assert [(h.why, h.ask) for h in lot.holds] == [("oil", "OW, Osk Wray")]
    assert lot.left.skeins == (shop.skeins[0][0],)
    assert shop.ask(at_counter, shop.lots[1]).holds == ()


def test_the_newest_price_counts_and_a_second_says_what_is_seen(shop):
    assert {one.price for one in shop.ask(at_counter, shop.lots[0]).skeins} == {None}
    for price in (2400, 2450):
        shop.do(set_price, 1, "skein", price)
    shop.do(call_second, shop.skeins[0][:1], "a pale spot")
    lot = shop.ask(at_counter, shop.lots[0])
    assert {one.price for one in lot.skeins} == {2450}
    assert [one.second for one in lot.skeins if one.second] == ["a pale spot"]


def test_a_skein_is_found_by_the_mark_it_wears(shop):
    lot = shop.ask(at_counter, shop.lots[0])
    assert lot.tagged(lot.skeins[0].mark) is lot.skeins[0]
    assert lot.tagged("2615H71-00") is None
    shop.do(move, shop.skeins[0][:1], To("lost"))
    lost = shop.ask(at_counter, shop.lots[0]).tagged(lot.skeins[0].mark)
    assert lost is not None


def test_a_place_is_named_by_its_plate_and_its_words():
    assert place_words("shelf", "S004R", "") == "shelf 004"
    assert place_words("shelf", "S007X", "the window") == "shelf 007, the window"
    assert place_words(None, None, None) == ""
