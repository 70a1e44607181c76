"""A jar or a stock at the balance: what is in it, and what speaks against it."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.weigh_sources import against, on_hold, source_of, stock_now, stock_on
from app.work.bundling import make_plates
from app.work.holding import hold, lift_hold
from app.work.jars import Refill, refill
from app.work.stocks import StockIn, make_stock
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars of 500 g."""
    return Dyehouse(studio)


def said(house: Dyehouse, fill: int | None = None, stock: int | None = None) -> list[str]:
    def look(connection: object) -> list[str]:
        source = source_of(connection, fill, stock)  # type: ignore[arg-type]
        assert source is not None
        return list(against(connection, source, house.studio.clock.now))  # type: ignore[arg-type]
    return house.studio.book.ask(look)


def stock(house: Dyehouse, plate: int | None, days: int | None = 7) -> int:
    weighing = house.studio.do(begin_weighing, WeighingIn("stock"))
    house.take(weighing, house.fills[1], 10_000)
    made: int = house.studio.do(make_stock, StockIn(weighing, 1_000, plate, days))
    return made


def test_a_source_names_its_dye_and_where_it_is(house: Dyehouse) -> None:
    made = stock(house, None)
    for fill, one, words in ((house.fills[4], None, "jar 4, fill 1"),
                             (None, made, "1 % stock of jar 1, fill 1")):
        source = house.studio.book.ask(source_of, fill, one)
        assert source.words == words
    assert house.studio.book.ask(source_of, 99, None) is None
    assert house.studio.book.ask(source_of, None, 99) is None
    assert house.studio.book.ask(source_of, None, None) is None


def test_the_newest_stock_is_the_one_in_its_bottle(house: Dyehouse) -> None:
    (bottle,) = house.studio.do(make_plates, Kind.VESSEL, [1])
    assert house.studio.book.ask(stock_on, bottle) is None
    stock(house, bottle)
    second = stock(house, bottle)
    assert house.studio.book.ask(stock_on, bottle).stock == second
    line = house.studio.do(begin_line, LineIn(house.begin(), stock=second))
    house.studio.do(take_weight, line, ul=250_000)
    assert house.studio.book.ask(stock_now, second).left_ul == 750_000


def test_a_hold_on_what_went_into_a_fill_lies_on_it(house: Dyehouse) -> None:
    new = house.studio.do(refill, 1, Refill("q", 500_000))
    one = house.studio.do(hold, "fill", house.fills[1], "damp")
    assert house.studio.book.ask(on_hold, house.fills[1])
    assert house.studio.book.ask(on_hold, new)
    assert not house.studio.book.ask(on_hold, house.fills[2])
    house.studio.do(lift_hold, one, "dried")
    assert not house.studio.book.ask(on_hold, new)


def test_nothing_speaks_against_a_full_jar_and_a_fresh_stock(house: Dyehouse) -> None:
    assert said(house, house.fills[1]) == []
    assert said(house, stock=stock(house, None)) == []


def test_age_is_told_of_a_stock_and_a_jar(house: Dyehouse) -> None:
    fresh, keeps = stock(house, None), stock(house, None, days=None)
    good = house.studio.clock.now + timedelta(days=6)
    new = house.studio.do(refill, 2, Refill("q", 500_000, expires=good))
    house.studio.clock.now += timedelta(days=8)
    assert said(house, stock=keeps) == []
    assert said(house, stock=fresh)[0].endswith(
        "is past its 7 days: make it new, or dye a sample first.")
    assert said(house, new)[0].startswith("What is in jar 2 was good until 12 Apr")
