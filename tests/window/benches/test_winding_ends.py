"""Winding: where a cone ends inside a skein, a disc is not free, or a cone is done with."""

import pytest

from app.calculations.codes import shown
from app.lookups.bundles import bundle_facts
from app.lookups.cones import cone_facts
from app.lookups.now import NOW
from app.lookups.recent import entries
from app.work.bases import describe_base
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.makers import tarnfield
from tests.window.benches.at_work import DONE, HOLD, MIXED, disc, plate
from tests.window.benches.winding_hands import (
    begin_winding,
    big,
    cards,
    cone,
    groups,
    on_disc,
)


@pytest.fixture
def reel(qtbot, settings, studio):
    yield from begin_winding(qtbot, settings, studio)


@pytest.fixture
def worked_cone(studio):
    """1,462 g with a centre of 64 g, moisture 13 %: the cone whose yield is worked out by hand."""
    return studio.do(receive, DeliveryIn(
        "Aske Mill", "2241", "Tarnfield 4-ply", studio.clock.now,
        (ConeIn(1_462_000, 64_000, "A-203", moisture_permille=130),)))[0]


# the cone ran out inside a skein


@pytest.fixture
def at_its_end(reel, studio, worked_cone):
    """The worked cone after 13 skeins, in hand with 255.2 m on it; a second cone is on hand."""
    studio.wind(worked_cone, 13, "red")
    studio.cone()
    reel.scan(cone(1))
    return reel


def test_a_cone_that_ends_inside_a_skein_makes_one_of_62_and_38_percent(at_its_end, studio):
    reel = at_its_end
    reel.press("j")
    assert cards(reel).join.length.line.text() == "255.2"
    reel.scan(cone(2))
    assert cards(reel).cone.turns.accessibleName() == "62 % / 38 %"
    assert cards(reel).cone.gives.text() == (
        f"255.2 m of {shown(cone(1))} and 157.3 m of {shown(cone(2))}")
    assert "second thread, beside red" in cards(reel).threads.title.text()
    assert big(reel)[0] == "red and yellow"
    reel.scan(disc(31))
    ties, cones = on_disc(studio, 31)
    assert (ties, cones) == ({"red and yellow": 1}, (shown(cone(1)), shown(cone(2))))
    row = studio.book.ask(bundle_facts, studio.discs[0], NOW).rows[0]
    assert [(link.thing, float(round(link.share, 2))) for link in studio.origins(row)] == [
        (1, 0.62), (2, 0.38)]


def test_the_second_thread_of_a_join_can_be_another_one(at_its_end, studio):
    reel = at_its_end
    reel.scan(MIXED, cone(2))
    keys = {key.word: key for key in cards(reel).threads.keys.keys}
    assert ("red" in keys, keys["yellow"].isChecked()) == (False, True)
    reel.click(keys["white"])
    reel.scan(plate(4), disc(31))
    assert on_disc(studio, 31)[0] == {"red and white": 1, "yellow": 4}


def test_turns_off_the_counter_tell_as_much_as_metres(at_its_end):
    reel = at_its_end
    reel.press("j")
    cards(reel).join.length.line.selectAll()
    reel.type("170 turns")
    reel.scan(cone(2))
    assert cards(reel).cone.gives.text().startswith("255.0 m of")


def test_a_length_that_cannot_be_is_told_and_stays_as_it_was_typed(at_its_end):
    reel = at_its_end
    reel.press("j")
    cards(reel).join.length.line.selectAll()
    reel.type("500")
    reel.scan(cone(2))
    join = cards(reel).join
    assert "A skein is 412.5 m long" in join.length.wrong.text()
    assert (join.length.line.text(), join.isVisible()) == ("500", True)


def test_neither_the_same_cone_nor_another_base_can_go_on(at_its_end, studio):
    reel = at_its_end
    studio.do(describe_base, tarnfield(name="Downholm Sock"))
    studio.cones(1, "Downholm Sock")
    reel.scan(MIXED, cone(1))
    assert "is the cone that ran out" in reel.trouble
    reel.scan(cone(3))
    assert "is Downholm Sock, and this skein is Tarnfield 4-ply" in reel.trouble
    reel.scan(cone(2))
    assert big(reel)[1] == "62 % / 38 %"


def test_a_deed_taken_back_while_a_join_is_asked_for_does_not_lose_it(at_its_end, studio):
    reel = at_its_end
    reel.scan(MIXED)
    cards(reel).join.length.line.setText("100")
    studio.undo(studio.last() - 1)
    reel.quiet()
    reel.scan(cone(2))
    assert cards(reel).cone.gives.text().startswith("100.0 m of")


def test_after_a_join_the_end_of_the_cone_that_ran_out_is_asked_for(at_its_end, studio):
    reel = at_its_end
    reel.scan(MIXED, cone(2), disc(31))
    assert reel.found == [f"{shown(cone(1))} ran out in this bundle."]
    answers = reel.window.floor.findings.findChildren(type(cards(reel).count.tie_on))
    reel.click(next(key for key in answers if key.accessibleName() == "Weigh its end"))
    assert shown(cone(1)) in cards(reel).end.title.text()
    reel.type("2")
    reel.press("Enter")
    assert reel.said == f"ended {shown(cone(1))}, 2 g waste"


def test_it_did_not_run_out_after_all(at_its_end):
    reel = at_its_end
    reel.press("j")
    reel.press("Escape", "j", "Enter")
    assert cards(reel).asks is cards(reel).count
    assert groups(reel) == ["0 red"]


# a disc on a live bundle


@pytest.fixture
def refused(reel, studio):
    """Four skeins counted, and the disc that was scanned hangs on another cord."""
    first, _ = studio.cones(2)
    studio.wind(first, 6, "red", studio.discs[0])
    reel.scan(cone(2), plate(4), disc(31))
    return reel


def test_a_disc_on_a_live_bundle_is_refused_with_what_it_hangs_on(refused, studio):
    card = cards(refused).live_disc
    assert card.isVisible()
    assert card.what.text().startswith(
        f"Disc 031 hangs on 6 skeins of Tarnfield 4-ply: 6 red ties, {shown(cone(1))}, tied on at ")
    assert "your 4 skeins stay counted" in card.kept.text()
    assert on_disc(studio, 31)[0] == {"red": 6}


def test_another_disc_is_the_first_way_out(refused, studio):
    refused.scan(disc(32))
    assert on_disc(studio, 32) == ({"yellow": 4}, (shown(cone(2)),))
    assert not cards(refused).live_disc.isVisible()


def test_the_same_disc_once_more_is_taken_off_there_first(refused, studio):
    refused.scan(disc(31))
    assert on_disc(studio, 31) == ({"yellow": 4}, (shown(cone(2)),))
    assert [entry.said for entry in studio.book.ask(entries, 2)][1] == "took disc 031 off"


def test_the_key_takes_it_off_there_too_and_enter_leaves_it(refused, studio):
    refused.press("Enter")
    assert (cards(refused).asks is cards(refused).count, groups(refused)) == (True, ["4 yellow"])
    refused.scan(disc(31))
    refused.press("o")
    assert on_disc(studio, 31)[0] == {"yellow": 4}


def test_a_bounce_of_a_refused_disc_does_not_take_it_off(reel, studio):
    first, _ = studio.cones(2)
    studio.wind(first, 6, "red", studio.discs[0])
    reel.scan(cone(2), plate(4))
    reel.bounce(disc(31))
    assert on_disc(studio, 31)[0] == {"red": 6}
    assert cards(reel).live_disc.isVisible()


# the end of a cone, and a fault on it


def test_the_end_of_a_cone_is_weighed_and_the_cone_leaves_the_reel(reel, studio, worked_cone):
    studio.wind(worked_cone, 13, "red")
    reel.scan(cone(1))
    reel.press("e")
    assert "1,406.4 g of yarn came on it and 1,340.6 g were wound, so 65.8 g should be left" in (
        cards(reel).end.told.text())
    reel.type("65.8")
    reel.press("Enter")
    assert reel.said == f"ended {shown(cone(1))}, 65.8 g waste"
    assert studio.book.ask(cone_facts, worked_cone).ended
    assert cards(reel).start.isVisible()


def test_a_weight_that_cannot_be_read_is_told_and_kept(reel, studio):
    studio.cone()
    reel.scan(cone(1))
    reel.press("e")
    reel.type("1,462")
    reel.press("Enter")
    end = cards(reel).end
    assert "can be read as 1462 or as 1.462" in end.grams.wrong.text()
    assert end.grams.line.text() == "1,462"
    assert not studio.book.ask(cone_facts, 1).ended


def test_plates_alone_finish_a_cone(reel, studio):
    studio.cone()
    reel.scan(cone(1), DONE)
    assert "is finished, scan it once more" in reel.note
    reel.scan(cone(1), plate(4), DONE)
    assert reel.said == f"ended {shown(cone(1))}, 4 g waste"
    assert any("missing in its balance" in sentence for sentence in reel.found)


def test_a_cone_is_not_finished_while_its_skeins_hang_on_no_disc(reel, studio):
    studio.cone()
    reel.scan(cone(1), plate(6))
    key = cards(reel).count.end
    assert not key.isEnabled()
    assert "First tie 6 skeins on a disc." in key.accessibleDescription()


def test_a_finished_cone_that_is_wound_again_says_so(reel, studio):
    studio.cone()
    reel.scan(cone(1), DONE, cone(1), plate(4), DONE, cone(1))
    assert reel.found == [
        f"{shown(cone(1))} was ended before. If it is wound all the same, the book keeps that."]


def test_a_fault_puts_the_cone_on_hold_with_one_plate_and_its_number(reel, studio):
    studio.cone()
    reel.scan(cone(1), HOLD, plate(3))
    assert reel.said == f"put a hold on cone {shown(cone(1))}: too many knots"
    assert ("cone", shown(cone(1))) in reel.trail


def test_a_fault_in_other_words_is_typed(reel, studio):
    studio.cone()
    reel.scan(cone(1))
    reel.press("h")
    cards(reel).fault.words.line.setFocus()
    reel.type("smells")
    reel.press("Enter")
    assert reel.said == f"put a hold on cone {shown(cone(1))}: smells"
