"""All that is kept of one customer."""

from datetime import timedelta

from app.lookups.customer_data import customer_data
from app.work.moving import put_by
from app.work.offering import OfferIn, offered
from app.work.selling import forget_customer, know_customer, sell
from tests.lookups.shop import shelved
from tests.makers import Studio


def test_everything_of_one_customer_and_nothing_of_another(studio: Studio) -> None:
    ((lot, skeins),) = shelved(studio, 4)
    ada = studio.do(know_customer, "Ada Nygård", {"mail": "ada@example.org"})
    bo = studio.do(know_customer, "Bo Ek")
    studio.do(sell, skeins[:2], ada)
    studio.do(sell, skeins[2:3], bo)
    until = studio.clock.now + timedelta(days=7)
    studio.do(put_by, skeins[3:], None, until, ada)
    studio.do(offered, OfferIn(lot, 2, "redye", "declined", customer=ada))
    found = studio.book.ask(customer_data, ada)
    assert found
    assert found.fields == (("name", "Ada Nygård"), ("mail", "ada@example.org"))
    assert [(one.lot and one.lot.lot, one.count) for one in found.bought] == [(lot, 2)]
    assert [one.until for one in found.kept] == [until]
    assert [(one.way, one.answer) for one in found.offered] == [("redye", "declined")]
    studio.do(forget_customer, ada)
    found = studio.book.ask(customer_data, ada)
    assert found
    assert (found.fields, found.removed, len(found.bought)) == ((), True, 1)
    assert studio.book.ask(customer_data, 99) is None
