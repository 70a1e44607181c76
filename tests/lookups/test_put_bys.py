"""Put-bys whose day is over."""

from datetime import timedelta

from app.lookups.put_bys import put_bys_over
from app.work.moving import put_by
from app.work.selling import know_customer, sell
from tests.counter_shop import a_shop


def test_they_are_told_once_their_day_is_over_with_whom_they_were_for(studio):
    shop = a_shop(studio)
    ada = shop.do(know_customer, "Ada Nygård")
    ends = studio.clock.now + timedelta(days=7)
    shop.do(put_by, shop.skeins[0][:2], shop.shelves[1], ends, ada)
    assert shop.ask(put_bys_over, ends - timedelta(minutes=1)) == ()
    over = shop.ask(put_bys_over, ends)
    assert [(one.yarn, one.name, one.place_words) for one in over] == [
        (skein, "Ada Nygård", "shelf 007, the window") for skein in sorted(
            shop.skeins[0][:2], key=lambda skein: next(o.mark for o in over if o.yarn == skein))]


def test_what_was_sold_meanwhile_is_not_told(studio):
    shop = a_shop(studio)
    ends = studio.clock.now + timedelta(days=7)
    shop.do(put_by, shop.skeins[0][:1], None, ends)
    shop.do(sell, shop.skeins[0][:1])
    assert shop.ask(put_bys_over, ends) == ()
