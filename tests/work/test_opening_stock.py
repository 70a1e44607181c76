"""The first day: old lots keep their codes, and nobody invents a cone."""

from dataclasses import replace
from itertools import product
from random import Random

import pytest

from app.calculations.code_drawing import draw_mark
from app.calculations.codes import CHARACTERS, bare_characters, code_of
from app.lookups.cones import cone_facts
from app.lookups.tagging import pile_facts, tag_text
from app.lookups.things import by_code
from app.problems import Refused
from app.work.opening_stock import LayHere, OldLot, open_lot, open_lots
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


@pytest.mark.parametrize(("code", "count", "why"), [
    (" - ", 4, "An old lot needs the code that stands on its tags"),
    ("2615R6F7M", 4, "2615R6F7M reads as the code of something else"),
    ("C-0114-F", 4, "reads as the code of something else"),
    ("OLD77", 0, "0 of lot OLD77 cannot lie here"),
])
def test_what_is_no_old_lot_is_refused(studio: Studio, code: str, count: int, why: str) -> None:
    with pytest.raises(Refused, match=why):
        studio.do(open_lot, old(studio, code, count), 100_000)


def test_a_lot_of_an_earlier_book_keeps_its_code(studio: Studio) -> None:
    pile = studio.do(open_lot, old(studio, "26·15·R6F"), 100_000)
    assert studio.book.ask(pile_facts, pile).lot == "2615R6F"


def test_no_mark_of_an_old_lot_reads_as_another_code() -> None:
    marks = {draw_mark("C123", (), Random(seed)).text for seed in range(2_000)}
    read_as = {code_of(bare_characters(f"C123-{a}{b}"))
               for a, b in product(CHARACTERS, CHARACTERS)} - {None}
    assert read_as
    assert not marks & {f"C123-{code.text[-2:]}" for code in read_as if code}
    assert len(marks) > 300


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


def test_lots_are_opened_by_the_names_people_use(studio: Studio) -> None:
    lots = [LayHere("OLD 77", "Tarnfield 4-ply", "Sluice Keeper's Glove", 4),
            LayHere("M-12", "Tarnfield 4-ply", "Lock House Door", 9, "mini")]
    done = studio.done(open_lots, lots)
    assert done.said == "opened 2 old lots, 13 in all"
    facts = [studio.book.ask(pile_facts, pile) for pile in done.answer]
    assert [(one.lot, one.colourway, one.put_up, one.counted) for one in facts] == [
        ("OLD77", "Sluice Keeper's Glove", "skein", 4), ("M12", "Lock House Door", "mini", 9)]
    assert studio.present()["piled", "mini"].mg == 9 * 20_000
    assert studio.book.ask(tag_text, done.answer[1], facts[1].versions[0]).lot == "M12"
    studio.check()


@pytest.mark.parametrize(("changes", "why"), [
    ({"base": "Moorit"}, "Moorit is not described in the book"),
    ({"put_up": "ball"}, "A ball of Tarnfield 4-ply is not described"),
    ({"colourway": " "}, "A colourway needs a name"),
    ({"code": "OLD1"}, "Lot OLD1 is in the book already"),
])
def test_one_lot_that_cannot_be_opened_opens_none(
    studio: Studio, changes: dict[str, str], why: str
) -> None:
    good = LayHere("OLD1", "Tarnfield 4-ply", "Lock House Door", 4)
    with pytest.raises(Refused, match=why):
        studio.do(open_lots, [good, replace(replace(good, code="OLD2"), **changes)])
    assert studio.present() == {}


def test_no_lots_are_not_opened(studio: Studio) -> None:
    with pytest.raises(Refused, match="No old lot was named"):
        studio.do(open_lots, [])
