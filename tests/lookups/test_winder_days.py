"""A winder's day: all that one person wound on one day, and nothing of anybody else."""

from datetime import UTC, timedelta

from app.lookups.thread import thread
from app.lookups.winder_days import WINDER_DAY, WinderDays
from app.store.book import By
from app.work.people import enrol
from app.work.winding import Drawn, Wound, wind
from tests.makers import LONG_MM, Studio


def test_a_day_holds_what_its_winder_wound_then(studio: Studio) -> None:
    studio.do(enrol, "WN", "Wenna Nance")
    cone = studio.cone()

    def wound(who: str, count: int) -> int:
        one = Wound((Drawn(cone, count * LONG_MM),), count, "skein", "red")
        row: int = studio.do(wind, [one], by=By(who, "reel"))[0]
        return row
    mine, again, other = wound("WN", 1), wound("WN", 2), wound("OW", 1)
    studio.clock.now += timedelta(days=1)
    later = wound("WN", 1)
    days = WinderDays(UTC)
    own = studio.book.ask(lambda c: days.added(c, thread(c, [mine, later]))).own
    (first,) = (thing for thing in own[mine] if thing[0] == WINDER_DAY)
    (second,) = (thing for thing in own[later] if thing[0] == WINDER_DAY)
    assert first != second
    assert studio.book.ask(days.below, first[1]) == {mine, again}
    assert studio.book.ask(days.below, second[1]) == {later}
    assert other not in studio.book.ask(days.below, first[1])
    assert sorted(days.words.values()) == ["WN, 6 Apr 2026", "WN, 7 Apr 2026"]
