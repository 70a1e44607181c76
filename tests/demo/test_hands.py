"""Whoever's turn it is: what a paper names is found in the book, or it is said what is not."""

from datetime import UTC, datetime
from pathlib import Path
from random import Random

import pytest

from app.calculations.codes import Kind
from app.demo.chance import Chance
from app.demo.hands import Clock, Hands, in_work, lot_facts, mm, tagged
from app.lookups.things import by_code
from app.problems import NotFound
from app.store.book import Book


@pytest.fixture
def hands(demo_book: Book) -> Hands:
    clock = Clock(datetime(2026, 5, 15, tzinfo=UTC))
    return Hands(demo_book, clock, Path(), Chance(1), Random(1), Random(1), lots={"cord": 7})


def test_lots_are_found_by_code_and_by_their_cord(hands: Hands) -> None:
    found = hands.book.ask(by_code, "2615R6F")
    assert found is not None
    assert hands.lot("2615R6F") == found.id
    assert hands.lot("cord") == 7


@pytest.mark.parametrize("find", [
    lambda hands: hands.lot("2699K44"), lambda hands: hands.lot("C0114F"),
    lambda hands: hands.thing(Kind.CONE, 999)])
def test_what_is_not_there_is_said(hands: Hands, find: object) -> None:
    assert callable(find)
    with pytest.raises(NotFound, match=r"There is no (lot|cone) .* in this studio"):
        find(hands)


def test_skeins_are_told_by_their_state(hands: Hands) -> None:
    lot = hands.lot("2615R6F")
    assert len(hands.skeins(lot)) == 1
    assert len(hands.book.ask(tagged, lot, ["shelf", "put by", "kit"])) == 3
    assert hands.book.ask(in_work, lot) == []


def test_a_lot_is_told_by_its_bath_base_and_colourway(hands: Hands) -> None:
    facts = hands.book.ask(lot_facts, hands.lot("2614H7W"))
    other = hands.book.ask(lot_facts, hands.lot("2614K14"))
    assert facts.bath == other.bath
    assert (facts.base, facts.colourway) == ("Gossamer Lamb", "Ferry Ledger")


def test_metres_of_a_paper_are_whole_millimetres() -> None:
    assert mm(255.2) == 255_200
