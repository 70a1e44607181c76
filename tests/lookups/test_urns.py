"""A pool nobody can tell apart keeps exact counts, less those that were told."""

from app.lookups.thread import thread
from app.lookups.urns import Urn, urn
from app.work.mixing import recognise
from tests.makers import Studio


def read(studio: Studio, pool: int, *rows: int) -> Urn:
    things = [("cone", 1), ("cone", 2), ("cone", 3)]
    return studio.book.ask(lambda c: urn(thread(c, [pool, *rows]), pool, things))


def test_seven_and_five_are_seven_and_five(studio: Studio) -> None:
    a, b = studio.cones(2)
    pool = studio.mix(studio.wind(a, 7), studio.wind(b, 5))
    assert read(studio, pool) == Urn(pool, 12, {("cone", a): 7, ("cone", b): 5})


def test_who_was_told_has_left_the_urn(studio: Studio) -> None:
    a, b = studio.cones(2)
    of_a = studio.wind(a, 7)
    pool = studio.mix(of_a, studio.wind(b, 5))
    seen, rest = studio.split(pool, 1, 11)
    studio.do(recognise, seen, pool, of_a)
    assert read(studio, pool, seen, rest) == Urn(pool, 11, {("cone", a): 6, ("cone", b): 5})


def test_a_thing_that_all_of_them_carry_is_no_count(studio: Studio) -> None:
    a, b = studio.cones(2)
    first, second = studio.wind(a, 3), studio.wind(a, 2)
    pool = studio.mix(studio.mix(first, second), studio.wind(b, 4))
    assert read(studio, pool).given == {("cone", a): 5, ("cone", b): 4}


def test_a_join_in_a_pool_has_no_exact_count(studio: Studio) -> None:
    a, b = studio.cones(2)
    pool = studio.mix(studio.wind(a, 3), studio.join([(a, 255_200), (b, 157_300)]))
    assert read(studio, pool).given == {}
