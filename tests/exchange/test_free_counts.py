"""Free counts for the web shop equal what is left to sell, lot by lot."""

import csv
import io
from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.exchange.free_counts import as_csv, free_counts_file
from app.lookups.free_counts import FreeCount, free_counts
from app.lookups.left_to_sell import left_to_sell
from app.work.bundling import make_plates
from app.work.finishing import finish
from app.work.holding import hold
from app.work.moving import To, move, put_by
from app.work.selling import OrderIn, Wanted, place_order, sell, set_price
from app.work.studio import choose
from tests.makers import Studio


@pytest.fixture
def shelf(studio: Studio) -> int:
    return int(studio.do(make_plates, Kind.SHELF, [3])[0])


def rows(studio: Studio) -> list[dict[str, str]]:
    text = studio.book.ask(free_counts_file).decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text)))


def agree(studio: Studio) -> dict[int, int]:
    """{lot: left}, each as the one definition has it."""
    found = studio.book.ask(free_counts)
    for one in found:
        assert one.left == studio.book.ask(left_to_sell, one.lot, one.put_up).count
    return {one.lot: one.left for one in found}


def test_a_lot_on_the_shelf_is_counted_with_metres_and_price(studio: Studio, shelf: int) -> None:
    lot, skeins = studio.tagged(studio.cone(), 5)
    studio.do(move, skeins[:4], To("shelf", place=shelf))
    studio.do(set_price, 1, "skein", 1850)
    studio.do(choose, {"currency": "EUR"})
    assert rows(studio) == [{
        "lot": studio.code(lot), "colourway": "Sluice Keeper's Glove", "base": "Tarnfield 4-ply",
        "put-up": "skein", "left to sell": "4", "metres each": "388", "price": "18.50",
        "currency": "EUR"}]


def test_counts_go_by_the_one_definition_through_all_that_takes_yarn_away(
    studio: Studio, shelf: int
) -> None:
    cones = studio.cones(3)
    lots = {}
    for cone in cones:
        lot, skeins = studio.tagged(cone, 6)
        studio.do(move, skeins, To("shelf", place=shelf))
        lots[lot] = skeins
    first, second, third = lots
    assert agree(studio) == {first: 6, second: 6, third: 6}
    studio.do(sell, lots[first][:2])
    studio.do(put_by, lots[second][:1], shelf, studio.clock.now + timedelta(days=2))
    studio.do(place_order, OrderIn("1187", studio.clock.now, "web", (Wanted("3", 3, second),)))
    studio.do(hold, "cone", cones[2], "oil")
    assert agree(studio) == {first: 4, second: 2, third: 0}
    studio.do(hold, "yarn", lots[first][5], "a stain")
    assert agree(studio)[first] == 3


def test_a_lot_that_never_wore_a_tag_is_not_listed_and_one_sold_out_is_none(
    studio: Studio, shelf: int
) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.dye(group)
    (pile,) = studio.do(finish, [group], {"red": 4})
    studio.print(pile, 4)
    assert rows(studio) == []
    lot, skeins = studio.tagged(studio.cone(), 2)
    studio.do(move, skeins, To("shelf", place=shelf))
    studio.do(sell, skeins)
    (row,) = rows(studio)
    assert (row["lot"], row["left to sell"], row["price"], row["currency"]) == (
        studio.code(lot), "0", "", "")


@pytest.mark.parametrize("name", ["=1+1", "+cmd", "-2", "@SUM(A1)", "\tx", "\n=1", "＝1+1"])
def test_no_words_are_taken_for_a_formula(name: str) -> None:
    one = FreeCount(1, "2615R6F", name, 'Tarn, "4"', "skein", 3, 388_000, None)
    (row,) = csv.DictReader(io.StringIO(as_csv([one], "EUR").decode("utf-8-sig")))
    assert row["colourway"] == f"'{name}"
    assert row["base"] == 'Tarn, "4"'
    assert row["left to sell"] == "3"
