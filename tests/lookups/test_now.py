"""Now is later than every entry."""

from app.lookups.bundles import bundles_now
from app.lookups.now import NOW


def test_a_cord_is_seen_though_the_computers_clock_lags(studio):
    studio.wind(studio.cone(), 4, "red", studio.discs[0])
    assert studio.book.ask(bundles_now, studio.clock.now.replace(year=2000)) == ()
    assert [cord.number for cord in studio.book.ask(bundles_now, NOW)] == ["031"]
