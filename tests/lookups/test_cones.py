"""What a cone weighed, what was drawn off it, and what it still gives."""

from decimal import Decimal

import pytest

from app.lookups.cones import cone_facts, cone_yield, cones_on_hand
from app.problems import NotFound
from app.work.receiving import ConeIn, DeliveryIn, receive
from app.work.winding import end_cone
from tests.makers import EACH_MG, LONG_MM, Studio

AS_WEIGHED = {"gross_mg": 1_462_000, "tare_mg": 64_000, "batch": "A-203", "moisture_permille": 130}


def cone(studio: Studio, **changes: int) -> int:
    came = ConeIn(**{**AS_WEIGHED, **changes})  # type: ignore[arg-type]
    return int(studio.do(receive, DeliveryIn(
        "Aske Mill", "2241", "Tarnfield 4-ply", studio.clock.now, (came,)))[0])


def test_oil_and_moisture_are_no_yarn(studio: Studio) -> None:
    facts = studio.book.ask(cone_facts, cone(studio))
    assert facts.net_mg == 1_398_000
    assert round(Decimal(facts.fibre_mg) / 1000, 1) == Decimal("1406.4")
    assert round(Decimal(facts.left_mm) / 1000, 1) == Decimal("5617.7")  # 5,625.7 m less 8 m
    assert (facts.millitex, facts.checked) == (250_000, False)


def test_a_cone_gives_thirteen_skeins_three_minis_and_a_tail(studio: Studio) -> None:
    facts = studio.book.ask(cone_facts, cone(studio))
    given = studio.book.ask(cone_yield, facts)
    assert (given.skeins, given.minis) == (13, 3)
    assert round(given.rest_m, 1) == Decimal("255.2")
    assert round(given.tail_m, 1) == Decimal("7.7")


def test_a_count_that_was_checked_by_weighing_counts_more_than_the_label(studio: Studio) -> None:
    facts = studio.book.ask(cone_facts, cone(studio, wrap_mg=25_600))
    given = studio.book.ask(cone_yield, facts)
    assert (facts.millitex, facts.checked) == (256_000, True)
    assert (given.skeins, given.minis) == (13, 1)


def test_what_was_drawn_is_gone_and_what_was_taken_back_is_there_again(studio: Studio) -> None:
    one = cone(studio)
    whole = studio.book.ask(cone_facts, one).left_mm
    studio.wind(one, 6)
    facts = studio.book.ask(cone_facts, one)
    assert (facts.drawn_mm, facts.drawn_mg) == (6 * LONG_MM, 6 * EACH_MG)
    assert facts.left_mm == whole - 6 * LONG_MM
    studio.undo()
    assert studio.book.ask(cone_facts, one).left_mm == whole


def test_an_overdrawn_cone_has_nothing_left_and_not_less(studio: Studio) -> None:
    one = cone(studio)
    studio.wind(one, 15)
    assert studio.book.ask(cone_facts, one).left_mm == 0


def test_cones_on_hand_are_those_not_wound_to_their_end(studio: Studio) -> None:
    first, second = cone(studio), cone(studio)
    studio.wind(first, 13)
    assert [facts.id for facts in studio.book.ask(cones_on_hand)] == [first, second]
    studio.do(end_cone, first, 3_900)
    assert [facts.id for facts in studio.book.ask(cones_on_hand)] == [second]
    ended = studio.book.ask(cone_facts, first)
    assert (ended.ended, ended.waste_mg) == (True, 3_900)
    studio.undo()
    assert len(studio.book.ask(cones_on_hand)) == 2


def test_where_it_came_from_is_told_with_it(studio: Studio) -> None:
    facts = studio.book.ask(cone_facts, cone(studio))
    assert (facts.code, facts.supplier, facts.batch, facts.note_no, facts.base_name) == (
        "C00017", "Aske Mill", "A-203", "2241", "Tarnfield 4-ply")
    assert not facts.opening_stock


def test_a_cone_that_is_not_there_is_told_in_words(studio: Studio) -> None:
    with pytest.raises(NotFound, match="not in the book"):
        studio.book.ask(cone_facts, 99)
    one = cone(studio)
    studio.undo()
    with pytest.raises(NotFound):
        studio.book.ask(cone_facts, one)


def test_a_cone_that_gave_more_than_it_held_says_that_nothing_is_known(studio: Studio) -> None:
    cone = studio.cone()
    studio.wind(cone, 13)
    assert not studio.book.ask(cone_facts, cone).overdrawn
    studio.wind(cone, 3)
    assert studio.book.ask(cone_facts, cone).overdrawn
