"""A hold has exactly one source."""

from app.records import Hold
from app.records.holds import SOURCES
from tests.makers import Studio
from tests.records.forbidden import forbids


def test_a_hold_is_on_one_thing_and_not_on_two_or_none(studio: Studio) -> None:
    yarn = studio.wind(studio.cone(), 2)
    forbids(studio, "one_source", Hold(why="oil"))
    forbids(studio, "one_source", Hold(why="oil", cone=1, yarn=yarn))
    studio.do(lambda deed: deed.add(Hold(why="oil", cone=1)))


def test_all_that_can_spoil_a_skein_can_be_held() -> None:
    assert SOURCES == ("cone", "yarn", "lot", "load", "bath", "fill", "supplier_lot")
    assert all(source in Hold.__table__.c for source in SOURCES)
