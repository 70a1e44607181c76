"""Histories up to the tag, walked through the book: what is said then, to the last number."""

from datetime import timedelta
from fractions import Fraction

import pytest

from app.calculations.chances import at_least_one, expected
from app.lookups.certainty import tally
from app.lookups.finishing import NO_TIE
from app.lookups.present import NOT_MATCHED, Amount
from app.lookups.thread import thread
from app.problems import Refused
from app.work.bases import describe_base
from app.work.bundling import take_off, tie_on
from app.work.matching import find, is_missing_from
from app.work.mixing import lose, recognise
from app.work.remaking import cut, gather
from app.work.returning import came_back
from app.work.selling import know_customer, sell
from tests.deeds import into_load
from tests.makers import Studio, tarnfield
from tests.whole.answers import (
    agree,
    law,
    law_of_all,
    left,
    said,
    skeins,
    states,
    stops,
    where_to,
)


def test_a_join_then_a_mixed_pot_an_overdye_minis_and_one_of_them_returned(
    studio: Studio,
) -> None:
    one, two = studio.cones(2)
    a, b = studio.wind(one, 6), studio.wind(two, 6)
    join = studio.join([(one, 255_200), (two, 157_300)])
    assert [(link.word, round(link.share * 100)) for link in studio.origins(join)] == [
        ("partly", 62), ("partly", 38)]
    pool = studio.mix(a, b, join)  # cords cut in the pot
    first = studio.dye(pool)
    assert [(link.least, link.most, link.of) for link in studio.origins(pool)] == [
        (7, 7, 13), (7, 7, 13)]
    red, joined = studio.finish(pool, red=12, **{"red and yellow": 1})
    assert [(k.word, round(k.share * 100)) for k in studio.origins(joined)] == [
        ("partly", 62), ("partly", 38)]  # its two-coloured tie tells it from the twelve
    twelve = studio.tag(red, 12)
    assert {link.expected for link in studio.origins(twelve[0])} == {Fraction(1, 2)}
    assert said(studio, twelve[0], "lot") == [(first, "known", "counted")]

    group = studio.do(gather, twelve[:2])
    second = studio.dye(group)
    (again,) = studio.finish(group, **{NO_TIE: 2})
    over = studio.tag(again, 2)
    assert [word[:2] for word in said(studio, over[0], "lot")] == [
        (first, "known"), (second, "known")]
    minis = studio.tag(studio.do(cut, over[0], 5, "mini", 600), 5)
    assert [(k.word, k.expected, k.basis) for k in studio.origins(minis[0])] == [
        ("one of a pool", Fraction(1, 2), "counted")] * 2
    assert law_of_all(studio, minis, one) == (0, 5, Fraction(5, 2))
    studio.do(sell, minis[:3], studio.do(know_customer, "Ada Nygård"))
    studio.do(came_back, minis[:1])
    assert studio.present() == {
        ("table", "skein"): skeins(11),  # ten never overdyed, one overdyed
        ("piled", "skein"): skeins(1),  # the one over the join
        ("table", "mini"): Amount(3, 3 * 20_505),
        ("sent, buyer known", "mini"): Amount(2, 2 * 20_505),
    }
    below = where_to(studio, "cone", one)
    assert (below.count, below.together and below.together.of) == (17, 17)
    with pytest.raises(Refused, match="became something else"):
        studio.do(came_back, twelve[:1])
    agree(studio)


def test_a_bundle_half_in_one_wash_half_in_another(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8)
    lot, then = studio.dye(group), studio.clock.now
    one, other = studio.split(group, 4, 4)
    with pytest.raises(Refused, match="Scan what it became"):
        studio.do(into_load, "wash", [group])
    w1, w2 = studio.do(into_load, "wash", [one]), studio.do(into_load, "wash", [other])
    assert said(studio, one, "load") == [(w1, "known", "scanned")]
    (p1,), (p2,) = studio.finish(one, red=4), studio.finish(other, red=4)
    tagged = studio.tag(studio.mix(p1, p2), 8)
    assert said(studio, tagged[0], "load") == [
        (w1, "one of a pool", "counted"), (w2, "one of a pool", "counted")]
    assert said(studio, tagged[0], "lot") == [(lot, "known", "counted")]
    assert said(studio, tagged[0])[0][1] == "known"
    assert studio.present("load", w1) == {("table", "skein"): skeins(8)}
    below = where_to(studio, "load", w1).together
    assert below is not None
    assert (below.least, below.most, below.of) == (4, 4, 8)
    soak = studio.do(into_load, "soak", [group], happened=then)  # it was one row then
    assert (soak, "known", "counted") in said(studio, tagged[0], "load")
    agree(studio)


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
    assert studio.present("load", late) == {("in work", "skein"): skeins(6)}
    agree(studio)


def test_a_count_short_by_one_that_is_found_weeks_later(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8, "yellow")
    lot = studio.dye(group)
    (pile,) = studio.finish(group, yellow=7)
    assert studio.present() == {
        ("missing at a count", "skein"): skeins(1), ("piled", "skein"): skeins(7)}
    with pytest.raises(Refused, match=r"0 of 7 printed: why 8 more\?"):
        studio.print(pile, 8)
    studio.tag(pile, 7)
    found = studio.do(find, 1, 102_000)
    assert states(studio) == {"missing at a count": 1, "table": 7, NOT_MATCHED: 1}
    assert said(studio, found) == [(None, "not known", "stated")]
    assert states(studio, "lot", lot) == {"missing at a count": 1, "table": 7}
    studio.do(is_missing_from, found, group)  # its tie is yellow
    assert studio.present() == {("table", "skein"): skeins(8)}
    assert said(studio, found)[0][1:] == ("known", "recognised")
    agree(studio)


def test_a_count_with_one_too_many(studio: Studio) -> None:
    cone = studio.cone()
    (nine,) = studio.finish(studio.wind(cone, 8), red=9)
    assert [(k.thing, k.word, k.least, k.most, k.of) for k in studio.origins(nine)] == [
        (cone, "one of a pool", 8, 8, 9), (None, "one of a pool", 1, 1, 9)]
    assert states(studio) == {"piled": 9}
    agree(studio)


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
    assert states(studio) == {"piled": 11, "missing at a count": 1}
    whole = studio.origins(pool)
    assert [(k.thing, k.least, k.most) for k in whole] == [(one, 7, 7), (two, 5, 5)]
    agree(studio)


def test_a_mixed_pot_that_was_split_is_still_told_by_its_ties(studio: Studio) -> None:
    one, two = studio.cones(2)
    pool = studio.mix(studio.wind(one, 7, "red"), studio.wind(two, 5, "blue"))
    eight, four = studio.split(pool, 8, 4)
    reds, blues = studio.finish(eight, red=5, blue=3)
    assert (said(studio, reds)[0][:2], said(studio, blues)[0][:2]) == (
        (one, "known"), (two, "known"))
    assert law(studio, four, one) == (2, 2, 2)
    assert law(studio, four, two) == (2, 2, 2)
    assert law(studio, eight, one) == (5, 5, 5)
    assert states(studio) == {"piled": 8, "in work": 4}
    agree(studio)


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
    mixed = studio.tag(both, 6, version=version)
    assert {word for _, word, _ in said(studio, mixed[0], "version")} == {"one of a pool"}
    assert studio.present("lot", lot) == {("table", "skein"): skeins(8)}
    agree(studio)


def test_two_piles_of_two_lots_pushed_together(studio: Studio) -> None:
    (p1,) = piles_of(studio, 3)
    (p2,) = piles_of(studio, 2)
    both = studio.mix(p1, p2)
    assert [(k.thing, k.least, k.most, k.of) for k in studio.origins(both, "lot")] == [
        (1, 3, 3, 5), (2, 2, 2, 5)]
    with pytest.raises(Refused, match="2 lots lie in one pile; nothing was printed"):
        studio.print(both, 1)
    agree(studio)


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
    agree(studio)
    nested = studio.mix(four, studio.wind(studio.cone(), 4))
    part, other = studio.split(nested, 6, 2)
    assert law(studio, part, ca) == (0, 4, Fraction(18, 11))
    assert law(studio, other, ca) == (0, 2, Fraction(6, 11))
    agree(studio)


def test_a_buyer_with_four_of_the_twelve(studio: Studio) -> None:
    ca, cb = studio.cones(2)
    pool = studio.mix(studio.wind(ca, 7), studio.wind(cb, 5))
    lot = studio.dye(pool)
    tagged = studio.tag(studio.finish(pool, red=12)[0], 12)
    studio.do(sell, tagged[:4])
    bought = law_of_all(studio, tagged[:4], cb)
    assert bought == (0, 4, Fraction(5, 3))
    assert bought[2] == expected(12, 5, 4)
    assert round(float(bought[2]), 2) == 1.67
    assert round(float(at_least_one(12, 5, 4)) * 100, 1) == 92.9
    assert states(studio, "cone", cb) == {"sent, buyer not known": 4, "table": 8}
    assert left(studio, lot) == 0  # nothing of it is on a shelf
    assert stops(studio, studio.code(lot)) == [
        ("delivery", "2 cones"), ("cones", "7 + 5"), ("dye lot", "12 skeins"),
        ("pile", "none missing"), ("tags", "tied on"), ("now", "4 elsewhere")]
    agree(studio)
