"""The story of a thing, entry by entry."""

from app.lookups.now import NOW
from app.lookups.story import story
from app.lookups.things import by_code, of_lot
from app.work.holding import clear, hold, lift_hold
from app.work.people import enrol


def told(studio, found):
    return [entry.said for entry in studio.book.ask(story, found, NOW)]


def test_a_skein_tells_from_the_reel_to_its_tag_and_nothing_of_others(studio):
    one, other = studio.cones(2)
    lot, _ = studio.tagged(one, 2)
    studio.tagged(other, 5)
    studio.do(enrol, "DA")
    (first, _) = studio.book.ask(of_lot, lot)
    said = told(studio, first)
    assert "wound" in said[0]
    assert f"tied {first.shown} on" in said
    assert not any("5 skeins" in sentence or "DA" in sentence for sentence in said)


def test_a_cone_tells_what_became_of_it_and_every_hold_on_it(studio):
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 2)
    first = studio.do(hold, "cone", cone, "oil stain")
    studio.do(clear, first, skeins[0], "no stain")
    studio.do(lift_hold, first, "it was the lamp")
    said = told(studio, studio.book.ask(by_code, "C00017"))
    assert "1 cone" in said[0]
    assert [sentence.partition(":")[0] for sentence in said[-3:]] == [
        "put a hold on a cone", "cleared of hold 1", "lifted hold 1"]


def test_a_plate_tells_when_it_was_made(studio):
    assert told(studio, studio.book.ask(by_code, "D031W")) == ["made 20 disc plates"]
