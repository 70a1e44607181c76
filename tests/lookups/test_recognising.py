"""What may still be said of a skein out of a pool."""

from app.lookups.recognising import MayBeOf, StillToSay, still_to_say
from app.lookups.things import Found
from app.work.mixing import lose, recognise
from tests.makers import Studio


def skein(row: int) -> Found:
    return Found("skein", row, "", "")


def still(studio: Studio, found: Found) -> StillToSay | None:
    return studio.book.ask(still_to_say, found, studio.clock.now)


def test_a_pool_offers_what_went_into_it_until_it_is_told(studio: Studio) -> None:
    a, b = studio.cones(2)
    first, second = studio.wind(a, 7), studio.wind(b, 1, "blue")
    pool = studio.mix(first, second)
    one, rest = studio.split(pool, 1, 7)
    said = still(studio, skein(one))
    assert said.may_be == (MayBeOf(first, "cone C·0001·7, red ties", 7),
                           MayBeOf(second, "cone C·0002·K, blue ties", 1))
    studio.do(recognise, one, said.pool, second)
    assert still(studio, skein(one)).may_be == ()
    assert still(studio, skein(rest)).may_be == (MayBeOf(first, "cone C·0001·7, red ties", 7),)


def test_yarn_of_one_cone_has_nothing_to_be_told_and_what_is_gone_is_not_asked_of(
    studio: Studio,
) -> None:
    _, (one, other) = studio.tagged(studio.cone(), 2)
    assert still(studio, skein(one)).may_be == ()
    studio.do(lose, other, 1)
    assert still(studio, skein(other)) is None
    assert still(studio, Found("lot", 1, "", "")) is None


def test_the_one_row_on_a_disc_is_meant(studio: Studio) -> None:
    studio.wind(studio.cone(), 7, disc=studio.discs[0])
    said = still(studio, Found("disc", studio.discs[0], "", ""))
    assert (said.count, said.may_be) == (7, ())
    assert still(studio, Found("disc", studio.discs[1], "", "")) is None
