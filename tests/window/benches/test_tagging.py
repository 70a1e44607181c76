"""The tag table: the right tags on the right skeins, each told with one scan."""

import pytest

from app.calculations.codes import shown
from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.lookups.printed import TIED_ON, VOID, WAITING, tags_of
from app.lookups.tagging import pile_facts
from app.window.benches.tagging.choosing import Choosing
from app.window.benches.tagging.hold_card import HoldCard
from app.work.dyeing import name_colourway
from app.work.finishing import finish
from app.work.holding import hold
from app.work.winding import Drawn, Wound, wind
from tests.makers import LONG_MM
from tests.window.benches.at_work import DONE, SECONDS, begin_work, disc, plate
from tests.window.benches.tag_table_hands import (
    add_up,
    eleven_on_the_table,
    entries_say,
    figures,
    in_hand,
    pile_by_disc,
    pile_of,
    tags,
)


@pytest.fixture
def pile(studio):
    """Eleven skeins on disc 031; eight cells of a sheet of small tags are used by another pile."""
    return eleven_on_the_table(studio)


@pytest.fixture
def table(qtbot, settings, studio, pile, opened):
    """At the tag table."""
    yield from begin_work(qtbot, settings, studio, 7)


def test_each_scan_ties_one_tag_on_and_the_last_one_frees_the_disc(table, pile):
    table.scan(disc(31), DONE)
    waiting = [tag.mark for tag in tags(table, pile, WAITING)]
    for number, mark in enumerate(waiting[:3], 1):
        table.scan(mark)
        assert figures(table) == (11, number, 11 - number, 0, 0)
    assert table.said == f"tied {shown(waiting[2])} on"
    assert table.studio.book.ask(bundle_facts, table.studio.discs[0], NOW) is not None
    table.scan(*waiting[3:])
    assert figures(table) == (11, 11, 0, 0, 0)
    assert in_hand(table).pile_card.next.text() == (
        "All 11 wear their tags. Its disc is free again. Scan the shelf they go to.")
    assert table.studio.book.ask(bundle_facts, table.studio.discs[0], NOW) is None
    assert add_up(table)
    table.studio.check()


def test_a_bounce_is_counted_once_and_said_softly(table, pile):
    table.scan(disc(31), DONE)
    (first, *_) = tags(table, pile, WAITING)
    table.bounce(first.mark)
    assert figures(table)[1] == 1
    assert table.note == f"{shown(first.mark)} was scanned twice: counted once"
    assert not table.trouble


def test_a_tag_that_hangs_already_is_counted_once_and_may_be_printed_anew(table, pile):
    table.scan(disc(31), DONE)
    (first, *_) = tags(table, pile, WAITING)
    table.scan(first.mark, first.mark)
    card = in_hand(table).pile_card
    assert card.tag_words.text() == "hangs on its skein already: counted once"
    assert figures(table) == (11, 1, 10, 0, 0)
    table.press("R")
    assert figures(table) == (11, 1, 10, 0, 1)
    (new,) = tags(table, pile, TIED_ON)
    table.scan(first.mark)
    assert f"{shown(first.mark)} is void: {shown(new.mark)} took its place." in table.trouble
    assert "Throw it away." in table.trouble
    assert add_up(table)
    table.press("J", "Space", "Enter")  # the new one jammed
    assert figures(table) == (11, 1, 10, 0, 2)
    (newest,) = tags(table, pile, TIED_ON)
    assert add_up(table)
    for place in (4, 6):  # one that has no use for tags, and one that has
        table.enter(place)
        table.scan(first.mark)
        assert f"{shown(first.mark)} is void: {shown(new.mark)} took its place." in table.trouble
    table.enter(4)
    table.scan(newest.mark)
    assert "is a tagged skein, and this bench has no use for it." in table.trouble


def test_a_void_tag_says_so_and_ties_nothing_on(table, pile):
    table.scan(disc(31), DONE, SECONDS)
    (first, *_) = tags(table, pile, WAITING)
    table.scan(first.mark, DONE)
    assert figures(table) == (11, 0, 10, 1, 1)
    table.scan(first.mark)
    assert f"{shown(first.mark)} is void. Throw it away." in table.trouble
    assert figures(table) == (11, 0, 10, 1, 1)


def test_spoiled_tags_may_be_scanned_instead_of_tapped_and_untold_again(table, pile):
    table.scan(disc(31), DONE)
    one, two, three, *_ = tags(table, pile, WAITING)
    table.scan(SECONDS, one.mark, two.mark, three.mark, two.mark)
    assert isinstance(in_hand(table).aside, Choosing)
    assert [tag.mark for tag in in_hand(table).aside.gone] == [one.mark, three.mark]
    table.press("Enter")
    assert {tag.mark for tag in tags(table, pile, VOID)} == {one.mark, three.mark}


def test_a_tag_that_fell_off_a_skein_is_printed_anew_at_once(table, pile):
    table.scan(disc(31), DONE)
    (first, *_) = tags(table, pile, WAITING)
    table.scan(first.mark)
    table.press("F")
    in_hand(table).aside.picture.tapped.emit(first.place)
    table.press("Enter")
    assert figures(table) == (11, 1, 10, 0, 1)
    assert tags(table, pile, VOID)[0].successor == tags(table, pile, TIED_ON)[0].mark
    assert add_up(table)


def test_a_tag_that_was_lost_before_it_hung_is_void_and_one_more_is_printed(table, pile):
    table.scan(disc(31), DONE, plate(2))
    tag = tags(table, pile, WAITING)[0]
    in_hand(table).aside.picture.tapped.emit(tag.place)
    table.press("Enter")
    assert figures(table) == (11, 0, 10, 1, 1)
    assert entries_say(table, "fell off or lost")


def test_a_hold_on_the_cone_stops_printing_and_says_whom_to_ask(table, studio):
    cone = studio.cone()
    held = pile_of(studio, 6, 2, "blue", cone=cone)
    studio.do(hold, "cone", cone, "fluorescent oil stain")
    table.scan(disc(33))
    card = in_hand(table).aside
    assert isinstance(card, HoldCard)
    assert card.ask == ["Ask OW, Osk Wray."]
    assert not in_hand(table).print_card.isVisible()
    table.scan(DONE)
    assert "HOLD: no tags are printed for this pile." in table.trouble
    assert tags(table, held, WAITING) == []


def test_a_hold_that_comes_while_the_pile_is_in_hand_is_seen_at_once(table, studio, pile):
    table.scan(disc(31))
    studio.do(hold, "yarn", pile, "looks streaky")
    table.quiet()
    assert isinstance(in_hand(table).aside, HoldCard)


def test_a_tag_of_another_pile_is_tied_on_there_and_said(table, studio, pile):
    other = studio.book.ask(tags_of, pile_by_disc(studio, 1))
    table.scan(disc(31), other[0].mark)
    assert table.found == [
        f"{shown(other[0].mark)} belongs to another pile: it is tied on there, "
        "and not counted here."
    ]
    assert figures(table) == (11, 0, 0, 11, 0)
    assert studio.book.ask(pile_facts, other[0].pile).applied == 1
    table.window.floor.findings.answered.emit(
        table.window.floor.findings._open[0], "Take that pile in hand"
    )
    table.quiet()
    assert in_hand(table).pile == other[0].pile


def test_a_disc_on_two_piles_asks_which_one(table, studio):
    reel = [
        Wound((Drawn(studio.cone(), count * LONG_MM),), count, "skein", tie)
        for tie, count in (("red", 8), ("yellow", 6))
    ]
    rows = studio.do(wind, reel, studio.discs[4])
    studio.dye(*rows)
    studio.do(finish, rows, {"red": 8, "yellow": 6})
    table.scan(disc(35))
    assert table.bench.piles.asks.text() == "2 piles of disc 035: which one?"
    assert [row[4:6] for row in table.bench.piles.table._rows] == [("red", "8"), ("yellow", "6")]
    table.scan(plate(2))
    assert figures(table) == (6, 0, 0, 6, 0)


def test_a_pile_is_chosen_by_its_figure_or_by_its_lot(table, studio, pile):
    assert [row[1] for row in table.bench.piles.table._rows] == ["031", "032"]
    table.press("2")
    assert in_hand(table).pile == pile_by_disc(studio, 1)
    table.press("F8")
    table.scan(studio.book.ask(pile_facts, pile).lot)
    assert in_hand(table).pile == pile


def test_by_keyboard_alone_a_disc_is_typed_tags_printed_and_one_told_by_its_two_characters(
    table, pile
):
    table.press("Escape")
    table.type("31")
    table.press("Enter", "P")
    (first, *_) = tags(table, pile, WAITING)
    table.press("Escape")
    table.type(first.mark[-2:])
    table.press("Enter")
    assert figures(table) == (11, 1, 10, 0, 0)


def test_a_tag_without_a_pile_in_hand_takes_its_pile_in_hand(table, pile):
    table.scan(disc(31), DONE)
    table.press("F8")
    table.scan(tags(table, pile, WAITING)[0].mark)
    assert in_hand(table).pile == pile
    assert figures(table) == (11, 1, 10, 0, 0)


def test_what_is_not_here_is_told(table, studio):
    table.scan(disc(45))
    assert "Disc 045 hangs on nothing." in table.trouble
    studio.wind(studio.cone(), 3, "red", studio.discs[5])
    table.scan(disc(36))
    assert "The cord on disc 036 is not counted yet" in table.trouble
    table.scan(f"{studio.code(1)}-00")
    assert "was never printed" in table.trouble
    table.scan(DONE)
    assert "No pile is in hand." in table.trouble


def test_a_lot_whose_skeins_are_all_tagged_has_no_pile(table, studio):
    group = studio.wind(studio.cone(), 1)
    lot = studio.dye(group)
    studio.tag(studio.finish(group, red=1)[0], 1)
    table.scan(studio.code(lot))
    assert "waits for tags" in table.trouble


def test_the_piles_say_when_nothing_waits(qtbot, settings, studio):
    for at_work in begin_work(qtbot, settings, studio, 7):
        assert "No pile waits" in at_work.bench.piles.table._none.text()
        assert at_work.bench.piles.table._none.isVisible()


def test_a_colourway_without_a_swatch_says_so(table, studio):
    studio.recipe = studio.do(name_colourway, "Coal Hatch")
    pile_of(studio, 2, 6)
    table.scan(disc(37))
    assert in_hand(table).pile_card._swatch.accessibleName() == "Coal Hatch: no swatch chosen"
