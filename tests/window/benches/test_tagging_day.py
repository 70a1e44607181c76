"""The end of a day at the tag table: what is in hand is counted, and everything adds up."""

from datetime import timedelta

import pytest

from app.calculations.codes import shown
from app.exchange.tag_printing import OnStock, PrintOrder, print_for_pile
from app.lookups.printed import TIED_ON, VOID, WAITING
from app.lookups.tag_counts import lot_tag_counts
from app.lookups.tagging import pile_facts
from app.store.deed import By
from app.window.benches.tagging.end_of_day import EndOfDay
from app.work.tagging import apply_tag, spoil_tags
from tests.window.benches.at_work import DONE, begin_work, disc, plate
from tests.window.benches.tag_table_hands import (
    SMALL,
    eleven_on_the_table,
    entries_say,
    pile_by_disc,
    tags,
)


@pytest.fixture
def pile(studio):
    """Eight tags in hand of one lot; eleven of another: six tied on, two jammed, three in hand."""
    eleven = eleven_on_the_table(studio)
    printed = print_for_pile(
        studio.book, By("LP", "tagging"), PrintOrder(eleven, 11, OnStock(SMALL)), studio.random)
    studio.do(spoil_tags, printed.tags[:2], "jammed")
    for tag in printed.tags[2:8]:
        studio.do(apply_tag, tag)
    return eleven


@pytest.fixture
def table(qtbot, settings, studio, pile):
    """At the end of the day."""
    for at_work in begin_work(qtbot, settings, studio, 7):
        at_work.press("F6")
        yield at_work


def facts(table, pile):
    (lot,) = table.studio.book.ask(pile_facts, pile).lots
    return table.studio.book.ask(lot_tag_counts, lot)


def of(table, number):
    """The figures of a lot in the table, by its place."""
    return table.bench.shelf.table.lots._rows[number][2:]


def test_all_tags_are_scanned_and_each_lot_is_kept_with_done(table, pile):
    day = table.bench.shelf
    assert isinstance(day, EndOfDay)
    assert day.table.sum.text() == (
        "19 printed = 6 tied on + 2 spoiled + 0 void + 11 in hand.")
    assert of(table, 0) == ("11", "11", "6", "2", "0", "3", "–", "–")
    assert of(table, 1) == ("8", "8", "0", "0", "0", "8", "–", "–")
    assert day.table.stocks._rows == [
        ("Small tags 63.5 × 38.1, twenty-one on A4", "19", "6", "2", "0", "11")]

    other = tags(table, pile_by_disc(table.studio, 1), WAITING)
    mine = [tag.mark for tag in tags(table, pile, WAITING)]
    table.scan(other[0].mark, *mine, mine[0])
    assert day.code.accessibleName() == shown(facts(table, pile).code)
    assert day.count.line.text() == "3"
    table.scan(DONE)
    assert entries_say(table, f"counted 3 tags of {shown(facts(table, pile).code)} in hand")
    assert day.count.line.text() == "1"
    table.scan(plate(8), DONE)
    assert day.next.text() == "All tags in hand are counted."
    assert [of(table, n)[-2:] for n in (0, 1)] == [("3", "0"), ("8", "0")]

    table.studio.do(apply_tag, facts(table, pile).waiting[mine[0]])
    table.quiet()
    assert day.should.accessibleName().startswith("2 should be here")
    table.press("F8")
    assert table.bench.piles.isVisible()


def test_a_count_that_differs_asks_why_and_the_missing_are_named_or_voided(table, pile):
    day = table.bench.shelf
    table.press("2", "Enter", "Enter")
    assert day.why.wrong.text() == "Say what happened: the entry keeps it."
    assert facts(table, pile).last is None
    table.type("fell")
    table.press("Enter")
    last = facts(table, pile).last
    assert (last.count, last.by_the_book, last.why) == (2, 3, "fell")
    assert of(table, 0)[-2:] == ("2", "1")

    other = pile_by_disc(table.studio, 1)
    gone, *met = tags(table, other, WAITING)
    table.scan(*[tag.mark for tag in met])
    assert day.missing.text() == f"Not scanned yet: {gone.mark[-2:]}."
    table.press("F7")
    table.type("torn")
    table.press("F7")
    assert [tag.mark for tag in tags(table, other, VOID)] == [gone.mark]
    now = facts(table, other)
    assert (now.counts.in_hand, now.last.count, now.last.unexplained) == (7, 7, 0)
    table.studio.check()


def test_what_was_scanned_stays_scanned_when_something_else_is_taken_in_hand(table, pile):
    first, second, _ = tags(table, pile, WAITING)
    table.scan(first.mark, second.mark, disc(32))
    assert table.bench.in_hand is not None
    table.press("F8")
    table.studio.do(apply_tag, second.id)
    table.press("F6")
    assert table.bench.shelf.count.line.text() == "1"


def test_what_is_not_in_hand_is_said_and_not_counted(table, pile):
    void, hangs = tags(table, pile, VOID)[0], tags(table, pile, TIED_ON)[0]
    table.scan(void.mark)
    assert f"{shown(void.mark)} is void." in table.trouble
    table.scan(hangs.mark)
    assert "hangs on a skein by the book; it was not counted." in table.trouble
    table.scan(f"{hangs.mark[:-2]}00")
    assert "was never printed; it was not counted." in table.trouble
    assert table.bench.shelf.scanned == {}


def test_a_tag_of_another_day_brings_its_lot_and_else_nothing_is_asked(
    qtbot, settings, studio, pile
):
    studio.clock.now += timedelta(days=1)
    for table in begin_work(qtbot, settings, studio, 7):
        table.press("F6")
        day = table.bench.shelf
        assert day.next.text().startswith("No tag was printed today.")
        table.scan(DONE)
        assert not day.count.isVisible()
        table.scan(*[tag.mark for tag in tags(table, pile, WAITING)])
        assert day.should.accessibleName().startswith("3 should be here")
        table.scan(DONE)
        assert facts(table, pile).last.count == 3
