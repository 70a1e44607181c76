"""Histories from the tag on, walked through the book: what is said then, to the last number."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.present import NOT_MATCHED, Amount
from app.problems import Refused
from app.work.bundling import make_plates
from app.work.holding import clear, hold, lift_hold
from app.work.kits import make_kit, open_kit, sell_kit
from app.work.matching import belongs_to, new_tag
from app.work.mixing import lose
from app.work.moving import To, move, put_by
from app.work.opening_stock import OldLot, open_lot
from app.work.remaking import cut
from app.work.returning import came_back, came_back_untagged
from app.work.selling import (
    OrderIn,
    Wanted,
    call_off,
    know_customer,
    place_order,
    sell,
    send,
    take_for,
)
from tests.makers import Studio
from tests.whole.answers import agree, held, left, said, skeins, states, where_to


class Shop(Studio):
    """A studio with a shelf, a fair, and tagged skeins on the shelf."""

    shelf: int
    fair: int

    def on_the_shelf(self, count: int) -> tuple[int, int, list[int]]:
        """A cone, its lot, and so many tagged skeins of it on the shelf."""
        cone = self.cone()
        lot, tagged = self.tagged(cone, count)
        self.put(tagged)
        return cone, lot, tagged

    def put(self, tagged: list[int]) -> None:
        """Onto the shelf."""
        self.do(move, tagged, To("shelf", place=self.shelf))

    def order(self, number: str, lot: int, count: int, buyer: int | None = None) -> int:
        """An order of so many of a lot; its line."""
        wanted = Wanted("green", count, lot, put_up="skein")
        (line,) = self.do(place_order, OrderIn(number, self.clock.now, "web", (wanted,), buyer))
        return line


@pytest.fixture
def shop(studio: Studio) -> Shop:
    """The furnished studio, with its shop."""
    opened = Shop(studio.book, furnished=True)
    opened.shelf, opened.fair = opened.do(make_plates, Kind.SHELF, [3, 90])
    return opened


def test_a_tag_on_another_lots_skein(shop: Shop) -> None:
    (f, x) = shop.wind(shop.cone(), 11), shop.wind(shop.cone(), 6)
    first, other = shop.dye(f), shop.dye(x)
    (pile_f,), (pile_x,) = shop.finish(f, red=11), shop.finish(x, red=6)
    tagged, strangers = shop.tag(pile_f, 11), shop.tag(pile_x, 5)
    wrong = tagged[3]
    shop.do(belongs_to, wrong, pile_x)  # mass and shade say so
    assert said(shop, wrong, "lot") == [(other, "known", "matched")]
    assert said(shop, wrong)[0][1:] == ("known", "matched")
    assert shop.present("lot", first) == {
        ("table", "skein"): skeins(10), ("piled", "skein"): skeins(1)}  # it wants a tag
    assert shop.present("lot", other) == {("table", "skein"): skeins(6)}
    (tag,) = shop.print(pile_x, 1, why="its tag hung on another lot's skein")
    shop.do(new_tag, wrong, tag)
    shop.put([wrong, *strangers])
    assert left(shop, other) == 6
    agree(shop)


def test_a_kit_opened_and_its_skein_sold(shop: Shop) -> None:
    _, lot, tagged = shop.on_the_shelf(5)
    kit = shop.do(make_kit, "Stair-Rail Cowl", tagged[:2])
    shop.do(put_by, tagged[2:3], shop.shelf, shop.clock.now + timedelta(days=7),
            shop.do(know_customer, "Bo Ek"))
    assert left(shop, lot) == 2
    with pytest.raises(Refused, match="Open the kit first"):
        shop.do(sell, tagged[:1])
    shop.do(open_kit, kit, shop.shelf, reason="opened for a reorder")
    shop.do(sell, tagged[:1])
    assert left(shop, lot) == 3
    assert states(shop) == {"sent, buyer not known": 1, "shelf": 3, "put by": 1}
    whole = shop.do(make_kit, "Stair-Rail Cowl", tagged[3:])
    shop.do(sell_kit, whole, shop.do(know_customer, "Ada Nygård"))
    assert states(shop, "lot", lot) == {
        "sent, buyer not known": 1, "shelf": 1, "put by": 1, "sent, buyer known": 2}
    agree(shop)


def test_a_hold_lifted_and_placed_again_and_one_skein_cleared(shop: Shop) -> None:
    cone, lot, tagged = shop.on_the_shelf(6)
    before = shop.clock.now
    first = shop.do(hold, "cone", cone, "oil under the lamp")
    assert (held(shop, tagged), left(shop, lot)) == (tagged, 0)
    with pytest.raises(Refused, match="HOLD"):
        shop.do(sell, tagged[:1])
    shop.do(clear, first, tagged[0], "lamp: clean")
    assert (held(shop, tagged), left(shop, lot)) == (tagged[1:], 1)
    shop.do(lift_hold, first, "washed out")
    assert (held(shop, tagged), left(shop, lot)) == ([], 6)
    second = shop.do(hold, "cone", cone, "it came back")
    assert (held(shop, tagged), left(shop, lot)) == (tagged, 0)  # a clearing is of its hold
    shop.do(clear, second, tagged[1], "lamp, twice")
    assert held(shop, tagged) == [tagged[0], *tagged[2:]]
    pile = shop.do(cut, tagged[1], 5, "mini", 600)
    assert held(shop, [pile]) == []  # what is cut from a cleared skein is cleared
    done = shop.done(sell, tagged[2:3], happened=before)  # sold before the hold was written
    assert any(finding.startswith("HOLD: ") for finding in done.findings)
    assert shop.present() == {
        ("sent, buyer not known", "skein"): skeins(1), ("shelf", "skein"): skeins(4),
        ("piled", "mini"): Amount(5, 103_125 - 600)}
    assert sum(row.held for row in where_to(shop, "cone", cone).rows) == 5
    agree(shop)


def test_a_return_without_a_tag(shop: Shop) -> None:
    _, lot, tagged = shop.on_the_shelf(6)
    line = shop.order("1002", lot, 5, shop.do(know_customer, "Ada Nygård"))
    shop.do(take_for, line, tagged[:5])
    shop.do(send, "1002")
    shop.clock.now += timedelta(days=40)
    shop.do(came_back, tagged[:1], "1002")
    assert states(shop) == {"table": 1, "sent, buyer known": 4, "shelf": 1}
    back = shop.do(came_back_untagged, 1, 97_000, "1002")
    assert shop.present() == {
        ("sent, buyer known", "skein"): skeins(3), ("table", "skein"): skeins(2),
        ("shelf", "skein"): skeins(1)}
    assert said(shop, back, "lot") == [(lot, "known", "stated")]
    which = [link for link in shop.origins(back, "yarn") if link.thing in tagged]
    assert [(link.thing, link.word, link.expected * 4) for link in which] == [
        (skein, "one of a pool", 1) for skein in tagged[1:5]]
    assert where_to(shop, "lot", lot).totals == shop.present("lot", lot)
    agree(shop)


def test_stock_to_a_fair_two_sold_there_and_one_lost(shop: Shop) -> None:
    _, lot, tagged = shop.on_the_shelf(6)
    shop.do(move, tagged[:5], To("fair", place=shop.fair))
    assert left(shop, lot) == 1
    shop.do(sell, tagged[:2], None, "fair")
    shop.do(lose, tagged[2], 1)
    shop.put(tagged[3:5])
    assert states(shop, "lot", lot) == {"sent, buyer not known": 2, "lost": 1, "shelf": 3}
    assert left(shop, lot) == 3
    with pytest.raises(Refused, match="is lost: it cannot be sold"):
        shop.do(sell, tagged[2:3])
    assert [said(shop, skein)[0][1] for skein in tagged] == ["known"] * 6
    agree(shop)


def test_a_walk_in_return(shop: Shop) -> None:
    _, lot, tagged = shop.on_the_shelf(3)
    first = shop.do(sell, tagged[:1])
    with pytest.raises(Refused, match="is sold: it cannot be sold"):
        shop.do(sell, tagged[:1])
    shop.do(came_back, tagged[:1])
    assert shop.present() == {("shelf", "skein"): skeins(2), ("table", "skein"): skeins(1)}
    assert left(shop, lot) == 2
    shop.put(tagged[:1])
    assert left(shop, lot) == 3
    assert shop.do(sell, tagged[:1]) != first  # sold again, honestly, as a sale of its own
    assert states(shop) == {"shelf": 2, "sent, buyer not known": 1}
    agree(shop)


def test_an_old_lot_from_before_the_book(shop: Shop) -> None:
    pile = shop.do(open_lot, OldLot("OLD-77", shop.version, 1, 4), 100_000)
    tagged = shop.tag(pile, 4)
    assert said(shop, tagged[0]) == [(None, "not known", "stated")]
    assert said(shop, tagged[0], "lot") == [(1, "known", "stated")]
    assert said(shop, tagged[0], "version") == [(shop.version, "known", "stated")]
    shop.put(tagged)
    shop.do(sell, tagged[:1], shop.do(know_customer, "Bo Ek"))
    assert shop.present("lot", 1) == {
        ("shelf", "skein"): Amount(3, 300_000), ("sent, buyer known", "skein"): Amount(1, 100_000)}
    assert left(shop, 1) == 3
    agree(shop)


def test_an_order_half_filled_called_off_and_its_parcel_back(shop: Shop) -> None:
    _, lot, tagged = shop.on_the_shelf(4)
    line = shop.order("1187", lot, 3)
    assert left(shop, lot) == 1
    shop.do(take_for, line, tagged[:2])
    assert left(shop, lot) == 1  # two lie there, one of them is still wanted
    shop.do(call_off, line)
    shop.do(send, "1187")
    assert left(shop, lot) == 2
    shop.do(came_back, tagged[:2], "1187")
    assert states(shop) == {"table": 2, "shelf": 2}
    assert NOT_MATCHED not in states(shop)
    agree(shop)
