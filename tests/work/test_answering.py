"""What is taken of an offer is done with it, all or nothing; a name goes into no entry."""

from datetime import timedelta
from typing import Any

import pytest

from app.lookups.agreed import agreed_lines, offers_of
from app.lookups.customers import customers_named
from app.lookups.skeins import now_of
from app.problems import Refused
from app.work.answering import (
    end_put_by_offered,
    keep_offered,
    open_kit_offered,
    promise_offered,
    shelve_offered,
)
from app.work.kits import make_kit
from app.work.moving import To, end_put_by, move, put_by
from app.work.offering import OfferIn
from app.work.serving import Buyer
from tests.lookups.shop import shelved
from tests.makers import Studio

SHELF = 23  # the first plate after those of the studio


@pytest.fixture
def shop(studio: Any) -> Any:
    """Three of one lot, two of another; who wants more is called Una."""
    (studio.lot, studio.skeins), (studio.other, studio.others) = shelved(studio, 3, 2)
    studio.week = studio.clock.now + timedelta(days=7)
    return studio


def said(shop: Any, way: str = "same lot", other: int | None = None) -> OfferIn:
    return OfferIn(shop.lot, 2, way, "taken", other)


def kept(shop: Studio) -> list[tuple[str, int | None]]:
    return [(one.way, one.customer) for one in shop.book.ask(offers_of, shop.lot)]  # type: ignore[attr-defined]


def test_what_is_kept_is_put_by_for_somebody_new_and_the_offer_knows_them(shop: Any) -> None:
    done = shop.done(keep_offered, said(shop), shop.skeins[:2], shop.week, Buyer(name="Una Fell"))
    assert done.said == "put by 2 skeins until 13 Apr 2026"
    (una,) = shop.book.ask(customers_named, "una")
    assert kept(shop) == [("same lot", una.id)]
    shop.undo()
    assert kept(shop) == []
    assert shop.book.ask(now_of, shop.skeins[0]).state == "shelf"
    shop.check()


def test_another_lot_is_promised_with_what_the_customer_agreed_to(shop: Any) -> None:
    done = shop.done(promise_offered, said(shop, "nearest lot", shop.other), shop.other, 2,
                     Buyer(name="Una Fell"))
    assert done.said.endswith(f"order {done.answer}; the customer agreed to this lot")
    assert "Una" not in done.said
    assert shop.book.ask(agreed_lines, [1])[1].how == "customer agreed"
    with pytest.raises(Refused, match="can still be promised, not 1"):
        shop.do(promise_offered, said(shop, "nearest lot", shop.other), shop.other, 1,
                Buyer(name="Bo"))
    assert shop.book.ask(customers_named, "bo") == ()
    assert len(kept(shop)) == 1
    shop.do(promise_offered, said(shop), shop.lot, 1, Buyer(name="Bo"))
    assert set(shop.book.ask(agreed_lines, [1, 2])) == {1}  # nothing to agree to in the same lot


def test_a_kit_is_opened_what_lay_on_the_table_is_shelved(shop: Any) -> None:
    kit = shop.do(make_kit, "Cap", shop.skeins[:1])
    shop.do(open_kit_offered, said(shop), kit, SHELF)
    shop.do(move, shop.skeins[1:2], To("table"))
    shop.do(shelve_offered, said(shop), shop.skeins[1:2], SHELF)
    assert [shop.book.ask(now_of, row).state for row in shop.skeins] == 3 * ["shelf"]
    assert len(kept(shop)) == 2
    shop.check()


def test_a_put_by_is_ended_before_its_day_where_it_lies(shop: Any) -> None:
    shop.do(put_by, shop.skeins[:1], SHELF, shop.week)
    shop.do(put_by, shop.skeins[1:2], None, shop.week)
    assert shop.done(end_put_by_offered, said(shop), shop.skeins[:1]).said == (
        "ended the put-by of 1 skein: on the shelf again")
    with pytest.raises(Refused, match="It is not known on which shelf they lie"):
        shop.do(end_put_by, shop.skeins[1:2])
    with pytest.raises(Refused, match="Not all of these are put by"):
        shop.do(end_put_by, shop.skeins[:2], SHELF)
    shop.do(end_put_by, shop.skeins[1:2], SHELF)
    assert [shop.book.ask(now_of, row).state for row in shop.skeins] == 3 * ["shelf"]
    shop.check()
