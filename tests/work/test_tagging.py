"""The tag table: printed once, tied on once, and a void tag says what took its place."""

import pytest
from sqlalchemy import select

from app.lookups.discs import disc_of, yarn_on_disc
from app.lookups.tagging import marks_for, pile_facts
from app.problems import NotFound, Refused
from app.records import Tag
from app.work.bundling import tie_on
from app.work.holding import hold, lift_hold
from app.work.mixing import split
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import (
    EXTRA_SKEIN,
    Printing,
    apply_tag,
    print_tags,
    reprint,
    spoil_tags,
)
from tests.makers import Studio


def piled(studio: Studio, count: int, disc: int | None = None) -> int:
    group = studio.wind(studio.cone(), count, disc=disc)
    studio.dye(group)
    return studio.finish(group, red=count)[0]


def mark(studio: Studio, lot: int = 1) -> str:
    return studio.book.ask(marks_for, studio.code(lot) or "", 1, studio.random)[0]


def state(studio: Studio) -> dict[str, int]:
    return {key[0]: amount.count for key, amount in studio.present().items()}


def test_more_than_were_counted_are_refused_until_somebody_says_why(studio: Studio) -> None:
    pile = piled(studio, 11)
    studio.print(pile, 11)
    with pytest.raises(Refused, match=r"11 of 11 printed: why 11 more\?"):
        studio.print(pile, 11)
    with pytest.raises(Refused, match=r"11 of 11 printed: why 1 more\?"):
        studio.print(pile, 1, why="  ")
    assert len(studio.print(pile, 1, why="an extra skein")) == 1


def test_three_spoiled_make_room_for_exactly_three_and_eleven_are_live(studio: Studio) -> None:
    pile = piled(studio, 11)
    tags = studio.print(pile, 11)
    assert studio.done(spoil_tags, tags[:3], "jammed").said == "spoiled 3 tags: jammed"
    with pytest.raises(Refused, match=r"8 of 11 printed: why 4 more\?"):
        studio.print(pile, 4)
    studio.print(pile, 3)
    facts = studio.book.ask(pile_facts, pile)
    assert (facts.printed, facts.void, facts.waiting) == (14, 3, 11)


def test_what_is_tied_on_counts_as_printed(studio: Studio) -> None:
    pile = piled(studio, 4)
    studio.tag(pile, 2)
    with pytest.raises(Refused, match=r"2 of 4 printed: why 3 more\?"):
        studio.print(pile, 3)


def test_no_tags_are_printed_on_hold_and_they_are_again_when_it_is_lifted(
    studio: Studio,
) -> None:
    pile = piled(studio, 4)
    placed = studio.do(hold, "cone", 1, "oil")
    with pytest.raises(Refused, match=r"HOLD: no tags are printed .* Ask who placed the hold"):
        studio.print(pile, 4)
    studio.do(lift_hold, placed, "washed out")
    assert len(studio.print(pile, 4)) == 4


def test_no_reprint_on_hold_either(studio: Studio) -> None:
    _, (skein, *_) = studio.tagged(studio.cone(), 2)
    studio.do(hold, "yarn", skein, "stained")
    with pytest.raises(Refused, match="HOLD: no tag is printed for this skein"):
        studio.do(reprint, skein, mark(studio), "{}", ("swing tag", 1))


def test_a_pile_whose_lot_has_no_code_yet_is_not_printed_for(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2)
    (pile,) = studio.finish(group, red=2)
    with pytest.raises(Refused, match="The lot of this pile is not known, or still without"):
        studio.do(print_tags, Printing(pile, ("2615R6F-7M",), "{}", "swing tag"))


def test_words_of_another_yarn_are_not_printed(studio: Studio) -> None:
    with pytest.raises(Refused, match="These words are not of this yarn"):
        studio.print(piled(studio, 2), 1, version=99)


def test_a_mark_is_never_printed_twice(studio: Studio) -> None:
    pile = piled(studio, 3)
    one = mark(studio)
    studio.do(print_tags, Printing(pile, (one,), "{}", "swing tag"))
    with pytest.raises(Refused, match="done already, perhaps at another station"):
        studio.do(print_tags, Printing(pile, (one,), "{}", "swing tag"))


def test_a_printed_tag_keeps_its_words_and_its_cell(studio: Studio) -> None:
    printing = Printing(piled(studio, 2), (mark(studio),), '{"net": "100 g"}', "swing tag", (9,))
    (tag,) = studio.do(print_tags, printing)
    row = studio.book.ask(lambda c: c.execute(select(Tag).where(Tag.id == tag)).one())
    assert (row.words, row.base_version, row.cell) == ('{"net": "100 g"}', studio.version, 9)


def test_what_was_printed_is_said_with_its_lot(studio: Studio) -> None:
    marks = studio.book.ask(marks_for, studio.code(piled(studio, 2) and 1) or "", 2, studio.random)
    done = studio.done(print_tags, Printing(2, marks, "{}", "swing tag"))
    assert done.said == f"printed 2 tags for 26·15·{marks[0][4:7]}"


def test_a_tag_tied_on_makes_a_skein_on_the_table(studio: Studio) -> None:
    pile = piled(studio, 3)
    tags = studio.print(pile, 3)
    done = studio.done(apply_tag, tags[0])
    assert done.said.startswith("tied 26·15·")
    assert state(studio) == {"piled": 2, "table": 1}
    assert studio.origins(done.answer)[0].word == "known"
    studio.check()


def test_the_same_tag_tied_on_twice_counts_once(studio: Studio) -> None:
    tags = studio.print(piled(studio, 3), 3)
    studio.do(apply_tag, tags[0])
    with pytest.raises(Refused, match="hangs on its skein already; it was counted once"):
        studio.do(apply_tag, tags[0])
    assert state(studio) == {"piled": 2, "table": 1}


def test_a_tag_more_than_there_are_skeins_is_told_so(studio: Studio) -> None:
    pile = piled(studio, 2)
    extra = studio.print(pile, 3, why="to be sure")
    for tag in extra[:2]:
        studio.do(apply_tag, tag)
    with pytest.raises(Refused, match=r"All skeins of this pile wear tags: .* is one too many"):
        studio.do(apply_tag, extra[2])
    studio.do(spoil_tags, extra[2:], "one too many")
    studio.check()


def test_a_spoiled_tag_is_not_tied_on(studio: Studio) -> None:
    tags = studio.print(piled(studio, 2), 2)
    studio.do(spoil_tags, tags[:1], "torn")
    with pytest.raises(Refused, match=r"is void; nothing was saved\. Throw it away"):
        studio.do(apply_tag, tags[0])
    with pytest.raises(Refused, match="is void already"):
        studio.do(spoil_tags, tags[:1], "torn")
    with pytest.raises(Refused, match="needs its reason"):
        studio.do(spoil_tags, tags[1:], " ")
    with pytest.raises(Refused, match="No tag was scanned"):
        studio.do(spoil_tags, [], "torn")


def test_a_reprint_voids_the_old_one_which_names_its_successor(studio: Studio) -> None:
    pile = piled(studio, 2)
    tags = studio.print(pile, 2)
    skein = studio.do(apply_tag, tags[0])
    fresh = mark(studio)
    done = studio.done(reprint, skein, fresh, "{}", ("swing tag", 1))
    shown = f"{fresh[:2]}·{fresh[2:4]}·{fresh[4:7]} {fresh[8:]}"
    assert done.said.startswith(f"printed {shown} in place of 26·15·")
    with pytest.raises(Refused, match=f"is void, {shown} took its place; nothing was saved"):
        studio.do(apply_tag, tags[0])
    with pytest.raises(Refused, match="hangs on its skein already"):
        studio.do(apply_tag, done.answer)
    assert state(studio) == {"piled": 1, "table": 1}
    studio.check()


def test_a_tag_that_hangs_is_not_spoiled(studio: Studio) -> None:
    tags = studio.print(piled(studio, 2), 2)
    studio.do(apply_tag, tags[0])
    with pytest.raises(Refused, match="hangs on a skein") as raised:
        studio.do(spoil_tags, tags, "torn")
    assert raised.value.next_step == (
        "Print another for the skein instead: that voids this one.")
    assert studio.book.ask(pile_facts, 2).void == 0


def test_what_is_not_in_the_book_is_told_in_words(studio: Studio) -> None:
    for work, thing in ((apply_tag, 99), (spoil_tags, [99])):
        with pytest.raises(NotFound, match="This tag is not in the book"):
            studio.do(work, thing, *(["torn"] if work is spoil_tags else []))
    with pytest.raises(NotFound, match="No tag hangs on this skein"):
        studio.do(reprint, piled(studio, 2), "2615R6F-7M", "{}", ("swing tag", 1))


def test_the_disc_is_free_when_the_last_tag_of_its_pile_is_tied_on(studio: Studio) -> None:
    pile = piled(studio, 2, studio.discs[0])
    first, second = studio.print(pile, 2)
    studio.do(apply_tag, first)
    assert studio.book.ask(disc_of, pile) == "031"
    studio.do(apply_tag, second)
    assert studio.book.ask(yarn_on_disc, studio.discs[0], studio.clock.now) == []
    studio.do(tie_on, studio.discs[0], [studio.wind(studio.cone(), 2)])


def test_two_piles_on_one_card_free_it_when_both_are_done(studio: Studio) -> None:
    pool = studio.mix(studio.wind(studio.cone(), 1, "red", studio.discs[0]),
                      studio.wind(studio.cone(), 1, "blue"))
    studio.dye(pool)
    reds, blues = studio.finish(pool, red=1, blue=1)
    studio.tag(reds, 1)
    assert studio.book.ask(yarn_on_disc, studio.discs[0], studio.clock.now) == [blues]
    studio.tag(blues, 1)
    assert studio.book.ask(yarn_on_disc, studio.discs[0], studio.clock.now) == []


def test_tags_printed_before_piles_of_one_lot_met_are_tied_on_without_a_word(
    studio: Studio,
) -> None:
    a, b = studio.wind(studio.cone(), 2, "red"), studio.wind(studio.cone(), 2, "blue")
    studio.dye(a, b)
    (pa,), (pb,) = studio.finish(a, red=2), studio.finish(b, blue=2)
    tags = studio.print(pa, 2)
    studio.mix(pa, pb)
    done = studio.done(apply_tag, tags[0])
    assert done.findings == ()
    assert {k.word for k in studio.origins(done.answer)} == {"one of a pool"}
    studio.check()


def test_tags_printed_before_piles_of_two_lots_met_are_tied_on_and_marked(
    studio: Studio,
) -> None:
    pa, pb = piled(studio, 2), piled(studio, 2)
    tags = studio.print(pa, 2)
    studio.mix(pa, pb)
    done = studio.done(apply_tag, tags[0])
    assert len(done.findings) == 1
    assert "was printed before its pile was mixed with another lot" in done.findings[0]
    assert {k.word for k in studio.origins(done.answer, "lot")} == {"one of a pool"}
    studio.check()


def test_tags_of_a_pile_that_was_split_are_printed_anew(studio: Studio) -> None:
    pile = piled(studio, 4)
    tags = studio.print(pile, 4)
    studio.do(split, pile, [2, 2])
    with pytest.raises(Refused, match=r"was split; .* for the pile the skein lies on"):
        studio.do(apply_tag, tags[0])


def test_tags_of_an_old_lot_are_tied_on_like_any(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 2), 100_000)
    skeins = studio.tag(pile, 2)
    assert [studio.origins(skein, "lot")[0].word for skein in skeins] == ["known", "known"]
    assert state(studio) == {"table": 2}
    studio.check()


def test_an_extra_skein_has_the_lot_of_its_tag_and_no_known_cone(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=3)
    extra = studio.print(pile, 4, why=EXTRA_SKEIN)
    skeins = [studio.do(apply_tag, tag) for tag in extra[:3]]
    done = studio.done(apply_tag, extra[3])
    assert done.findings[0].startswith("One more than was counted: its cone is not known")
    assert [link.word for link in studio.origins(done.answer)] == ["not known"]
    (link,) = studio.origins(done.answer, "lot")
    assert (link.thing, link.word, link.basis) == (lot, "known", "stated")
    assert studio.origins(skeins[0])[0].word == "known"
    assert studio.present()["table", "skein"].count == 4
