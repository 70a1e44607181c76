"""When a rail should be dry, by the room as it was read that day."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.lookups.now import NOW
from app.lookups.rails import dry_at, room_at, wash_now
from app.work.bundling import make_plates
from app.work.finishing import finish
from app.work.loading import into_load
from app.work.readings import room


@pytest.fixture
def hung(studio):
    """Two skeins, spun and hung on rail 1 in a room of 18 °C and 60 %: (row, load, rail)."""
    (rail,) = studio.do(make_plates, Kind.RAIL, [1])
    row = studio.wind(studio.cone(), 2, "red", studio.discs[0])
    studio.dye(row)
    studio.do(into_load, "spin", yarn=[row])
    load = studio.do(into_load, "rail", yarn=[row], plate=rail)
    return row, load, rail


def since_hung(studio, row, when):
    hung = next(one for one in studio.book.ask(wash_now, NOW, studio.clock.now).work.places
                if row in one.cords[0].cord.rows).since
    return (when - hung).total_seconds() / 3600


def test_without_a_reading_of_the_room_nothing_is_claimed(studio, hung):
    row, load, _ = hung
    assert studio.book.ask(dry_at, [row], NOW) == {}
    assert studio.book.ask(room_at, studio.clock.now) is None
    assert studio.done(finish, [row], {"red": 2}).findings == ()


def test_a_spun_skein_at_18_degrees_and_60_per_cent_takes_eleven_hours(studio, hung):
    row, load, rail = hung
    studio.do(room, load, 180, 600)
    now = studio.book.ask(wash_now, NOW, studio.clock.now)
    assert now.room.words == "18 °C, 60 %"
    assert (now.rail_load, list(now.dry)) == (load, [rail])
    assert since_hung(studio, row, now.dry[rail]) == pytest.approx(11.0, abs=0.05)


def test_squeezed_by_hand_it_holds_more_and_a_reading_is_of_its_day(studio):
    (rail,) = studio.do(make_plates, Kind.RAIL, [1])
    row = studio.wind(studio.cone(), 2, "red", studio.discs[0])
    load = studio.do(into_load, "rail", yarn=[row], plate=rail)
    studio.do(room, load, 200, 500)
    (dry,) = studio.book.ask(dry_at, [row], NOW).values()
    assert since_hung(studio, row, dry) == pytest.approx(24.9, abs=0.05)
    assert studio.book.ask(room_at, studio.clock.now + timedelta(hours=17)) is not None
    assert studio.book.ask(room_at, studio.clock.now + timedelta(hours=19)) is None
    studio.clock.now += timedelta(days=3)
    late = studio.wind(studio.cone(), 2, "red", studio.discs[1])
    studio.do(into_load, "rail", yarn=[late], plate=rail)
    assert list(studio.book.ask(dry_at, [row, late], NOW)) == [row]


def test_taken_down_before_its_hour_is_said_and_kept_and_after_it_is_not(studio, hung):
    row, load, _ = hung
    studio.do(room, load, 180, 600)
    (said,) = studio.done(finish, [row], {"red": 2}).findings
    assert said.startswith("Disc 031 is reckoned to be dry ")
    studio.undo()
    studio.clock.now += timedelta(hours=11)
    assert studio.done(finish, [row], {"red": 2}).findings == ()


def test_in_a_room_that_takes_no_water_no_hour_is_told(studio, hung):
    row, load, _ = hung
    studio.do(room, load, 180, 1000)
    assert studio.book.ask(dry_at, [row], NOW) == {}


def test_a_room_that_was_read_before_the_hanging_up_gives_its_hour_too(studio, hung):
    row, load, rail = hung
    studio.do(room, load, 200, 500)
    studio.clock.now += timedelta(hours=3)
    late = studio.wind(studio.cone(), 2, "red", studio.discs[1])
    studio.do(into_load, "spin", yarn=[late])
    studio.do(into_load, "rail", yarn=[late], plate=rail)
    dry = studio.book.ask(dry_at, [late], NOW)[late]
    assert (dry - studio.clock.now).total_seconds() / 3600 == pytest.approx(7.8, abs=0.05)
