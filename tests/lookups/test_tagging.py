"""What the labeller sees of a pile: words that are true, counts that add up."""

from random import Random

import pytest

from app.lookups.tagging import marks_for, pile_facts, piles_waiting, tag_text
from app.problems import NotFound, Refused
from app.work.bases import PutUpWords, describe_base
from app.work.holding import hold
from app.work.studio import choose
from app.work.tagging import Printing, apply_tag, print_tags, reprint, spoil_tags
from tests.makers import Studio, tarnfield


def piled(studio: Studio, count: int, disc: int | None = None) -> int:
    group = studio.wind(studio.cone(), count, disc=disc)
    studio.dye(group)
    return studio.finish(group, red=count)[0]


def test_counted_printed_void_waiting_and_tied_on_add_up(studio: Studio) -> None:
    pile = piled(studio, 11)
    tags = studio.print(pile, 11)
    studio.do(spoil_tags, tags[:3], "jammed")
    for tag in tags[3:7]:
        studio.do(apply_tag, tag)
    facts = studio.book.ask(pile_facts, pile)
    assert (facts.counted, facts.printed, facts.void, facts.waiting, facts.applied) == (
        11, 11, 3, 4, 4)
    assert (facts.left, facts.to_print) == (7, 3)
    assert facts.printed == facts.void + facts.waiting + facts.applied


def test_a_reprint_is_void_and_successor_and_waits_for_nothing(studio: Studio) -> None:
    pile = piled(studio, 3)
    skein = studio.do(apply_tag, studio.print(pile, 3)[0])
    mark = studio.book.ask(marks_for, studio.code(1) or "", 1, Random(1))[0]
    studio.do(reprint, skein, mark, "{}", ("swing tag", 1))
    facts = studio.book.ask(pile_facts, pile)
    assert (facts.printed, facts.void, facts.waiting, facts.applied) == (4, 1, 2, 1)
    assert facts.to_print == 0


def test_a_pile_says_its_lot_words_and_disc(studio: Studio) -> None:
    pile = piled(studio, 4, studio.discs[2])
    facts = studio.book.ask(pile_facts, pile)
    assert (facts.disc, facts.colourway, facts.swatch, facts.base, facts.put_up) == (
        "033", "Sluice Keeper's Glove", "#1B856E", "Tarnfield 4-ply", "skein")
    assert facts.lot == studio.code(1)
    assert (facts.lots, facts.versions, facts.holds) == ((1,), (studio.version,), ())


def test_a_pile_below_a_hold_says_so(studio: Studio) -> None:
    pile = piled(studio, 4)
    placed = studio.do(hold, "cone", 1, "oil")
    assert studio.book.ask(pile_facts, pile).holds == (placed,)


def test_a_pile_that_is_not_there_is_told_in_words(studio: Studio) -> None:
    with pytest.raises(NotFound, match="Count it at the finishing table first"):
        studio.book.ask(pile_facts, 99)


def test_piles_wait_until_their_last_tag_is_tied_on(studio: Studio) -> None:
    first, second = piled(studio, 2), piled(studio, 2)
    assert [facts.id for facts in studio.book.ask(piles_waiting)] == [first, second]
    studio.tag(first, 2)
    assert [facts.id for facts in studio.book.ask(piles_waiting)] == [second]


def test_the_words_of_a_tag_are_those_of_its_base_version(studio: Studio) -> None:
    studio.do(choose, {"name": "Quernlow Dyeyard", "origin": "Dyed by hand at Quernlow"})
    pile = piled(studio, 2)
    studio.do(describe_base, tarnfield(fibre="75 % wool, 25 % polyamide"))
    text = studio.book.ask(tag_text, pile, studio.version)
    assert (text.studio, text.colourway, text.base, text.fibre) == (
        "Quernlow Dyeyard", "Sluice Keeper's Glove", "Tarnfield 4-ply", "100 % wool")
    assert (text.net, text.ounces) == ("100 g   388 m", "3.53 oz   424 yd")
    assert (text.origin, text.lot) == ("Dyed by hand at Quernlow", studio.code(1))


def test_a_put_up_that_was_never_described_cannot_be_put_into_words(studio: Studio) -> None:
    version = studio.do(describe_base, tarnfield(
        put_ups=(PutUpWords("mini", 55, 1500, 20_000, 77_600),)))
    with pytest.raises(NotFound, match="What a skein of Tarnfield 4-ply holds is not described"):
        studio.book.ask(tag_text, piled(studio, 2), version)


def test_marks_of_a_lot_are_never_given_twice_not_even_after_an_undo(studio: Studio) -> None:
    pile = piled(studio, 40)
    lot = studio.code(1) or ""
    first = studio.book.ask(marks_for, lot, 40, Random(7))
    studio.do(print_tags, Printing(pile, first, "{}", "swing tag"))
    studio.undo()
    more = studio.book.ask(marks_for, lot, 321, Random(7))
    assert len({*first, *more}) == 361
    studio.do(print_tags, Printing(pile, more, "{}", "swing tag", why="all of them"))
    with pytest.raises(Refused, match="All 361 marks"):
        studio.book.ask(marks_for, lot, 1, Random(7))
