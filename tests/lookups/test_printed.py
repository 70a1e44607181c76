"""Printed tags one by one, and how far each stock is used."""

from app.lookups.printed import (
    TIED_ON,
    VOID,
    WAITING,
    Worn,
    sheets_used,
    tag_with,
    tags_of,
    worn_by,
)
from app.lookups.tagging import pile_facts
from app.work.tagging import apply_tag, keep_sheet, reprint, spoil_tags


def pile_of(studio, count):
    group = studio.wind(studio.cone(), count)
    studio.dye(group)
    (pile,) = studio.finish(group, red=count)
    return pile


def test_every_tag_is_waiting_tied_on_or_void_and_they_add_up(studio):
    pile = pile_of(studio, 5)
    tags = studio.print(pile, 5)
    studio.do(apply_tag, tags[0])
    studio.do(spoil_tags, tags[3:], "jammed")
    states = [tag.state for tag in studio.book.ask(tags_of, pile)]
    assert states == [TIED_ON, WAITING, WAITING, VOID, VOID]
    facts = studio.book.ask(pile_facts, pile)
    assert (facts.applied, facts.waiting, facts.void, facts.printed) == (1, 2, 2, len(states))


def test_a_tag_knows_its_place_also_after_a_cell_that_was_passed_over(studio):
    pile = pile_of(studio, 4)
    studio.print(pile, 3, cells=(9, 10, 12))
    studio.print(pile, 1, cells=(13,))
    assert [tag.place for tag in studio.book.ask(tags_of, pile)] == [9, 10, 12, 13]


def test_where_no_cell_is_known_tags_follow_one_another_from_the_first(studio):
    pile = pile_of(studio, 3)
    studio.print(pile, 2)
    studio.print(pile, 1)
    assert [tag.place for tag in studio.book.ask(tags_of, pile)] == [1, 2, 1]


def test_a_tag_is_found_by_its_mark_with_its_successor(studio):
    pile = pile_of(studio, 2)
    (skein,) = studio.tag(pile, 1)
    (old,) = studio.book.ask(tags_of, pile)
    lot = old.mark.partition("-")[0]
    studio.do(reprint, skein, f"{lot}-ZZ", "{}", ("swing tag", 2))
    gone = studio.book.ask(tag_with, old.mark)
    assert (gone.state, gone.skein, gone.successor) == (VOID, None, f"{lot}-ZZ")
    assert studio.book.ask(tag_with, f"{lot}-ZZ").skein == skein
    assert studio.book.ask(tag_with, f"{lot}-00") is None


def test_a_book_that_keeps_no_cells_yet_takes_all_as_used_up_to_the_last_tag(studio):
    pile = pile_of(studio, 6)
    assert studio.book.ask(sheets_used) == {}
    studio.print(pile, 4)
    assert studio.book.ask(sheets_used) == {"swing tag": {1, 2, 3, 4}}
    studio.print(pile, 1)
    assert studio.book.ask(sheets_used) == {"swing tag": {1}}
    studio.undo()
    assert studio.book.ask(sheets_used) == {"swing tag": {1, 2, 3, 4}}


def test_the_used_cells_of_a_sheet_are_kept_with_their_gaps_and_the_last_stock_comes_first(studio):
    studio.print(pile_of(studio, 4), 4)
    studio.do(keep_sheet, "card", [7, 1, 3])
    studio.do(keep_sheet, "roll", [1])
    studio.do(keep_sheet, "card", [1, 3, 4, 7])
    used = studio.book.ask(sheets_used)
    assert list(used) == ["card", "roll", "swing tag"]
    assert used == {"card": {1, 3, 4, 7}, "roll": {1}, "swing tag": {1, 2, 3, 4}}
    studio.undo()
    assert studio.book.ask(sheets_used)["card"] == {1, 3, 7}


def test_a_skein_wears_one_tag_with_its_words(studio):
    pile = pile_of(studio, 1)
    (skein,) = studio.tag(pile, 1)
    (tag,) = studio.book.ask(tags_of, pile)
    assert studio.book.ask(worn_by, skein) == Worn(tag.mark, "{}")
    assert studio.book.ask(worn_by, pile) is None
