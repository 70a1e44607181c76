"""A clock that is behind the last entry, and lots that wait for their code."""

from datetime import UTC, datetime, timedelta

from app.lookups.clock import clock_seen
from app.work.dyeing import BathIn, into_bath, name_lot
from tests.makers import Studio


def test_a_clock_that_goes_on_is_not_behind(studio: Studio) -> None:
    seen = studio.book.ask(clock_seen)
    assert seen.lots == ()
    assert seen.written == studio.clock.now
    assert not seen.behind(studio.clock.now)
    assert seen.behind(studio.clock.now - timedelta(seconds=1))


def test_a_lot_waits_from_its_bath_to_its_code(studio: Studio) -> None:
    group, sure = studio.wind(studio.cone(), 4), studio.clock.now
    studio.clock.now = datetime(2000, 1, 1, tzinfo=UTC)
    bath = BathIn((group,), studio.recipe)
    lot = studio.do(into_bath, bath, studio.random)["lots"][0]
    (waits,) = studio.book.ask(clock_seen).lots
    assert (waits.lot, waits.colourway, waits.base, waits.count, waits.happened) == (
        lot, "Sluice Keeper's Glove", "Tarnfield 4-ply", 4, sure)
    studio.clock.now = sure + timedelta(days=1)
    studio.do(name_lot, lot, studio.random, happened=waits.happened)
    assert studio.book.ask(clock_seen).lots == ()
