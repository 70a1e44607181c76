"""The story of a thing, entry by entry."""

from app.calculations.codes import shown
from app.lookups.now import NOW
from app.lookups.skeins import last_marks
from app.lookups.story import story
from app.lookups.things import by_code, of_lot
from app.work.holding import clear, hold, lift_hold
from app.work.people import enrol
from app.work.reporting import FaultIn, report_fault, seen_good
from tests.deeds import send


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


def test_a_skein_tells_what_was_seen_on_it_where_it_went_and_what_it_was_cleared_of(studio):
    lot, skeins = studio.tagged(studio.cone(), 2)
    held = studio.do(hold, "lot", lot, "oil")
    studio.do(clear, held, skeins[0], "clean under the lamp")
    studio.do(report_fault, FaultIn("stain", "inspection"), skeins[:1])
    studio.do(seen_good, skeins[1:], "inspection")
    studio.do(lift_hold, held, "it was the lamp")
    studio.do(send, skeins[1:])
    one, other = (found for found in studio.book.ask(of_lot, lot) if found.kind == "skein")
    first, second = told(studio, one), told(studio, other)
    assert [words.partition(":")[0] for words in first[-2:]] == [
        f"cleared skein {one.shown} of the hold on lot {shown(studio.code(lot) or '')}",
        "stain on 1 skein"]
    assert second[-2] == "seen good: 1 skein"
    assert "sold" in second[-1] or "sent" in second[-1]


def test_a_cone_tells_what_became_of_it_and_every_hold_on_it(studio):
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 2)
    first = studio.do(hold, "cone", cone, "oil stain")
    studio.do(clear, first, skeins[0], "no stain")
    studio.do(lift_hold, first, "it was the lamp")
    said = told(studio, studio.book.ask(by_code, "C00017"))
    mark = studio.book.ask(last_marks, skeins[:1])[skeins[0]]
    assert "1 cone" in said[0]
    assert [sentence.partition(":")[0] for sentence in said[-3:]] == [
        "put a hold on cone C·0001·7", f"cleared skein {mark} of the hold on cone C·0001·7",
        "lifted the hold on cone C·0001·7"]


def test_a_plate_tells_when_it_was_made(studio):
    assert told(studio, studio.book.ask(by_code, "D031W")) == ["made 20 disc plates"]
