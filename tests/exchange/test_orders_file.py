"""A web shop's list as orders: whole ones in, the others out with why."""

from datetime import UTC, date, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.exchange.columns import propose
from app.exchange.order_headings import ORDERS
from app.exchange.orders_file import (
    Buyer,
    InShop,
    LotFacts,
    OrdersList,
    number_of_order,
    read_orders,
)
from app.exchange.reading import read_table
from app.lookups.order_words import StudioNames
from app.problems import BadInput
from tests.exchange.files import workbook

NOW = datetime(2026, 4, 10, 9, tzinfo=UTC)
NAMES = StudioNames({"Ferry Ledger": 1, "Moth at the Window": 2}, {"Tarnfield 4-ply": 5},
                    ("skein", "mini"))
LOT = LotFacts(7, 1, 5, "Ferry Ledger, Tarnfield 4-ply", 3)
SHOP = InShop(NAMES, {"2614K14": LOT}, {"1040": NOW}, {"ada@post.example": 11}, {"K-9": 12})
HEADS = "Order;Date;Customer;E-mail;Customer no;Product;Variant;Quantity;Lot;Price\n"


def orders(rows: str | bytes, shop: InShop = SHOP, heads: str = HEADS) -> OrdersList:
    data = rows if isinstance(rows, bytes) else (heads + rows).encode()
    table = read_table(data)
    return read_orders(table, propose(table, {}, None, ORDERS), shop, NOW)


def whys(rows: str, shop: InShop = SHOP) -> list[str]:
    found = orders(rows, shop)
    assert found.orders == ()
    return [trouble.sentence for trouble in found.troubles]


def test_rows_of_one_number_are_one_order_and_its_own_fields_need_stand_once() -> None:
    (order,) = orders("#1042;2026-04-08 17:05:11 +0200;Bo Lind;bo@post.example;;Ferry Ledger;"
                      "Tarnfield 4-ply, minis;2;;24,50\n"
                      "#1042;;;;;Moth at the Window;;1;;24,50\n").orders
    assert (order.number, order.placed, order.count) == (
        "1042", datetime(2026, 4, 8, 12, tzinfo=UTC), 3)
    assert order.buyer == Buyer("Bo Lind", "bo@post.example", "", None)
    first, second = (line.wanted for line in order.lines)
    assert (first.what, first.count, first.price) == ("Ferry Ledger, Tarnfield 4-ply, minis", 2,
                                                      2450)
    assert (first.colourway, first.base, first.put_up, first.lot) == (1, 5, "mini", None)
    assert (second.colourway, second.base, second.put_up) == (2, None, None)


def test_words_that_name_nothing_are_kept_and_said() -> None:
    found = orders("1042;;;;;Gift card;;1;;\n1042;;;;;Ferry Ledger or Moth at the Window;;1;;\n")
    assert found.doubts == (
        "“Gift card” names no colourway of the studio.",
        "“Ferry Ledger or Moth at the Window” names 2 colourways: Moth at the Window and Ferry "
        "Ledger.")
    assert found.orders[0].buyer is None
    assert found.orders[0].lines[0].wanted.colourway is None


@pytest.mark.parametrize(("row", "why"), [
    ("1042;;;;;;;2;;", "Row 2, Product: nothing stands there."),
    ("1042;;;;;Ferry Ledger;;;;", "Row 2, Quantity: nothing stands there."),
    ("1042;;;;;Ferry Ledger;;two;;", "Row 2, Quantity: it is no whole number. It says: two"),
    ("1042;;;;;Ferry Ledger;;1,5;;", "Row 2, Quantity: it is no whole number. It says: 1,5"),
    ("1042;;;;;Ferry Ledger;;0;;",
     "Row 2, Quantity: 0 cannot be wanted: from 1 to 500 can. It says: 0"),
    ("1042;;;;;Ferry Ledger;;-1;;", "Row 2, Quantity: it reckons, or begins as a formula does: "
                                    "only values are taken. It says: -1"),
    ('1042;;;;;"=HYPERLINK(""x"")";;1;;', "Row 2, Product: it reckons, or begins as a formula "
                                          'does: only values are taken. It says: =HYPERLINK("x")'),
    ("1042;2026-05-01;;;;Ferry Ledger;;1;;",
     "Row 2, Date: this day has not come yet. It says: 2026-05-01"),
    ("1042;;;ada at post;;Ferry Ledger;;1;;",
     "Row 2, E-mail: it is no e-mail address. It says: ada at post"),
    ("1042;;;;;Ferry Ledger;;1;2699X99;", "Row 2, Lot: no lot of the book has this code. "
                                          "It says: 2699X99"),
    ("1042;;;;;Moth at the Window;;1;26·14·K14;",
     "Row 2, Lot: this lot is Ferry Ledger, Tarnfield 4-ply, and the row wants other yarn. "
     "It says: 26·14·K14"),
    ("1042;;;;;Ferry Ledger;;4;2614K14;", "Row 2, Lot: 3 of it can still be promised, not 4. "
                                          "It says: 26·14·K14"),
    ("1042;;;;;Ferry Ledger;;1;;free", "Row 2, Price: it is no price. It says: free"),
    (f"{'9' * 60};;;;;Ferry Ledger;;1;;",
     f"Row 2, Order: no order has so long a number. It says: {'9' * 40}…"),
])
def test_a_broken_row_says_its_number_and_why(row: str, why: str) -> None:
    assert whys(row + "\n") == [why]


def test_one_broken_row_keeps_its_whole_order_out_and_no_other() -> None:
    found = orders("1042;;;;;Ferry Ledger;;1;;\n1042;;;;;Ferry Ledger;;x;;\n"
                   "1043;;;;;Ferry Ledger;;1;;\n")
    assert [order.number for order in found.orders] == ["1043"]
    assert found.out == ("1042",)


def test_a_row_without_a_number_keeps_the_order_above_it_out() -> None:
    found = orders("1042;;;;;Ferry Ledger;;1;;\n;;;;;Moth at the Window;;1;;\n")
    assert found.out == ("1042",)
    assert found.troubles[0].sentence == (
        "Row 3, Order: nothing stands there. It may belong to order 1042 above it, which stays "
        "out.")


def test_two_buyers_in_one_order_keep_it_out() -> None:
    assert whys("1042;;Ada;;;Ferry Ledger;;1;;\n1042;;Bo;;;Ferry Ledger;;1;;\n") == [
        "Row 3, Customer: other rows of this order say it otherwise. It says: Bo"]


def test_an_order_that_is_in_the_book_is_skipped_and_said() -> None:
    found = orders("#1040;;;;;Ferry Ledger;;x;;\n1043;;;;;Ferry Ledger;;1;;\n")
    assert dict(found.before) == {"1040": NOW}
    assert (found.troubles, [order.number for order in found.orders]) == ((), ["1043"])


def test_a_lot_is_promised_to_the_first_come_and_an_order_that_stays_out_takes_none() -> None:
    found = orders("1042;;;;;Ferry Ledger;;3;2614K14;x\n1043;;;;;Ferry Ledger;;2;2614K14;\n"
                   "1044;;;;;Ferry Ledger;;2;2614K14;\n1045;;;;;;;1;2614K14;\n")
    assert [order.number for order in found.orders] == ["1043"]
    assert found.out == ("1042", "1044", "1045")
    assert "1 of it can still be promised, not 2." in found.troubles[-1].sentence
    line = found.orders[0].lines[0].wanted
    assert (line.lot, line.colourway, line.base) == (7, 1, 5)


@pytest.mark.parametrize(("row", "known"), [
    ("1042;;Ada;ADA@post.example;;Ferry Ledger;;1;;", 11),
    ("1042;;Ada;;K-9;Ferry Ledger;;1;;", 12),
    ("1042;;Ada;;;Ferry Ledger;;1;;", None),
    ("1042;;Ada;else@post.example;;Ferry Ledger;;1;;", None),
])
def test_a_customer_is_known_by_mail_or_number_and_never_by_name(
    row: str, known: int | None
) -> None:
    (order,) = orders(row + "\n").orders
    assert order.buyer is not None
    assert order.buyer.known == known


def test_prices_are_of_one_currency_and_read_by_the_mark_that_the_list_proves() -> None:
    found = orders("1042;;;;;Ferry Ledger;;1;;24,50 €\n1043;;;;;Ferry Ledger;;1;;1.024 €\n"
                   "1044;;;;;Ferry Ledger;;1;;$ 24.50\n")
    assert [order.lines[0].wanted.price for order in found.orders] == [2450, 102400]
    assert "another currency than in row 2" in found.troubles[0].sentence


def test_a_workbook_with_numbers_days_and_merged_cells() -> None:
    data = workbook(("Order", "Date", "Product", "Quantity"),
                    (1042, date(2026, 4, 8), "Ferry Ledger", 2),
                    (None, None, "Moth at the Window", 1),
                    (1043, date(2026, 4, 8), "Ferry Ledger", 1.0))
    found = orders(data)
    assert [(order.number, order.count) for order in found.orders] == [("1043", 1)]
    assert found.out == ("1042",)


def test_a_column_that_is_lacking_is_said() -> None:
    table = read_table(b"Order;Product\n1042;Ferry Ledger\n")
    with pytest.raises(BadInput, match="how many"):
        read_orders(table, propose(table, {}, None, ORDERS), SHOP, NOW)


def test_a_list_of_years_is_refused_whole() -> None:
    with pytest.raises(BadInput, match="More than 2,000 new orders") as refused:
        orders("".join(f"{n};;;;;Ferry Ledger;;1;;\n" for n in range(10_000, 12_001)))
    assert "fewer days" in refused.value.next_step


def test_a_number_is_kept_without_its_sign() -> None:
    assert [number_of_order(words) for words in ("#1042", " 1042 ", "# 10 42", "A#1")] == [
        "1042", "1042", "10 42", "A#1"]


CELL = st.text(st.characters(blacklist_characters='\n\r;"', blacklist_categories=("Cs", "Cc")),
               max_size=12)


@given(st.lists(st.tuples(st.sampled_from(["1042", "1043", ""]), CELL, CELL, CELL), max_size=8))
@settings(max_examples=80, deadline=None)
def test_whatever_stands_there_every_row_is_in_an_order_or_said(
    rows: list[tuple[str, str, str, str]]
) -> None:
    text = "Order;Product;Quantity;E-mail\n" + "".join(";".join(row) + "\n" for row in rows)
    found = orders(text.encode())
    taken = {line.row for order in found.orders for line in order.lines}
    told = {trouble.row for trouble in found.troubles}
    assert not taken & told
    for order in found.orders:
        assert order.number not in found.out
        assert order.lines
