"""A skein without a tag is matched to its lot, and one with another lot's tag is put right."""

import pytest

from app.calculations.codes import shown
from app.lookups.printed import WAITING, tags_of
from app.lookups.skeins import now_of
from app.lookups.untagged import finds_waiting
from app.work.matching import find, is_one_of
from app.work.studio import choose
from tests.window.benches.at_work import DONE, plate
from tests.window.benches.desk_hands import open_desk


@pytest.fixture
def desk(qtbot, settings, studio, opened):
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    yield from open_desk(qtbot, settings, studio, other=7)


def short_lot(studio):
    """Six dyed, five counted and tagged: the lot, its pile, the skeins."""
    group = studio.wind(studio.cone(), 6)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=5)
    return lot, pile, studio.tag(pile, 5)


def lots_of(studio, skein):
    return [(link.thing, link.word, link.basis) for link in studio.origins(skein, "lot")]


def test_a_find_is_matched_to_the_count_that_missed_it_and_gets_its_tag(desk):
    studio = desk.studio
    lot, pile, _ = short_lot(studio)
    desk.scan(studio.code(lot))
    assert not desk.hand.page.tagless.isVisible()
    found = studio.do(find, 1, 97_000)
    desk.scan(studio.code(lot))
    card = desk.hand.page.tagless
    assert "1 skein of Tarnfield 4-ply without a tag, 97.0 g" in desk.words(card)
    assert [key.accessibleName() for key in card.keys] == [
        "It was missing at the count: 1 skein", "It is one of its 5 with tags"]
    desk.click(card.keys[0])
    desk.scan(plate(1))
    assert desk.said == "the find is the one that was missing"
    assert lots_of(studio, found) == [(lot, "known", "matched")]
    assert card.keys == []
    assert "wants a tag" in desk.words(card)
    _gets_a_tag(desk, pile, found)
    desk.scan(studio.code(lot))
    assert not card.isVisible()
    studio.check()


def _gets_a_tag(desk, pile, bare):
    """At the tag table, as the card says."""
    studio = desk.studio
    desk.enter(7)
    tag = studio.book.ask(tags_of, pile)[0]
    desk.scan(tag.mark)
    in_hand = desk.bench.in_hand
    desk.click(in_hand.print_card.reasons[2])
    desk.scan(DONE)
    assert desk.trouble == ""
    (new,) = [one for one in studio.book.ask(tags_of, pile) if one.state == WAITING]
    desk.scan(new.mark)
    (asked,) = desk.found
    assert "without a tag since" in asked
    assert f"does {shown(new.mark)} go on it?" in asked
    desk.scan(new.mark)
    assert studio.book.ask(now_of, bare).mark == new.mark
    assert desk.found == []
    desk.enter(0)


def test_a_find_may_be_the_one_that_was_counted_and_never_got_its_tag(desk):
    studio = desk.studio
    group = studio.wind(studio.cone(), 6)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=6)
    studio.tag(pile, 5)
    found = studio.do(find, 1, 97_000)
    desk.scan(studio.code(lot))
    (first, _) = desk.hand.page.tagless.keys
    assert first.accessibleName() == "It was counted here and never got its tag"
    desk.click(first)
    assert "the pile has one less" in desk.words(desk.hand.page.why)
    desk.scan(plate(1))
    assert desk.said == "the find is the one that was counted and never tagged"
    assert lots_of(studio, found) == [(lot, "known", "matched")]
    assert "wants a tag" in desk.words(desk.hand.page.tagless)
    studio.check()


def test_a_find_may_be_one_of_those_with_tags_and_which_stays_not_known(desk):
    studio = desk.studio
    lot, _, skeins = short_lot(studio)
    found = studio.do(find, 1, 97_000)
    desk.scan(studio.code(lot))
    desk.click(desk.hand.page.tagless.keys[1])
    desk.type("same red, beside three of it")
    desk.press("Enter")
    assert desk.said == "the find is one of 5 skeins, as matched"
    assert lots_of(studio, found) == [(lot, "known", "matched")]
    assert studio.book.ask(finds_waiting) == ()
    desk.press("F2")
    assert [one.yarn for one in studio.book.ask(finds_waiting)] == [found]
    assert len(desk.hand.page.tagless.keys) == 2
    assert len(skeins) == 5


def test_a_skein_is_told_to_be_of_another_lot_than_its_tag_says(desk):
    studio = desk.studio
    wrong, (skein, other) = studio.tagged(studio.cone(), 2)
    right, (_, last) = studio.tagged(studio.cone(), 2)
    mark, of_right = (studio.book.ask(now_of, row).mark for row in (skein, last))
    desk.scan(mark)
    desk.press("W")
    assert desk.hand.page.why.why.title == f"Which lot is the skein with {shown(mark)} of?"
    desk.scan(studio.code(wrong))
    assert "is the lot that its tag says" in desk.trouble
    desk.scan(of_right)
    assert desk.hand.thing.found.code == mark
    assert desk.hand.page.why.why.title.startswith(
        f"The skein with {shown(mark)} is of {shown(studio.code(right))}, ")
    desk.click(desk.hand.page.why.answers[0])
    assert lots_of(studio, skein) == [(right, "known", "stated")]
    assert desk.hand.thing.found.code == studio.code(right)
    assert "wants a tag" in desk.words(desk.hand.page.tagless)
    studio.check()
    desk.scan(mark)
    assert desk.hand.thing.found.void
    assert not desk.hand.page.evidence.isVisible()
    assert studio.book.ask(now_of, other).mark


def test_a_lot_that_is_not_counted_or_not_there_keeps_the_question_open(desk):
    studio = desk.studio
    _, (skein, _) = studio.tagged(studio.cone(), 2)
    uncounted = studio.dye(studio.wind(studio.cone(), 2))
    mark = studio.book.ask(now_of, skein).mark
    desk.scan(mark)
    desk.press("W")
    desk.type("26")
    desk.press("Enter")
    assert desk.trouble
    assert desk.hand.page.why.field.line.text() == "26"
    desk.scan(studio.code(uncounted))
    assert "was not counted yet" in desk.trouble
    desk.press("F8")
    assert desk.hand.page.why is None
    assert studio.book.ask(now_of, skein).mark == mark


def test_a_tag_may_as_well_go_on_one_more_than_was_counted(desk):
    studio = desk.studio
    lot, pile, skeins = short_lot(studio)
    bare = studio.do(find, 1, 97_000)
    studio.do(is_one_of, bare, skeins)
    (tag,) = studio.print(pile, 1, why="an extra skein")
    (mark,) = [one.mark for one in studio.book.ask(tags_of, pile) if one.id == tag]
    desk.enter(7)
    desk.scan(mark)
    desk.window.floor.findings.answered.emit(
        desk.window.floor.findings._open[0], "No, on one more than was counted")
    desk.quiet()
    assert desk.said == f"tied {shown(mark)} on"
    assert studio.book.ask(now_of, bare).mark is None
    assert studio.present("lot", lot)["table", "skein"].count == 6
