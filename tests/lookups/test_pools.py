"""The pool that one skein came out of."""

import pytest

from app.lookups.now import NOW
from app.lookups.pools import Apart, pool_above, told_singly
from app.lookups.things import lot_found


@pytest.fixture
def two(studio):
    return studio.cones(2)


def test_a_skein_of_a_mixed_pot_has_seven_of_one_cone_and_five_of_the_other_above_it(studio, two):
    pool = studio.mix(studio.wind(two[0], 7), studio.wind(two[1], 5))
    studio.dye(pool)
    (pile,) = studio.finish(pool, red=12)
    (skein, *_) = studio.tag(pile, 2)
    above = studio.book.ask(pool_above, skein)
    assert above.count == 12
    assert [above.counted("cone", cone) for cone in two] == ["7 of 12", "5 of 12"]


def test_a_part_of_a_split_pool_is_told_by_the_whole_pool(studio, two):
    pool = studio.mix(studio.wind(two[0], 7), studio.wind(two[1], 5))
    part, _ = studio.split(pool, 4, 8)
    assert studio.book.ask(pool_above, part).counted("cone", two[1]) == "5 of 12"


def test_where_nothing_was_mixed_all_of_it_is_of_the_cone(studio, two):
    _, (skein, *_) = studio.tagged(two[0], 3)
    above = studio.book.ask(pool_above, skein)
    assert above.counted("cone", two[0]) == f"{above.count} of {above.count}"


def test_the_skeins_of_a_lot_are_told_singly_where_their_ties_differ(studio, two):
    wound = [studio.wind(two[0], 7, "blue"), studio.wind(two[1], 4, "green"),
             studio.join([(two[0], 255_750), (two[1], 156_750)], "blue and green")]
    lot = studio.dye(*wound)
    found = studio.book.ask(lot_found, lot)
    singly = studio.book.ask(told_singly, found, NOW)
    assert singly["cone", two[0]] == Apart(count=8, partly=1)
    assert singly["cone", two[1]] == Apart(count=5, partly=1)


def test_the_skeins_of_a_mixed_lot_are_not_told_singly(studio, two):
    pool = studio.mix(studio.wind(two[0], 7), studio.wind(two[1], 5))
    found = studio.book.ask(lot_found, studio.dye(pool))
    singly = studio.book.ask(told_singly, found, NOW)
    assert {kind for kind, _ in singly} == {"lot", "version"}
