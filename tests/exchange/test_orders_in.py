"""Orders from file to book: looked at, then taken in whole as one deed."""

from pathlib import Path

import pytest
from sqlalchemy import select

from app.calculations.codes import Kind
from app.exchange.orders_in import (
    OrdersSeen,
    look_at_orders,
    see_orders,
    stays_out,
    take_in_orders,
    told,
)
from app.lookups.orders import open_orders
from app.problems import BadInput, Refused
from app.records import Customer, Personal
from app.store.journal import verify
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.selling import know_customer
from tests.makers import Studio

HEADS = "Order;Customer;E-mail;Product;Quantity;Lot\n"
ROW = "#1042;Ada Nygård;ada@post.example;Sluice Keeper’s Glove, Tarnfield 4-ply;2;\n"


def seen(studio: Studio, text: str) -> OrdersSeen:
    return studio.book.ask(look_at_orders, text.encode(), {}, studio.clock.now)


def taken(studio: Studio, text: str) -> str:
    return studio.done(take_in_orders, seen(studio, text)).said


def customers(studio: Studio) -> int:
    return len(studio.book.ask(lambda c: c.execute(select(Customer.id)).all()))


def test_looking_saves_nothing_and_taking_in_is_one_deed(studio: Studio) -> None:
    before = studio.book.ask(verify)
    found = seen(studio, HEADS + ROW)
    assert found.orders is not None
    assert told(found.orders.orders) == "1 order, 2 pieces"
    assert studio.book.ask(verify) == before
    assert studio.done(take_in_orders, found).said == "took in 1 order, 2 pieces"
    (order,) = studio.book.ask(open_orders)
    assert (order.number, order.name, order.wanted) == ("1042", "Ada Nygård", 2)
    assert order.lines[0].name == "Sluice Keeper's Glove, Tarnfield 4-ply"
    studio.undo()
    assert studio.book.ask(open_orders) == ()
    studio.check()


def test_the_same_file_again_takes_nothing_in_and_says_so(studio: Studio) -> None:
    taken(studio, HEADS + ROW)
    again = seen(studio, HEADS + ROW)
    assert again.orders is not None
    assert list(stays_out(again.orders)) == [
        "Order 1042 of 6 Apr 2026 is in the book already: it is skipped."]
    with pytest.raises(Refused, match="Nothing of this list can be taken in"):
        studio.do(take_in_orders, again)


def test_a_customer_is_the_same_by_mail_and_another_by_the_same_name(studio: Studio) -> None:
    studio.do(know_customer, "Ada Nygård", {"mail": "Ada@Post.example"})
    studio.do(know_customer, "Bo Lind")
    taken(studio, HEADS + ROW + "1043;Bo Lind;;Gift card;1;\n1044;Cy;cy@post.example;x;1;\n"
                                "1045;Cy Holt;CY@post.example;x;1;\n")
    assert customers(studio) == 4
    orders = studio.book.ask(open_orders)
    assert [order.customer for order in orders] == [1, 3, 4, 4]


def test_a_customer_who_was_removed_is_not_found_again(studio: Studio) -> None:
    from app.work.selling import forget_customer
    studio.do(forget_customer, studio.do(know_customer, "Ada", {"mail": "ada@post.example"}))
    taken(studio, HEADS + ROW)
    assert customers(studio) == 2


def test_what_is_known_of_a_buyer_never_enters_the_journal(studio: Studio) -> None:
    taken(studio, HEADS + ROW)
    bodies = studio.book.ask(lambda c: c.exec_driver_sql("SELECT body FROM deed").scalars().all())
    assert not any(b"ada@post" in bytes(body) or "Nygård".encode() in bytes(body)
                   for body in bodies)
    fields = studio.book.ask(lambda c: c.execute(
        select(Personal.field).where(Personal.customer == 1)).scalars().all())
    assert sorted(fields) == ["mail", "name"]


def test_more_of_a_lot_than_is_left_stays_out_and_the_rest_is_promised(studio: Studio) -> None:
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    lot, skeins = studio.tagged(studio.cone(), 2)
    studio.do(move, skeins, To("shelf", place=shelf))
    rows = "".join(f"{n};;;Sluice Keeper's Glove;{count};{studio.code(lot)}\n"
                   for n, count in ((1, 3), (2, 2)))
    found = seen(studio, HEADS + rows)
    assert found.orders is not None
    assert "2 of it can still be promised, not 3." in next(stays_out(found.orders))
    assert studio.done(take_in_orders, found).said == "took in 1 order, 2 pieces; 1 order left out"
    assert studio.book.ask(open_orders)[0].lines[0].lot == lot


def test_nothing_is_half_taken_in_where_the_book_changed_since_the_look(studio: Studio) -> None:
    found = seen(studio, HEADS + "1041;;;Gift card;1;\n" + ROW)
    taken(studio, HEADS + ROW)
    with pytest.raises(Refused, match="Order 1042 is in the book already"):
        studio.do(take_in_orders, found)
    assert [order.number for order in studio.book.ask(open_orders)] == ["1042"]


def test_columns_are_matched_once_and_remembered_apart_from_those_of_mills(studio: Studio) -> None:
    strange = HEADS.replace("Quantity", "Balls") + ROW
    first = seen(studio, strange)
    assert (first.lacks, first.orders) == (("count",), None)
    said = studio.book.ask(look_at_orders, strange.encode(), {"count": "Balls"}, studio.clock.now)
    studio.do(take_in_orders, said)
    again = seen(studio, strange.replace("1042", "1043"))
    assert again.match.remembered
    assert again.orders is not None


def test_many_orders_that_are_there_already_are_counted(studio: Studio) -> None:
    many = HEADS + "".join(f"{n};;;Gift card;1;\n" for n in range(1, 8))
    taken(studio, many)
    again = seen(studio, many)
    assert again.orders is not None
    assert list(stays_out(again.orders))[-1] == "So are 3 more."


def test_a_file_is_read_from_where_it_lies(studio: Studio, tmp_path: Path) -> None:
    path = tmp_path / "orders.csv"
    path.write_text(HEADS + ROW, "utf-8-sig")
    found = studio.book.ask(see_orders, path, {}, studio.clock.now)
    assert found.orders is not None
    with pytest.raises(BadInput, match=r"gone\.csv cannot be opened"):
        studio.book.ask(see_orders, tmp_path / "gone.csv", {}, studio.clock.now)
