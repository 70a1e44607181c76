"""Kit bags."""

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.skeins import now_of
from app.lookups.things import by_code
from app.problems import NotFound, Refused
from app.work.bundling import make_plates
from app.work.holding import hold
from app.work.kits import make_kit, open_kit, sell_kit
from app.work.moving import To, move
from app.work.selling import know_customer, sell


@pytest.fixture
def shop(studio):
    """Four skeins of one lot and two of another on a shelf."""
    (studio.shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    studio.lot, studio.skeins = studio.tagged(studio.cone(), 4)
    _, studio.others = studio.tagged(studio.cone(), 2)
    studio.do(move, [*studio.skeins, *studio.others], To("shelf", place=studio.shelf))
    return studio


def state(shop, skein):
    return shop.book.ask(now_of, skein).state


def test_a_kit_has_a_code_of_its_own_and_no_number_comes_twice(shop):
    done = shop.done(make_kit, "Stair-Rail Cowl", shop.skeins[:2])
    code = numbered(Kind.KIT, 1).grouped
    assert done.said == f"made kit {code}, Stair-Rail Cowl: 2 skeins"
    assert [state(shop, skein) for skein in shop.skeins] == ["kit", "kit", "shelf", "shelf"]
    found = shop.book.ask(by_code, numbered(Kind.KIT, 1).text)
    assert (found.kind, found.id, found.words) == ("kit", done.answer, "Stair-Rail Cowl")
    shop.undo()
    assert shop.book.ask(by_code, numbered(Kind.KIT, 1).text) is None
    again = shop.done(make_kit, "Stair-Rail Cowl", shop.skeins[:2])
    assert numbered(Kind.KIT, 2).grouped in again.said


def test_an_opened_kit_gives_its_skeins_back_once(shop):
    kit = shop.do(make_kit, "cowl", shop.skeins[:2])
    with pytest.raises(Refused, match=r"is in a kit: it cannot be sold.*Open the kit first"):
        shop.do(sell, shop.skeins[:1])
    with pytest.raises(Refused, match="is in a kit: it cannot be in a kit"):
        shop.do(make_kit, "shawl", shop.skeins[:1])
    shop.do(open_kit, kit, shop.shelf)
    shop.do(sell, shop.skeins[:1])
    assert [state(shop, skein) for skein in shop.skeins[:2]] == ["sent", "shelf"]
    with pytest.raises(Refused, match="was opened before"):
        shop.do(open_kit, kit, shop.shelf)
    with pytest.raises(Refused, match="was opened before"):
        shop.do(sell_kit, kit)


def test_a_sold_kit_is_not_opened_here(shop):
    kit = shop.do(make_kit, "cowl", shop.skeins[:3])
    shop.do(sell_kit, kit, shop.do(know_customer, "Ada Nygård"), 7900)
    assert shop.present()["sent, buyer known", "skein"].count == 3
    for work in (lambda: shop.do(open_kit, kit, shop.shelf), lambda: shop.do(sell_kit, kit)):
        with pytest.raises(Refused, match="is sold"):
            work()


def test_a_sold_kit_without_a_buyer_is_said(shop):
    kit = shop.do(make_kit, "cowl", shop.skeins[:1])
    assert shop.done(sell_kit, kit).said.endswith("1 skein, buyer not known")


def test_a_kit_under_hold_is_not_sold(shop):
    kit = shop.do(make_kit, "cowl", shop.skeins[:2])
    shop.do(hold, "lot", shop.lot, "bled in the wash")
    with pytest.raises(Refused, match="HOLD"):
        shop.do(sell_kit, kit)
    with pytest.raises(Refused, match="HOLD"):
        shop.do(make_kit, "shawl", shop.skeins[2:])


def test_one_colour_of_a_kit_is_from_one_lot(shop):
    with pytest.raises(Refused, match="from two lots"):
        shop.do(make_kit, "cowl", [shop.skeins[0], shop.others[0]])
    shop.do(make_kit, "cowl", shop.others)


def test_a_kit_needs_a_name_skeins_and_to_be_there(shop):
    with pytest.raises(Refused, match="needs a name"):
        shop.do(make_kit, " ", shop.skeins)
    with pytest.raises(Refused, match="No skein was scanned"):
        shop.do(make_kit, "cowl", [])
    for work in (open_kit, sell_kit):
        with pytest.raises(NotFound, match="This kit is not in the book"):
            shop.do(work, 9, shop.shelf)
