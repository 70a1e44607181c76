"""The makers' batches of a cone and of what is in a jar."""

from app.lookups.batches import Batch, batches_of
from app.lookups.now import NOW
from app.lookups.things import Found
from app.work.jars import Refill, refill
from tests.dyehouse import Dyehouse
from tests.makers import Studio


def of(studio: Studio, kind: str, thing: int) -> tuple[Batch, ...]:
    return studio.book.ask(batches_of, Found(kind, thing, "", ""), NOW)


def test_a_batch_counts_all_its_cones(studio: Studio) -> None:
    one, *_ = studio.cones(3, batch="7731")
    (found,) = of(studio, "cone", one)
    assert (found.words, found.cones, found.fills) == ("batch 7731 of Aske Mill", 3, 0)


def test_a_batch_that_was_not_stated_is_none(studio: Studio) -> None:
    (cone,) = studio.cones(1, batch=None)
    assert of(studio, "cone", cone) == ()


def test_a_jar_names_every_batch_in_it_the_most_of_it_first(studio: Studio) -> None:
    house = Dyehouse(studio)
    jar = house.jar(1).jar
    (found,) = of(studio, "jar", jar)
    assert (found.said, found.cones, found.fills) == ("p", 0, 4)  # four jars were opened with it
    studio.do(refill, 1, Refill("q", 1_500_000))
    assert [(one.said, one.fills) for one in of(studio, "jar", jar)] == [("q", 1), ("p", 5)]


def test_nothing_else_has_a_batch_of_its_own(studio: Studio) -> None:
    assert of(studio, "pot", studio.pot) == ()
