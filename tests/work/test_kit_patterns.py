"""Kits by a pattern: every scanned skein into the place that wants its colour, or nothing."""

from typing import Any

import pytest

from app.calculations.codes import Kind
from app.lookups.kit_patterns import pattern_now, patterns_now
from app.lookups.kits import kit_now
from app.lookups.skeins import now_of
from app.problems import NotFound, Refused
from app.records import OrderLine
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, name_colourway
from app.work.kit_patterns import PatternIn, PlaceIn, make_by_pattern, write_pattern
from app.work.kits import open_kit, sell_kit
from app.work.moving import To, move
from tests.lookups.cards import read_standard
from tests.makers import Studio

NAVY, MOTH, WHEY, GLOVE = 2, 3, 4, 1
COWL = PatternIn("Stair-Rail  Cowl", (
    PlaceIn("A", 2, NAVY, 1, stand_ins=(GLOVE,)), PlaceIn("B", 1, MOTH, 1, stand_ins=(WHEY,))),
    price=7900)


@pytest.fixture
def shop(studio: Any) -> Any:
    """Two lots of navy, one of moth, one of whey and one of glove on a shelf."""
    for name in ("Ferry Ledger", "Moth at the Window", "Whey Blue"):
        studio.do(name_colourway, name, "#223344")
    (studio.shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    studio.of = {name: tagged(studio, colourway, count) for name, colourway, count in (
        ("navy", NAVY, 3), ("navy2", NAVY, 2), ("moth", MOTH, 2), ("whey", WHEY, 1),
        ("glove", GLOVE, 2))}
    studio.cowl = studio.do(write_pattern, COWL)
    return studio


def tagged(studio: Studio, colourway: int, count: int) -> list[int]:
    group = studio.wind(studio.cone(), count)
    studio.do(into_bath, BathIn((group,), colourway), studio.random)
    (pile,) = studio.finish(group, red=count)
    skeins = studio.tag(pile, count)
    studio.do(move, skeins, To("shelf", place=studio.shelf))  # type: ignore[attr-defined]
    return skeins


def test_a_pattern_is_kept_with_its_places_and_what_may_stand_in(shop: Any) -> None:
    found = shop.book.ask(pattern_now, shop.cowl)
    assert (found.name, found.price) == ("Stair-Rail Cowl", 7900)
    assert [(one.letter, one.wanted, one.name, [other.name for other in one.stand_ins])
            for one in found.places] == [
        ("A", 2, "Ferry Ledger", ["Sluice Keeper's Glove"]),
        ("B", 1, "Moth at the Window", ["Whey Blue"])]


def test_a_pattern_written_anew_takes_the_place_of_the_old_one(shop: Any) -> None:
    kit = shop.do(make_by_pattern, shop.cowl, [*shop.of["navy"][:2], shop.of["moth"][0]])
    done = shop.done(write_pattern, PatternIn("Stair-Rail Cowl", (PlaceIn("A", 3, NAVY, 1),)))
    assert done.said == "wrote anew the kit pattern Stair-Rail Cowl: A 3"
    assert [one.id for one in shop.book.ask(patterns_now)] == [done.answer]
    assert shop.book.ask(pattern_now, shop.cowl) is None
    assert len(shop.book.ask(kit_now, kit).skeins) == 3
    shop.undo()
    assert [one.id for one in shop.book.ask(patterns_now)] == [shop.cowl]
    shop.check()


def test_a_bag_lists_every_skein_with_its_lot_and_costs_what_the_pattern_says(shop: Any) -> None:
    rows = [*shop.of["navy"][:2], shop.of["moth"][0]]
    done = shop.done(make_by_pattern, shop.cowl, rows)
    assert done.said.endswith("Stair-Rail Cowl: 3 skeins")
    bag = shop.book.ask(kit_now, done.answer)
    assert sorted(one.yarn for one in bag.skeins) == sorted(rows)
    assert len({one.mark[:7] for one in bag.skeins}) == 2
    shop.do(sell_kit, done.answer)
    assert shop.book.ask(lambda c: c.execute(
        OrderLine.__table__.select()).mappings().one()["price"]) == 7900


def test_one_colour_from_two_lots_is_refused_at_the_desk_and_marked_when_late(shop: Any) -> None:
    rows = [shop.of["navy"][0], shop.of["navy2"][0], shop.of["moth"][0]]
    with pytest.raises(Refused, match="Colour A of this kit is from two lots; nothing was saved"):
        shop.do(make_by_pattern, shop.cowl, rows)
    assert shop.book.ask(now_of, rows[0]).state == "shelf"
    at = shop.clock.now
    shop.clock.now = at.replace(hour=at.hour + 2)
    done = shop.done(make_by_pattern, shop.cowl, rows, happened=at)
    assert done.findings[0] == "Colour A of this kit is from two lots."


@pytest.mark.parametrize(("names", "why"), [
    (["navy", "moth"], r"still lacks A \(Ferry Ledger\) 1;"),
    (["navy", "navy"], r"still lacks B \(Moth at the Window\) 1;"),
    (["navy", "navy", "moth", "moth"], "No place of Stair-Rail Cowl wants 1 of these"),
    ([], r"still lacks A \(Ferry Ledger\) 2, B"),
])
def test_what_is_lacking_or_too_much_is_named(shop: Any, names: list[str], why: str) -> None:
    rows = [shop.of[name][names[:at].count(name)] for at, name in enumerate(names)]
    with pytest.raises(Refused, match=why):
        shop.do(make_by_pattern, shop.cowl, rows)


def test_a_substitute_is_taken_and_lost_contrast_is_said(shop: Any) -> None:
    rows = [*shop.of["navy"][:2], shop.of["whey"][0]]
    for colourway, lightness in ((NAVY, 25.1), (MOTH, 65.5), (WHEY, 74.1)):
        read_standard(shop, (lightness, 3.0, 3.0), colourway)
    kept = shop.done(make_by_pattern, shop.cowl, rows)
    assert kept.findings == ()
    shop.do(open_kit, kept.answer, shop.shelf)
    read_standard(shop, (48.3, -36.6, 3.3), GLOVE)
    rows = [*shop.of["glove"], shop.of["moth"][0]]
    done = shop.done(make_by_pattern, shop.cowl, rows)
    assert done.findings == ("The substitute in A leaves too little contrast or turns it round: "
                             "17 L* to B, before 40.",)


@pytest.mark.parametrize(("pattern", "why"), [
    (PatternIn(" ", COWL.places), "needs a name"), (PatternIn("x", ()), "are A, B, C"),
    (PatternIn("x", (PlaceIn("B", 1, 1, 1),)), "are A, B, C"),
    (PatternIn("x", (PlaceIn("A", 0, 1, 1),)), "1 to 100"),
    (PatternIn("x", COWL.places, -1), "less than nothing"),
    (PatternIn("x", (PlaceIn("A", 1, 99, 1),)), "of A is not in the book"),
    (PatternIn("x", (PlaceIn("A", 1, 1, 1, "hank"),)), "of A is not in the book"),
])
def test_a_pattern_that_makes_no_sense_is_refused(
    shop: Any, pattern: PatternIn, why: str
) -> None:
    with pytest.raises((Refused, NotFound), match=why):
        shop.do(write_pattern, pattern)
    with pytest.raises(NotFound, match="kit pattern is not in the book"):
        shop.do(make_by_pattern, 99, [])
