"""What was promised stays on the shelf until it is taken for its order or called off."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.left_to_sell import left_to_sell
from app.problems import Refused
from app.work.bundling import make_plates
from app.work.kits import make_kit
from app.work.mixing import lose
from app.work.moving import To, move, put_by
from app.work.remaking import cut, gather
from app.work.selling import OrderIn, Wanted, call_off, place_order, sell, take_for

NONE_MAY_GO = "order 1187 wants 4 of the 4 on the shelf, so none may go, not 1"
OUT = "Take them for the order, or call its line off"


@pytest.fixture
def shop(studio):
    """Four skeins of a lot on a shelf, all of them promised."""
    (studio.shelf, studio.fair) = studio.do(make_plates, Kind.SHELF, [3, 90])
    studio.lot, studio.skeins = studio.tagged(studio.cone(), 4)
    studio.do(move, studio.skeins, To("shelf", place=studio.shelf))
    wanted = Wanted("all there are", 4, studio.lot)
    (studio.line,) = studio.do(place_order, OrderIn("1187", studio.clock.now, "web", (wanted,)))
    return studio


@pytest.fixture
def ways(shop):
    """The ways a skein may leave the shelf for someone else."""
    one = shop.skeins[:1]
    return {
        "sold": lambda **more: shop.done(sell, one, **more),
        "put by": lambda **more: shop.done(
            put_by, one, shop.shelf, shop.clock.now + timedelta(days=7), **more),
        "in a kit": lambda **more: shop.done(make_kit, "cowl", one, **more),
        "at a fair": lambda **more: shop.done(move, one, To("fair", place=shop.fair), **more),
    }


@pytest.mark.parametrize("way", ["sold", "put by", "in a kit", "at a fair"])
def test_what_was_promised_does_not_go_to_someone_else(shop, ways, way):
    with pytest.raises(Refused, match=f"{NONE_MAY_GO}.*{OUT}"):
        ways[way]()
    shop.do(call_off, shop.line)
    ways[way]()
    assert shop.book.ask(left_to_sell, shop.lot).count == 3


@pytest.mark.parametrize("way", ["sold", "put by", "in a kit", "at a fair"])
def test_written_late_it_is_kept_and_marked(shop, ways, way):
    done = ways[way](happened=shop.clock.now - timedelta(seconds=30))
    assert any("order 1187 wants 4 of the 4 on the shelf" in said for said in done.findings)
    assert shop.book.ask(left_to_sell, shop.lot).short == 1


def test_what_lies_free_beside_the_promised_may_go(shop):
    shop.do(call_off, shop.line)
    for number, count in (("1190", 1), ("1188", 2)):
        wanted = Wanted("green", count, shop.lot)
        shop.do(place_order, OrderIn(number, shop.clock.now, "web", (wanted,)))
    with pytest.raises(Refused, match="orders 1188 and 1190 want 3 of the 4 on the shelf, so 1 "):
        shop.do(sell, shop.skeins[:2])
    shop.do(sell, shop.skeins[:1])


def test_taken_for_its_order_it_goes(shop):
    shop.do(take_for, shop.line, shop.skeins)
    assert shop.book.ask(left_to_sell, shop.lot).count == 0


def test_what_is_on_the_table_or_of_another_lot_is_nobodys(shop):
    _, others = shop.tagged(shop.cone(), 2)
    shop.do(move, shop.skeins[:1], To("table"))
    shop.do(sell, [*others, shop.skeins[0]])


@pytest.mark.parametrize(("work", "words"), [
    (lambda s: s.done(move, s.skeins[:1], To("given")), "3 will be on the shelf"),
    (lambda s: s.done(lose, s.skeins[0], 1), "3 will be on the shelf"),
    (lambda s: s.done(gather, s.skeins), "none will be on the shelf"),
    (lambda s: s.done(cut, s.skeins[0], 5, "mini", 600), "3 will be on the shelf"),
])
def test_what_has_happened_to_promised_skeins_is_recorded_and_marked(shop, work, words):
    assert any(f"order 1187 wants 4, and {words}" in said for said in work(shop).findings)
