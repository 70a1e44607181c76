"""An order written by hand."""

import pytest

from app.lookups.orders import open_orders
from app.problems import Refused
from app.work.ordering import HandOrder, Said, order_by_hand
from app.work.selling import forget_customer, know_customer
from tests.lookups.shop import GLOVE, shelved


def write(studio, *lines, number="", name="Ada Nygård", mail=""):
    return studio.done(order_by_hand, HandOrder(number, name, mail, lines))


def test_words_are_read_as_a_files_are_and_without_a_number_it_gets_the_next(studio):
    done = write(studio, Said(f"{GLOVE}, Tarnfield 4-ply", 2), Said("a book", 1))
    assert done.said == "wrote order H1: 3 pieces"
    assert done.findings == ("“a book” names no colourway of the studio. It is kept as words.",)
    (order,) = studio.book.ask(open_orders)
    assert (order.id, order.name) == (done.answer, "Ada Nygård")
    assert [(line.colourway, line.base) for line in order.lines] == [(1, 1), (None, None)]
    assert write(studio, Said(GLOVE, 1)).said == "wrote order H2: 1 piece"


def test_a_named_lot_is_promised_and_one_that_is_not_there_is_refused(studio):
    ((lot, _),) = shelved(studio, 2)
    write(studio, Said(GLOVE, 2, studio.code(lot).lower()), number="#7")
    (order,) = studio.book.ask(open_orders)
    assert (order.number, order.lines[0].lot) == ("7", lot)
    with pytest.raises(Refused, match="No lot has the code 2699X99"):
        write(studio, Said(GLOVE, 1, "2699X99"))
    with pytest.raises(Refused, match="can still be promised"):
        write(studio, Said(GLOVE, 1, studio.code(lot)))
    with pytest.raises(Refused, match="Order 7 is in the book already"):
        write(studio, Said(GLOVE, 1), number="7")
    with pytest.raises(Refused, match="needs a line"):
        write(studio)


def test_the_mail_tells_who_it_is_and_the_name_does_not(studio):
    ada = studio.do(know_customer, "Ada Nygård", {"mail": "ada@post.example"})
    gone = studio.do(know_customer, "Bo", {"mail": "bo@post.example"})
    studio.do(forget_customer, gone)
    for mail in ("ADA@post.example", "", "bo@post.example"):
        write(studio, Said(GLOVE, 1), mail=mail)
    write(studio, Said(GLOVE, 1), name="")
    buyers = [order.customer for order in studio.book.ask(open_orders)]
    assert buyers[0] == ada
    assert buyers[1] not in (ada, gone, None)
    assert buyers[2] not in (ada, gone, None, buyers[1])
    assert buyers[3] is None
    studio.check()
