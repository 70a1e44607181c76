"""Histories of a dye studio, walked through the book: what is said then, to the last number."""

from datetime import timedelta
from fractions import Fraction
from typing import Any

import pytest

from app.calculations.chances import at_least_one, expected
from app.lookups.certainty import held_by, links, tally
from app.lookups.present import Amount
from app.lookups.thread import thread
from app.problems import Refused
from app.work.bases import describe_base
from app.work.bundling import take_off, tie_on
from app.work.holding import clear, hold, lift_hold
from app.work.mixing import lose, recognise
from app.work.opening_stock import OldLot, open_lot
from tests.deeds import customer, into_load, put, send
from tests.makers import EACH_MG, Studio, tarnfield


def said(studio: Studio, yarn: int, kind: str = "cone") -> list[tuple[int | None, str, str]]:
    return [(link.thing, link.word, link.basis) for link in studio.origins(yarn, kind)]


def law(studio: Studio, yarn: int, cone: int) -> tuple[int, int, Fraction]:
    """Least, most and expected of a row's members that are of the cone."""
    return next(
        (
            (link.least, link.most, link.expected)
            for link in studio.origins(yarn)
            if link.thing == cone
        ),
        (0, 0, Fraction(0)),
    )


def states(studio: Studio, kind: str = "", thing: int = 0) -> dict[tuple[str, str], int]:
    return {key: amount.count for key, amount in studio.present(kind, thing).items()}


def test_a_join_then_a_mixed_pot(studio: Studio) -> None:
    one, two = studio.cones(2)
    a, b = studio.wind(one, 6), studio.wind(two, 6)
    join = studio.join([(one, 255_200), (two, 157_300)])
    assert [(link.word, round(link.share * 100)) for link in studio.origins(join)] == [
        ("partly", 62),
        ("partly", 38),
    ]
    pool = studio.mix(a, b, join)
    lot = studio.dye(pool)
    assert [(link.least, link.most, link.of) for link in studio.origins(pool)] == [
        (7, 7, 13),
        (7, 7, 13),
    ]
    (pile,) = studio.finish(pool, red=12, **{"red and yellow": 1})[:1]
    (skein,) = studio.tag(pile, 1)
    assert {link.word for link in studio.origins(skein)} == {"one of a pool"}
    assert {link.expected for link in studio.origins(skein)} == {Fraction(1, 2)}
    assert said(studio, skein, "lot") == [(lot, "known", "counted")]
    studio.check()


def test_a_bundle_half_in_one_wash_half_in_another(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8)
    lot, then = studio.dye(group), studio.clock.now
    left, right = studio.split(group, 4, 4)
    with pytest.raises(Refused, match="Scan what it became"):
        studio.do(into_load, "wash", [group])
    w1, w2 = studio.do(into_load, "wash", [left]), studio.do(into_load, "wash", [right])
    assert said(studio, left, "load") == [(w1, "known", "scanned")]
    (p1,), (p2,) = studio.finish(left, red=4), studio.finish(right, red=4)
    skein = studio.tag(studio.mix(p1, p2), 8)[0]
    assert said(studio, skein, "load") == [
        (w1, "one of a pool", "counted"),
        (w2, "one of a pool", "counted"),
    ]
    assert said(studio, skein, "lot") == [(lot, "known", "counted")]
    assert said(studio, skein)[0][1] == "known"
    assert studio.present("load", w1) == {("table", "skein"): Amount(8, 8 * EACH_MG)}
    soak = studio.do(into_load, "soak", [group], happened=then)  # it was one row then
    assert (soak, "known", "counted") in said(studio, skein, "load")
    studio.check()


def test_a_disc_used_again_next_morning_and_yesterday_entered_late(studio: Studio) -> None:
    disc, clock = studio.discs[0], studio.clock
    first, second = studio.wind(studio.cone(), 6), studio.wind(studio.cone(), 6)
    studio.do(tie_on, disc, [first])
    with pytest.raises(Refused, match="hangs on a live bundle"):
        studio.do(tie_on, disc, [second])
    yesterday = clock.now + timedelta(hours=5)
    clock.now += timedelta(hours=9)
    studio.do(take_off, disc)
    clock.now += timedelta(hours=15)
    studio.do(tie_on, disc, [second])
    late = studio.do(into_load, "soak", disc=disc, happened=yesterday, reason="white board")
    now = studio.do(into_load, "soak", disc=disc)
    assert said(studio, first, "load") == [(late, "known", "scanned")]
    assert said(studio, second, "load") == [(now, "known", "scanned")]
    studio.check()


def test_a_count_short_by_one(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8, "yellow")
    studio.dye(group)
    (pile,) = studio.finish(group, yellow=7)
    assert studio.present() == {
        ("missing at a count", "skein"): Amount(1, EACH_MG),
        ("piled", "skein"): Amount(7, 7 * EACH_MG),
    }
    with pytest.raises(Refused, match=r"0 of 7 printed: why 8 more\?"):
        studio.print(pile, 8)
    studio.tag(pile, 7)
    assert states(studio) == {("missing at a count", "skein"): 1, ("table", "skein"): 7}
    studio.check()


def test_a_count_with_one_too_many(studio: Studio) -> None:
    cone = studio.cone()
    (nine,) = studio.finish(studio.wind(cone, 8), red=9)
    assert [
        (link.thing, link.word, link.least, link.most, link.of) for link in studio.origins(nine)
    ] == [(cone, "one of a pool", 8, 8, 9), (None, "one of a pool", 1, 1, 9)]
    assert states(studio) == {("piled", "skein"): 9}
    studio.check()


def test_two_tie_colours_in_one_pool_and_the_missing_one_is_told_by_the_count(
    studio: Studio,
) -> None:
    one, two = studio.cones(2)
    a, b = studio.wind(one, 7, "red"), studio.wind(two, 5, "blue")
    pool = studio.mix(a, b)
    reds, blues = studio.finish(pool, red=7, blue=4)
    assert said(studio, reds) == [(one, "known", "recognised")]
    assert said(studio, blues) == [(two, "known", "recognised")]
    missing = studio.book.ask(lambda c: tally(thread(c, [pool]), {pool: 1}, ("cone", two)))
    assert (missing.least, missing.most, missing.expected) == (1, 1, 1)
    assert states(studio) == {("piled", "skein"): 11, ("missing at a count", "skein"): 1}
    whole = studio.origins(pool)
    assert [(k.thing, k.least, k.most) for k in whole] == [(one, 7, 7), (two, 5, 5)]
    studio.check()


def test_a_mixed_pot_that_was_split_is_still_told_by_its_ties(studio: Studio) -> None:
    one, two = studio.cones(2)
    pool = studio.mix(studio.wind(one, 7, "red"), studio.wind(two, 5, "blue"))
    eight, four = studio.split(pool, 8, 4)
    reds, blues = studio.finish(eight, red=5, blue=3)
    assert (said(studio, reds)[0][:2], said(studio, blues)[0][:2]) == (
        (one, "known"),
        (two, "known"),
    )
    assert law(studio, four, one) == (2, 2, 2)
    assert law(studio, four, two) == (2, 2, 2)
    assert law(studio, eight, one) == (5, 5, 5)
    assert states(studio) == {("piled", "skein"): 8, ("in work", "skein"): 4}
    studio.check()


def test_a_base_whose_composition_changes_inside_one_lot(studio: Studio) -> None:
    old = studio.cone()
    version = studio.do(describe_base, tarnfield(fibre="75 % wool, 25 % polyamide"))
    new = studio.cone()
    a, b = studio.wind(old, 4, "red"), studio.wind(new, 4, "blue")
    lot = studio.dye(a, b)
    (pa,), (pb,) = studio.finish(a, red=4), studio.finish(b, blue=4)
    assert said(studio, studio.tag(pa, 1)[0], "version") == [(studio.version, "known", "counted")]
    assert said(studio, studio.tag(pb, 1)[0], "version") == [(version, "known", "counted")]
    both = studio.mix(pa, pb)
    with pytest.raises(Refused, match="The owner says which text is printed"):
        studio.print(both, 6)
    assert len(studio.tag(both, 6, version=version)) == 6
    assert states(studio, "lot", lot) == {("table", "skein"): 8}
    studio.check()


def test_a_hold_lifted_and_placed_again_and_one_skein_cleared(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 6)

    def held() -> list[int]:
        return studio.book.ask(lambda c: [s for s in skeins if held_by(thread(c, [s]), s)])

    first = studio.do(hold, "cone", cone, "oil under the lamp")
    assert held() == skeins
    studio.do(clear, first, skeins[0], "lamp: clean")
    assert held() == skeins[1:]
    studio.do(lift_hold, first, "washed out")
    assert held() == []
    second = studio.do(hold, "cone", cone, "it came back")
    assert held() == skeins  # a clearing belongs to its hold
    studio.do(clear, second, skeins[1], "lamp, twice")
    assert held() == [skeins[0], *skeins[2:]]
    studio.check()


def test_an_old_lot_from_before_the_book(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 4), 100_000)
    skeins = studio.tag(pile, 4)
    assert said(studio, skeins[0]) == [(None, "not known", "stated")]
    assert said(studio, skeins[0], "lot") == [(1, "known", "stated")]
    assert said(studio, skeins[0], "version") == [(studio.version, "known", "stated")]
    studio.do(send, skeins[:1], studio.do(customer, "Bo Ek"))
    assert studio.present("lot", 1) == {
        ("table", "skein"): Amount(3, 300_000),
        ("sent, buyer known", "skein"): Amount(1, 100_000),
    }
    studio.check()


def test_two_piles_of_two_lots_pushed_together(studio: Studio) -> None:
    (p1,) = piles_of(studio, 3)
    (p2,) = piles_of(studio, 2)
    both = studio.mix(p1, p2)
    assert [
        (link.thing, link.least, link.most, link.of) for link in studio.origins(both, "lot")
    ] == [(1, 3, 3, 5), (2, 2, 2, 5)]
    with pytest.raises(Refused, match="2 lots lie in one pile; nothing was printed"):
        studio.print(both, 1)
    studio.check()


def piles_of(studio: Studio, count: int) -> list[int]:
    group = studio.wind(studio.cone(), count)
    studio.dye(group)
    return studio.finish(group, red=count)


def test_seven_and_five_split_one_lost_one_recognised(studio: Studio) -> None:
    ca, cb = studio.cones(2)
    a = studio.wind(ca, 7)
    pool = studio.mix(a, studio.wind(cb, 5))
    eight, four = studio.split(pool, 8, 4)
    assert law(studio, eight, ca) == (3, 7, Fraction(14, 3))
    assert law(studio, four, ca) == (0, 4, Fraction(7, 3))
    assert law(studio, eight, cb) == (1, 5, Fraction(10, 3))
    seven, lost = studio.do(lose, eight, 1)
    assert law(studio, seven, ca) == (2, 7, Fraction(49, 12))
    assert law(studio, lost, ca) == (0, 1, Fraction(7, 12))
    six, seen = studio.split(seven, 6, 1)
    studio.do(recognise, seen, pool, a)
    assert said(studio, seen) == [(ca, "known", "recognised")]
    assert law(studio, six, ca) == (1, 6, Fraction(36, 11))
    assert law(studio, lost, ca) == (0, 1, Fraction(6, 11))
    assert law(studio, four, ca) == (0, 4, Fraction(24, 11))
    assert law(studio, seven, ca) == (2, 7, 1 + Fraction(36, 11))
    assert law(studio, pool, ca) == (7, 7, 7)
    nested = studio.mix(four, studio.wind(studio.cone(), 4))
    part, other = studio.split(nested, 6, 2)
    assert law(studio, part, ca) == (0, 4, Fraction(18, 11))
    assert law(studio, other, ca) == (0, 2, Fraction(6, 11))
    studio.check()


def test_a_buyer_with_four_of_the_twelve(studio: Studio) -> None:
    ca, cb = studio.cones(2)
    pool = studio.mix(studio.wind(ca, 7), studio.wind(cb, 5))
    studio.dye(pool)
    skeins = studio.tag(studio.finish(pool, red=12)[0], 12)
    studio.do(send, skeins[:4])
    bought = studio.book.ask(lambda c: _of_all(thread(c, skeins[:4]), skeins[:4], cb))
    assert bought == (0, 4, Fraction(5, 3))
    assert bought[2] == expected(12, 5, 4)
    assert round(float(bought[2]), 2) == 1.67
    assert round(float(at_least_one(12, 5, 4)) * 100, 1) == 92.9
    assert states(studio, "cone", cb) == {
        ("sent, buyer not known", "skein"): 4,
        ("table", "skein"): 8,
    }
    studio.check()


def _of_all(found: Any, skeins: list[int], cone: int) -> tuple[int, int, Fraction]:
    got = tally(found, dict.fromkeys(skeins, 1), ("cone", cone))
    return int(got.least), int(got.most), got.expected


def test_stock_to_a_fair_two_sold_one_lost(studio: Studio) -> None:
    lot, skeins = studio.tagged(studio.cone(), 6)
    shelf, fair = studio.pot, studio.pot2  # any plate is a place
    studio.do(put, skeins, "shelf", shelf)
    studio.do(put, skeins[:5], "fair", fair)
    studio.do(send, skeins[:2])
    studio.do(lose, skeins[2], 1)
    studio.do(put, skeins[3:5], "shelf", shelf)
    assert states(studio, "lot", lot) == {
        ("sent, buyer not known", "skein"): 2,
        ("lost", "skein"): 1,
        ("shelf", "skein"): 3,
    }
    assert [links_word(studio, skein) for skein in skeins] == ["known"] * 6
    studio.check()


def links_word(studio: Studio, skein: int) -> str:
    return studio.book.ask(lambda c: links(thread(c, [skein]), skein, "cone"))[0].word
