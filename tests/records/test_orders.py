"""Who buys and what: an order's number once, a price that is one, a second with its reason."""

from typing import Any

from app.records import CustomerOrder, Kit, OrderLine, Price, Second
from tests.makers import Studio
from tests.records.forbidden import (
    allows_after_undo,
    burnt_for_ever,
    forbids,
    forbids_twice,
)


def order(studio: Studio, **changes: Any) -> CustomerOrder:
    return CustomerOrder(**{"number": "1001", "customer": None, "channel": "shop",
                            "placed": studio.clock.now, **changes})


def test_an_order_number_is_one_order(studio: Studio) -> None:
    forbids_twice(studio, lambda: order(studio))
    allows_after_undo(studio, lambda: order(studio))


def test_an_order_came_by_a_known_way(studio: Studio) -> None:
    forbids(studio, "ck_customer_order_channel", order(studio, channel="dream"))


def test_a_line_wants_something(studio: Studio) -> None:
    forbids(studio, "wants_something", order(studio),
            OrderLine(customer_order=1, wanted=0, what="yarn"))


def test_a_price_is_nothing_or_more(studio: Studio) -> None:
    forbids(studio, "is_a_price", Price(base=1, put_up="skein", price=-1))
    studio.do(lambda deed: deed.add(Price(base=1, put_up="skein", price=0)))


def test_a_skein_is_called_a_second_once(studio: Studio) -> None:
    _, (skein,) = studio.tagged(studio.cone(), 1)
    forbids_twice(studio, lambda: Second(yarn=skein, why="a slub"))
    allows_after_undo(studio, lambda: Second(yarn=skein, why="a slub"))


def test_a_kit_bag_keeps_its_code_for_ever(studio: Studio) -> None:
    burnt_for_ever(studio, lambda: Kit(code="N0011"))
