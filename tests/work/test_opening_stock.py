"""The first day: old lots keep their codes, and nobody invents a cone."""

import pytest

from app.lookups.cones import cone_facts
from app.lookups.things import by_code
from app.problems import Refused
from app.work.opening_stock import OldLot, open_lot
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.makers import Studio


def old(studio: Studio, code: str = "OLD-77", count: int = 4) -> OldLot:
    return OldLot(code, studio.version, 1, count)


def test_an_old_lot_is_a_pile_whose_cones_are_not_known(studio: Studio) -> None:
    done = studio.done(open_lot, old(studio), 100_000)
    assert done.said == "opened old lot OLD-77: 4 skeins"
    assert [(k.word, k.basis) for k in studio.origins(done.answer)] == [("not known", "stated")]
    assert {key: (a.count, a.mg) for key, a in studio.present().items()} == {
        ("piled", "skein"): (4, 400_000)}
    studio.check()


def test_an_old_code_is_found_however_it_is_written_and_is_taken_once(studio: Studio) -> None:
    studio.do(open_lot, old(studio, "old 77"), 100_000)
    assert studio.book.ask(by_code, "OLD77") is not None
    with pytest.raises(Refused, match="Lot OLD·77 is in the book already"):
        studio.do(open_lot, old(studio, "OLD·77"), 100_000)
    with pytest.raises(Refused, match="is in the book already"):
        studio.do(open_lot, old(studio, " - "), 100_000)


def test_tags_of_an_old_lot_carry_its_code(studio: Studio) -> None:
    pile = studio.do(open_lot, old(studio), 100_000)
    studio.tag(pile, 4)
    assert {key[0]: a.count for key, a in studio.present().items()} == {"table": 4}
    marks = [mark for (mark,) in studio.book.ask(
        lambda c: c.exec_driver_sql("SELECT mark FROM tag").all())]
    assert all(mark.startswith("OLD77-") for mark in marks)
    assert len(set(marks)) == 4


def test_a_part_cone_of_the_first_day_is_a_delivery_of_its_own_kind(studio: Studio) -> None:
    came = (ConeIn(700_000, 64_000, None),)
    (cone,) = studio.do(receive, DeliveryIn(
        "", "", "Tarnfield 4-ply", studio.clock.now, came, opening_stock=True))
    facts = studio.book.ask(cone_facts, cone)
    assert (facts.opening_stock, facts.batch, facts.supplier) == (True, None, "not stated")
