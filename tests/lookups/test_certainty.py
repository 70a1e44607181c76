"""How sure is it? Exact counts through pools, against all ways of laying the skeins out by hand."""

from collections.abc import Iterable
from fractions import Fraction
from itertools import combinations

import pytest

from app.calculations.chances import expected, least_and_most
from app.lookups.certainty import (
    Link,
    Tally,
    counts_fit,
    held_by,
    links,
    links_of,
    nearest,
    parting,
    tally,
    told_apart,
)
from app.lookups.thread import Thread, thread
from app.work.holding import clear, hold
from app.work.mixing import recognise
from app.work.opening_stock import OldLot, open_lot
from app.work.remaking import cut
from tests.makers import Studio


def read(studio: Studio, *yarn: int) -> Thread:
    return studio.book.ask(thread, yarn)


def seven_and_five(studio: Studio) -> tuple[int, int, int]:
    """A pool of 7 skeins of cone 1 (its group is row 1) and 5 of cone 2."""
    one, two = studio.cones(2)
    return one, two, studio.mix(studio.wind(one, 7), studio.wind(two, 5))


def of(found: Iterable[Link], thing: int | None) -> Link:
    return next(link for link in found if link.thing == thing)


def test_what_is_of_one_cone_is_known(studio: Studio) -> None:
    cone = studio.cone()
    (link,) = studio.origins(studio.wind(cone, 6))
    assert link == Link(cone, "known", 6, 6, Fraction(6), 6, Fraction(1), "scanned")


def test_a_join_is_partly_of_each_cone_by_its_metres(studio: Studio) -> None:
    one, two = studio.cones(2)
    join = studio.join([(one, 255_200), (two, 157_300)])
    first, second = studio.origins(join)
    assert (first.word, second.word) == ("partly", "partly")
    assert (first.share, second.share) == (Fraction(2552, 4125), Fraction(1573, 4125))
    assert (first.least, first.most) == (1, 1)


def test_a_pool_as_a_whole_holds_exactly_what_went_into_it(studio: Studio) -> None:
    one, two, pool = seven_and_five(studio)
    found = studio.origins(pool)
    assert [(k.thing, k.word, k.least, k.most) for k in found] == [
        (one, "one of a pool", 7, 7),
        (two, "one of a pool", 5, 5),
    ]


@pytest.mark.parametrize("members", range(1, 13))
def test_any_members_of_a_pool_follow_the_hypergeometric_law(studio: Studio, members: int) -> None:
    one, _, pool = seven_and_five(studio)
    got = tally(read(studio, pool), {pool: members}, ("cone", one))
    assert (got.least, got.most) == least_and_most(12, 7, members)
    assert got.expected == expected(12, 7, members)


def test_a_recognised_skein_moves_the_others_as_all_462_ways_of_laying_them_out(
    studio: Studio,
) -> None:
    one, _, pool = seven_and_five(studio)
    six, seen, lost, four = studio.split(pool, 6, 1, 1, 4)
    studio.do(recognise, seen, pool, 1)
    ways = [way for way in combinations(range(12), 7) if 6 in way]  # place 6 was seen
    assert len(ways) == 462
    for row, places in ((six, range(6)), (lost, range(7, 8)), (four, range(8, 12))):
        counts = [len(set(places) & set(way)) for way in ways]
        link = of(studio.origins(row), one)
        assert (link.least, link.most) == (min(counts), max(counts))
        assert link.expected == Fraction(sum(counts), len(ways))


def test_the_whole_row_still_holds_what_was_told_apart_of_it(studio: Studio) -> None:
    one, two, pool = seven_and_five(studio)
    eight, _ = studio.split(pool, 8, 4)
    seen, _ = studio.split(eight, 2, 6)
    studio.do(recognise, seen, pool, 1)
    assert [(k.least, k.most) for k in studio.origins(pool)] == [(7, 7), (5, 5)]
    assert of(studio.origins(eight), one).least == 3
    assert of(studio.origins(eight), one).expected == 2 + Fraction(6 * 5, 10)
    assert told_apart(read(studio, eight), {eight: 8}) == {seen: 2, eight: 6}
    assert told_apart(read(studio, eight), {eight: 3}) == {eight: 3}
    few = tally(read(studio, eight), {eight: 3}, ("cone", one))
    assert (few.least, few.most, few.expected) == (0, 3, Fraction(3 * 5, 10))
    assert of(studio.origins(pool), two).basis == "counted"
    assert of(studio.origins(pool), one).basis == "recognised"


def test_what_was_done_with_those_told_apart_is_not_where_the_row_comes_from(
    studio: Studio,
) -> None:
    _, _, pool = seven_and_five(studio)
    seen, _ = studio.split(pool, 1, 11)
    studio.do(recognise, seen, pool, 1)
    lot = studio.dye(seen)
    assert [k.thing for k in studio.origins(seen, "lot")] == [lot]
    assert studio.origins(pool, "lot") == ()


def test_parts_of_one_pool_that_are_asked_together_make_the_whole(studio: Studio) -> None:
    one, _, pool = seven_and_five(studio)
    eight, four = studio.split(pool, 8, 4)
    together = of(links_of(read(studio, eight, four), {eight: 8, four: 4}, "cone"), one)
    assert (together.least, together.most, together.expected) == (7, 7, 7)
    apart = [of(studio.origins(row), one) for row in (eight, four)]
    assert (sum(k.least for k in apart), sum(k.most for k in apart)) == (3, 11)


def test_when_all_of_one_kind_were_recognised_the_rest_is_known_by_count(studio: Studio) -> None:
    _, two, pool = seven_and_five(studio)
    seven, five = studio.split(pool, 7, 5)
    studio.do(recognise, seven, pool, 1)
    assert [(k.thing, k.word) for k in studio.origins(five)] == [(two, "known")]
    assert all(k.fits for k in studio.origins(five))
    studio.do(hold, "cone", 1, "oil")
    assert held_by(read(studio, five), five) == ()
    assert held_by(read(studio, seven), seven) == (1,)


def test_minis_of_a_skein_of_a_pool_are_all_of_one_cone_and_nobody_knows_which(
    studio: Studio,
) -> None:
    one, _, pool = seven_and_five(studio)
    studio.dye(pool)
    (pile,) = studio.finish(pool, red=12)
    minis = studio.do(cut, studio.tag(pile, 1)[0], 5, "mini", 625)
    first = of(studio.origins(minis), one)
    assert (first.word, first.least, first.most, first.of) == ("one of a pool", 0, 5, 5)
    assert first.expected == 5 * Fraction(7, 12)
    studio.check()


def test_counts_that_do_not_fit_are_said_and_nobody_is_left_without_an_origin(
    studio: Studio,
) -> None:
    one, two, pool = seven_and_five(studio)
    eight, four = studio.split(pool, 8, 4)
    told = studio.done(recognise, eight, pool, 1)
    assert told.findings == ("These counts do not fit: 8 told of 7 that went in.",)
    assert not counts_fit(read(studio, four), pool)
    assert {k.thing for k in studio.origins(four)} <= {one, two}
    assert not any(k.fits for k in studio.origins(four))


def test_a_pool_of_a_pool_is_never_said_too_narrowly(studio: Studio) -> None:
    one, _, pool = seven_and_five(studio)
    _, four = studio.split(pool, 8, 4)
    nested = studio.mix(four, studio.wind(studio.cone(), 4))
    part, other = studio.split(nested, 6, 2)
    first, second = of(studio.origins(part), one), of(studio.origins(other), one)
    assert (first.least, first.most, first.expected) == (0, 4, Fraction(7, 4))
    assert (second.least, second.most, second.expected) == (0, 2, Fraction(7, 12))
    assert first.expected + second.expected == of(studio.origins(four), one).expected


def test_yarn_that_was_split_and_mixed_thirty_times_is_answered_all_the_same(
    studio: Studio,
) -> None:
    one, two, row = seven_and_five(studio)
    placed = studio.do(hold, "cone", two, "yellow ecru")
    for _ in range(30):  # a thousand million ways lead up
        row = studio.mix(*studio.split(row, 5, 7))
    found = read(studio, row)
    assert (of(links(found, row, "cone"), one).expected, held_by(found, row)) == (7, (placed,))
    assert nearest(found, row, "lot") == frozenset()


def test_a_join_inside_a_mixed_pot_keeps_its_share_of_the_metres(studio: Studio) -> None:
    one, two = studio.cones(2)
    pool = studio.mix(
        studio.wind(one, 6), studio.wind(two, 6), studio.join([(one, 255_200), (two, 157_300)])
    )
    got = of(studio.origins(pool), one)
    assert (got.word, got.least, got.most, got.of) == ("one of a pool", 7, 7, 13)
    assert got.share == (6 + Fraction(2552, 4125)) / 7


def test_what_begins_with_no_cone_is_not_known(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 4), 100_000)
    assert [(k.thing, k.word, k.basis) for k in studio.origins(pile)] == [
        (None, "not known", "stated")
    ]
    mixed = studio.mix(pile, studio.finish(studio.wind(studio.cone(), 2), red=2)[0])
    assert [(k.thing, k.word, k.most) for k in studio.origins(mixed)] == [
        (None, "one of a pool", 4),
        (1, "one of a pool", 2),
    ]


def test_a_way_is_as_strong_as_its_weakest_link(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    assert studio.origins(group)[0].basis == "scanned"
    (pile,) = studio.finish(group, red=3)
    assert studio.origins(pile)[0].basis == "counted"


def test_the_nearest_lots_are_those_of_each_way_up(studio: Studio) -> None:
    piles = []
    for count in (3, 2):
        group = studio.wind(studio.cone(), count)
        studio.dye(group)
        piles += studio.finish(group, red=count)
    both = studio.mix(*piles)
    found = read(studio, both)
    assert nearest(found, piles[0], "lot") == {1}
    assert nearest(found, both, "lot") == {1, 2}
    assert nearest(found, both, "load") == frozenset()


def test_the_ways_part_where_rows_met_or_where_the_thread_begins(studio: Studio) -> None:
    _, _, pool = seven_and_five(studio)
    eight, _ = studio.split(pool, 8, 4)
    one, _ = studio.split(eight, 1, 7)
    found = read(studio, one)
    assert parting(found, one) == parting(found, eight) == parting(found, pool) == pool
    assert parting(found, 1) == 1


def test_a_hold_reaches_what_may_come_from_its_source_and_not_what_is_known_not_to(
    studio: Studio,
) -> None:
    _, two, pool = seven_and_five(studio)
    seen, rest = studio.split(pool, 1, 11)
    placed = studio.do(hold, "cone", two, "yellow ecru")
    assert held_by(read(studio, seen), seen) == (placed,)
    studio.do(recognise, seen, pool, 1)
    assert held_by(read(studio, seen), seen) == ()
    assert held_by(read(studio, rest), rest) == (placed,)
    assert held_by(read(studio, pool), pool) == (placed,)


def test_a_clearing_covers_what_is_made_of_it_and_not_its_neighbours(studio: Studio) -> None:
    cone = studio.cone()
    left, right = studio.split(studio.wind(cone, 6), 2, 4)
    placed = studio.do(hold, "cone", cone, "oil")
    studio.do(clear, placed, left, "lamp: clean")
    one, other = studio.split(left, 1, 1)
    mixed = studio.mix(one, right)
    found = read(studio, other, mixed)
    assert held_by(found, other) == ()
    assert held_by(found, mixed) == (placed,)


def test_tallies_are_added_and_scaled() -> None:
    one = Tally(Fraction(1), Fraction(2), Fraction(3, 2), Fraction(1))
    assert one + one == one.times(Fraction(2))


def test_links_of_a_few_members_of_a_row(studio: Studio) -> None:
    one, _, pool = seven_and_five(studio)
    few = of(links(read(studio, pool), pool, "cone", members=4), one)
    assert (few.least, few.most, few.of, few.expected) == (0, 4, 4, Fraction(7, 3))
