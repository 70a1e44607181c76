"""Counts of tags add up for a lot, a day and a stock, whatever was done with them."""

from datetime import timedelta

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.lookups.printed import tags_of
from app.lookups.tag_counts import (
    TagCounts,
    in_hand_with,
    lot_tag_counts,
    tags_by_stock,
    tags_of_day,
)
from app.work.tag_counting import count_in_hand
from app.work.tagging import apply_tag, reprint, spoil_tags


def dyed(studio, count):
    """A lot of so many on one pile: the lot, the pile."""
    group = studio.wind(studio.cone(), count)
    return studio.dye(group), studio.finish(group, red=count)[0]


def sum_of(counts):
    return counts.applied + counts.spoiled + counts.void + counts.in_hand


def test_of_eleven_three_jam_and_one_is_printed_anew(studio):
    lot, pile = dyed(studio, 11)
    tags = studio.print(pile, 11)
    studio.do(spoil_tags, tags[:3], "jammed")
    more = studio.print(pile, 3)
    skeins = [studio.do(apply_tag, tag) for tag in tags[3:9]]
    studio.do(reprint, skeins[0], f"{studio.code(lot)}-ZZ", "{}", ("card", 2))
    facts = studio.book.ask(lot_tag_counts, lot)
    assert facts.counts == TagCounts(printed=15, applied=6, spoiled=3, void=1, in_hand=5)
    assert facts.expected == 11
    assert set(facts.waiting.values()) == {*tags[9:], *more}
    assert facts.last is None
    assert studio.book.ask(tags_by_stock) == {
        "card": TagCounts(printed=1, applied=1),
        "swing tag": TagCounts(printed=14, applied=5, spoiled=3, void=1, in_hand=5)}


def test_a_day_has_its_own_printings_and_the_whole_of_their_lots(studio):
    lot, pile = dyed(studio, 5)
    studio.tag(pile, 2)
    other, of_other = dyed(studio, 4)
    studio.print(of_other, 1)
    morning = studio.clock.now + timedelta(hours=8)
    studio.clock.now = morning
    studio.print(pile, 3)
    day = studio.book.ask(tags_of_day, morning, morning + timedelta(days=1))
    assert day.counts == TagCounts(printed=3, in_hand=3)
    assert [(one.lot, one.counts.printed, one.expected) for one in day.lots] == [(lot, 5, 5)]
    before = studio.book.ask(tags_of_day, morning - timedelta(days=1), morning)
    assert [one.lot for one in before.lots] == [lot, other]
    assert before.counts == TagCounts(printed=3, applied=2, in_hand=1)


def test_a_count_keeps_what_the_book_had_in_hand_then(studio):
    lot, pile = dyed(studio, 3)
    tags = studio.print(pile, 3)
    studio.do(count_in_hand, lot, 2, "one fell behind the table")
    studio.do(apply_tag, tags[0])
    studio.do(spoil_tags, tags[1:2], "found, and torn")
    facts = studio.book.ask(lot_tag_counts, lot)
    assert (facts.last.by_the_book, facts.last.count, facts.last.unexplained) == (3, 2, 1)
    assert facts.counts.in_hand == 1


def test_a_tag_brings_the_counts_of_its_lot(studio):
    lot, pile = dyed(studio, 2)
    studio.print(pile, 2)
    (tag, _) = studio.book.ask(tags_of, pile)
    assert studio.book.ask(in_hand_with, tag.mark) == studio.book.ask(lot_tag_counts, lot)
    assert studio.book.ask(in_hand_with, f"{studio.code(lot)}-??") is None


class OneLot:
    """Nine skeins of a lot at the tag table, with what must be so counted beside the book."""

    def __init__(self, studio):
        self.studio = studio
        self.lot, self.pile = dyed(studio, 9)
        self.waiting, self.worn, self.free = [], [], 9
        self.told = TagCounts()

    def print(self, count):
        count = min(count, self.free)
        if count:
            self.waiting += self.studio.print(self.pile, count)
            self.free -= count
            self.told += TagCounts(printed=count, in_hand=count)

    def tie_on(self, count):
        for _ in range(min(count, len(self.waiting))):
            self.worn.append(self.studio.do(apply_tag, self.waiting.pop()))
            self.told += TagCounts(applied=1, in_hand=-1)

    def spoil(self, count):
        gone = [self.waiting.pop() for _ in range(min(count, len(self.waiting)))]
        if gone:
            self.studio.do(spoil_tags, gone, "torn")
            self.free += len(gone)
            self.told += TagCounts(spoiled=len(gone), in_hand=-len(gone))

    def print_anew(self, _count):
        if self.worn:
            mark = f"{self.studio.code(self.lot)}-{self.told.printed}"
            self.studio.do(reprint, self.worn[0], mark, "{}", ("card", 1))
            self.told += TagCounts(printed=1, void=1)

    def take_back(self, _count):
        if self.waiting:
            self.studio.do(apply_tag, self.waiting[-1])
            self.studio.undo()

    def count(self, count):
        if self.told.printed:
            self.studio.do(count_in_hand, self.lot, count, "looked twice")
            last = self.studio.book.ask(lot_tag_counts, self.lot).last
            assert (last.count, last.by_the_book) == (count, self.told.in_hand)
            assert self.told.printed == (self.told.applied + self.told.spoiled + self.told.void
                                         + last.count + last.unexplained)


DEEDS = (OneLot.print, OneLot.tie_on, OneLot.spoil, OneLot.print_anew, OneLot.take_back,
         OneLot.count)


@settings(max_examples=20, deadline=None,
          suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=st.lists(st.tuples(st.sampled_from(DEEDS), st.integers(0, 4)), max_size=9))
def test_whatever_is_done_printed_is_tied_on_spoiled_void_in_hand_and_unexplained(studio, steps):
    table = OneLot(studio)
    table.print(4)
    for deed, count in steps:
        deed(table, count)
        facts = studio.book.ask(lot_tag_counts, table.lot)
        assert facts.counts == table.told
        assert sum_of(facts.counts) == facts.counts.printed
        assert len(facts.waiting) == facts.counts.in_hand
        assert facts.expected == 9
