"""A customer's own data as a file."""

import csv
import json

import pytest

from app.exchange.customer_file import HEADINGS, customer_csv, customer_json
from app.problems import NotFound
from app.work.selling import OrderIn, Wanted, forget_customer, know_customer, place_order, sell
from tests.lookups.shop import GLOVE, shelved
from tests.makers import Studio


def test_json_says_all_and_csv_what_was_bought(studio: Studio) -> None:
    ((_, skeins),) = shelved(studio, 4)
    ada = studio.do(know_customer, "Ada Nygård", {"mail": "ada@example.org"})
    studio.do(sell, skeins[:2], ada)
    studio.do(place_order, OrderIn("1187", studio.clock.now, "web", (Wanted("=2 more", 2),), ada))
    told = json.loads(studio.book.ask(customer_json, ada))
    assert told["about you"] == {"name": "Ada Nygård", "mail": "ada@example.org"}
    assert [(one["colourway"], one["sold"]) for one in told["bought"]] == [(GLOVE, 2), ("", 0)]
    assert list(told["bought"][0]) == list(HEADINGS)
    data = studio.book.ask(customer_csv, ada)
    assert data.startswith(b"\xef\xbb\xbforder,placed,")
    rows = list(csv.DictReader(data.decode("utf-8-sig").splitlines()))
    assert [(row["what"], row["sold"]) for row in rows] == [
        ("as scanned", "2"), ("'=2 more", "0")]


def test_after_removal_the_history_stays_and_the_person_is_gone(studio: Studio) -> None:
    ((_, skeins),) = shelved(studio, 1)
    ada = studio.do(know_customer, "Ada Nygård")
    studio.do(sell, skeins, ada)
    studio.do(forget_customer, ada)
    data = studio.book.ask(customer_json, ada)
    told = json.loads(data)
    assert b"Ada" not in data
    assert (told["removed on request"], told["about you"], len(told["bought"])) == (True, {}, 1)


def test_a_customer_who_is_not_in_the_book_gets_no_file(studio: Studio) -> None:
    for file in (customer_json, customer_csv):
        with pytest.raises(NotFound, match="no customer 9 in the book; no file was written"):
            studio.book.ask(file, 9)
