"""Warnings of a day, by person."""

from datetime import timedelta

from app.lookups.warned import warned
from app.store.deed import By
from app.work.receiving import ConeIn, DeliveryIn, receive


def today(studio, **since):
    now = studio.clock.now
    return studio.book.ask(warned, now - timedelta(**since), now + timedelta(minutes=1))


def test_each_person_has_the_day_s_warnings_and_the_most_frequent_one(studio):
    studio.clock.now += timedelta(days=1)
    cone, other = studio.cones(2)
    studio.wind(cone, 20), studio.wind(other, 20, "yellow")
    came = DeliveryIn("Aske Mill", "7", "Tarnfield 4-ply", studio.clock.now,
                      (ConeIn(1_520_000, 64_000, "B"),))
    studio.done(receive, came, by=By("AD", "door"))
    owner, door = today(studio, hours=1)
    assert (owner.person, owner.deeds, owner.warnings) == ("OW", 3, 2)
    assert owner.often.startswith("gave g, and held g at standard moisture")
    assert (door.person, door.deeds, door.warnings, door.often) == ("AD", 1, 0, "")


def test_what_was_written_before_or_after_the_day_does_not_count(studio):
    studio.wind(studio.cone(), 20)
    studio.clock.now += timedelta(days=2)
    assert today(studio, hours=1) == ()
    (owner,) = today(studio, days=3)
    assert owner.warnings == 1
    now = studio.clock.now
    assert studio.book.ask(warned, now - timedelta(days=9), now - timedelta(days=8)) == ()


def test_a_day_longer_than_one_look_at_the_journal_is_whole(studio):
    studio.clock.now += timedelta(days=1)
    cones = studio.cones(70)
    for cone in cones:
        for _ in range(3):
            studio.wind(cone, 1)
    (owner,) = today(studio, hours=9)
    assert (owner.person, owner.deeds) == ("OW", 211)
