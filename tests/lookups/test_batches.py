"""A cone's batch as its maker named it."""

from app.lookups.batches import batch_of
from tests.makers import Studio


def test_a_batch_counts_all_its_cones(studio: Studio) -> None:
    one, *_ = studio.cones(3, batch="7731")
    found = studio.book.ask(batch_of, one)
    assert found is not None
    assert (found.words, found.cones) == ("batch 7731 of Aske Mill", 3)


def test_a_batch_that_was_not_stated_is_none(studio: Studio) -> None:
    (cone,) = studio.cones(1, batch=None)
    assert studio.book.ask(batch_of, cone) is None
