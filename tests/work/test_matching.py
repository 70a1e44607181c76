"""Skeins without a tag, or with another lot's."""

import pytest
from sqlalchemy import select

from app.calculations.codes import shown
from app.lookups.certainty import links
from app.lookups.present import NOT_MATCHED
from app.lookups.tagging import piles_waiting
from app.lookups.thread import thread
from app.problems import NotFound, Refused
from app.records import Tag, Yarn
from app.work.bases import describe_base
from app.work.matching import belongs_to, find, is_missing_from, is_one_of, new_tag
from app.work.moving import To, call_second, move
from app.work.remaking import cut, gather
from app.work.selling import know_customer, sell
from app.work.tagging import apply_tag, spoil_tags
from tests.makers import tarnfield
from tests.sums import adds_up


def lot_of(studio, count, tagged):
    """A lot of so many, so many of them tagged: lot, pile, skeins."""
    group = studio.wind(studio.cone(), count)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=count)
    return lot, pile, studio.tag(pile, tagged)


def counts(studio):
    return {key[0]: amount.count for key, amount in studio.present().items()}


def test_a_find_stands_beside_until_it_is_matched(studio):
    found = studio.do(find, 1, 97_000)
    assert counts(studio) == {NOT_MATCHED: 1}
    assert studio.origins(found)[0].word == "not known"


def test_a_find_of_an_order_is_one_of_its_skeins_and_one_counts_as_back(studio):
    lot, _, skeins = lot_of(studio, 6, 6)
    studio.do(sell, skeins[:4], studio.do(know_customer, "Ada Nygård"))
    back = studio.do(find, 1, 97_000)
    studio.do(is_one_of, back, skeins[:4])
    assert counts(studio) == {"sent, buyer known": 3, "table": 3}
    (link,) = studio.origins(back, "lot")
    assert (link.thing, link.word, link.basis) == (lot, "known", "stated")
    which = studio.book.ask(lambda c: links(thread(c, [back]), back, "yarn"))
    assert (skeins[0], "known") not in [(link.thing, link.word) for link in which]
    studio.book.ask(adds_up)


def test_a_find_that_was_missing_at_a_count_is_counted_again(studio):
    group = studio.wind(studio.cone(), 8, "yellow")
    studio.dye(group)
    (pile,) = studio.finish(group, yellow=7)
    studio.tag(pile, 7)
    found = studio.do(find, 1, 102_000)
    assert counts(studio) == {"missing at a count": 1, "table": 7, NOT_MATCHED: 1}
    studio.do(is_missing_from, found, group)
    assert counts(studio) == {"table": 8}
    (link,) = studio.origins(found)
    assert (link.word, link.basis) == ("known", "recognised")


def test_a_find_is_matched_once_and_only_to_a_gap(studio):
    _, _, skeins = lot_of(studio, 4, 2)
    found = studio.do(find, 1, 97_000)
    with pytest.raises(Refused, match="Nothing is missing"):
        studio.do(is_missing_from, found, skeins[0])
    with pytest.raises(Refused, match="one of something"):
        studio.do(is_one_of, found, [])
    studio.do(is_one_of, found, skeins)
    with pytest.raises(Refused, match="matched already"):
        studio.do(is_one_of, found, skeins)


def test_a_find_may_be_the_last_of_a_pile_that_never_got_its_tag(studio):
    lot, pile, _ = lot_of(studio, 4, 3)
    found = studio.do(find, 1, 97_000)
    studio.do(is_missing_from, found, pile, "matched")
    assert {k[0]: a.count for k, a in studio.present("lot", lot).items()} == {"table": 4}
    assert pile not in [one.id for one in studio.book.ask(piles_waiting)]
    assert studio.origins(found, "lot")[0].thing == lot
    studio.book.ask(adds_up)
    studio.undo()
    assert pile in [one.id for one in studio.book.ask(piles_waiting)]


def test_a_tag_on_another_lots_skein_is_put_right(studio):
    first, own, skeins = lot_of(studio, 11, 11)
    other, pile, others = lot_of(studio, 6, 5)
    wrong = skeins[3]
    studio.do(belongs_to, wrong, pile)
    (link,) = studio.origins(wrong, "lot")
    assert (link.thing, link.word, link.basis) == (other, "known", "matched")
    assert {k[0]: a.count for k, a in studio.present("lot", first).items()} == {
        "table": 10, "piled": 1}
    assert {k[0]: a.count for k, a in studio.present("lot", other).items()} == {"table": 6}
    assert len(others) == 5
    (last,) = studio.tag(own, 1)
    assert studio.origins(last, "lot")[0].thing == first
    assert counts(studio) == {"table": 17}
    studio.book.ask(adds_up)
    minis = studio.do(cut, last, 5, "mini", 0)
    with pytest.raises(Refused, match="became something else"):
        studio.do(belongs_to, last, minis)


def test_a_pile_whose_last_skein_wore_anothers_tag_is_done_with(studio):
    _, own, (wrong,) = lot_of(studio, 3, 1)
    _, pile, _ = lot_of(studio, 6, 5)
    def waiting():
        return [one.id for one in studio.book.ask(piles_waiting)]

    assert waiting() == [own, pile]
    studio.do(belongs_to, wrong, pile)
    assert waiting() == [own]
    studio.undo()
    assert waiting() == [own, pile]


def test_one_too_many_of_a_pile_is_of_its_lot_and_of_no_known_cone(studio):
    _, own, (wrong,) = lot_of(studio, 3, 1)
    lot, pile, _ = lot_of(studio, 2, 2)
    done = studio.done(belongs_to, wrong, pile)
    assert done.findings == (
        "That pile now has one too many: one of its own tags hangs elsewhere.",)
    assert [(link.thing, link.word) for link in studio.origins(wrong, "lot")] == [(lot, "known")]
    assert [link.word for link in studio.origins(wrong)] == ["not known"]
    assert counts(studio) == {"piled": 3, "table": 3}
    assert [one.id for one in studio.book.ask(piles_waiting)] == [own]
    studio.check()
    studio.undo()
    studio.check()


def test_what_belongs_to_another_pile_is_of_its_base_and_mass(studio):
    _, _, (wrong,) = lot_of(studio, 3, 1)
    studio.do(describe_base, tarnfield(name="Downholm Sock", millitex=230_000))
    (cone,) = studio.cones(1, "Downholm Sock")
    group = studio.wind(cone, 2)
    studio.dye(group)
    (pile,) = studio.finish(group, red=2)
    for _ in range(2):
        studio.do(belongs_to, wrong, pile)
        assert now_weighs(studio, wrong) == (2, 94_875)
        studio.check()
        studio.undo()
        assert now_weighs(studio, wrong) == (1, 103_125)


def now_weighs(studio, yarn):
    """The base of a row, and its milligrams."""
    return studio.book.ask(lambda c: tuple(c.execute(
        select(Yarn.base, Yarn.mg).where(Yarn.id == yarn)).one()))


def test_only_a_skein_belongs_to_a_pile(studio):
    _, pile, (skein, other) = lot_of(studio, 3, 2)
    with pytest.raises(Refused, match="no tagged skein"):
        studio.do(belongs_to, pile, pile)
    for no_pile in (other, studio.do(find, 1, 97_000)):
        with pytest.raises(Refused, match="comes out of a pile"):
            studio.do(belongs_to, skein, no_pile)


def test_a_skein_gets_a_tag_only_while_it_wears_none(studio):
    _, pile, skeins = lot_of(studio, 3, 1)
    lot, other, strangers = lot_of(studio, 3, 2)
    studio.do(belongs_to, skeins[0], other)
    (tag,) = studio.print(other, 1, why="an extra skein")
    assert studio.done(new_tag, skeins[0], tag).said.startswith(f"tied {shown(studio.code(lot))} ")
    with pytest.raises(Refused, match="wears a tag"):
        studio.do(new_tag, skeins[0], tag)
    assert len(strangers) == 2


def test_a_tag_that_cannot_hang_there_is_refused(studio):
    lot, pile, (skein,) = lot_of(studio, 3, 1)
    other, other_pile, _ = lot_of(studio, 3, 2)
    studio.do(belongs_to, skein, other_pile)
    (foreign,), (void,) = studio.print(pile, 1), studio.print(other_pile, 1, why="for a skein back")
    codes = [shown(studio.code(one)) for one in (lot, other)]
    with pytest.raises(Refused, match=f"{codes[0]} .. was printed for {codes[0]}, and this skein "
                                      f"is of {codes[1]}; nothing was saved"):
        studio.do(new_tag, skein, foreign)
    studio.do(spoil_tags, [void], "jammed")
    with pytest.raises(Refused, match=f"{codes[1]} .. is void"):
        studio.do(new_tag, skein, void)
    (hanging,) = studio.print(pile, 1)
    studio.do(apply_tag, hanging)
    with pytest.raises(Refused, match="hangs on another skein"):
        studio.do(new_tag, skein, hanging)
    (struck,) = studio.print(other_pile, 1, why="jammed")
    studio.undo()
    for tag in (struck, 999):
        with pytest.raises(NotFound, match="This tag is not in the book"):
            studio.do(new_tag, skein, tag)


def test_a_find_of_nobody_knows_what_gets_no_tag(studio):
    _, pile, _ = lot_of(studio, 3, 1)
    (tag,) = studio.print(pile, 1)
    with pytest.raises(Refused, match="this skein is of a lot that nobody knows"):
        studio.do(new_tag, studio.do(find, 1, 97_000), tag)


def test_finds_stand_for_different_skeins(studio):
    _, _, skeins = lot_of(studio, 4, 4)
    studio.do(sell, skeins[:3])
    for _ in range(2):
        studio.do(is_one_of, studio.do(find, 1, 97_000), skeins[:2])
    with pytest.raises(Refused, match="Other finds stand for all of these already"):
        studio.do(is_one_of, studio.do(find, 1, 97_000), skeins[:2])
    studio.undo()
    studio.do(is_one_of, studio.do(find, 1, 97_000), skeins[:3])
    assert counts(studio) == {"table": 4}
    studio.book.ask(adds_up)


@pytest.mark.parametrize("work", [
    lambda s: s.do(find, 99, 97_000),
    lambda s: s.do(is_one_of, s.do(find, 1, 97_000), [999]),
    lambda s: s.do(is_one_of, 999, [1]),
    lambda s: s.do(is_missing_from, 999, 1),
    lambda s: s.do(belongs_to, s.tagged(s.cone(), 1)[1][0], 999),
    lambda s: s.do(new_tag, 999, 1),
    lambda s: s.do(cut, 999, 5, "mini", 0),
    lambda s: s.do(gather, [999]),
    lambda s: s.do(move, [999], To("table")),
    lambda s: s.do(call_second, [999], "a knot"),
    lambda s: s.do(move, s.tagged(s.cone(), 1)[1], To("shelf", place=999)),
    lambda s: s.do(sell, s.tagged(s.cone(), 1)[1], 999),
])
def test_what_is_not_in_the_book_is_not_found(studio, work):
    with pytest.raises(NotFound, match="not in the book"):
        work(studio)


def test_a_find_is_one_of_single_skeins(studio):
    with pytest.raises(Refused, match="one of single skeins only"):
        studio.do(is_one_of, studio.do(find, 1, 97_000), [studio.wind(studio.cone(), 2)])


def test_a_find_weighs_something(studio):
    with pytest.raises(Refused, match="Weigh it"):
        studio.do(find, 1, 0)


def test_a_find_is_not_gathered_or_cut_or_mixed_before_it_is_matched(studio):
    group = studio.wind(studio.cone(), 4)
    studio.dye(group)
    (pile,) = studio.finish(group, red=3)
    found = studio.do(find, 1, 97_000)
    for work in (lambda: studio.do(gather, [found]),
                 lambda: studio.do(cut, found, 5, "mini", 600),
                 lambda: studio.mix(found, pile)):
        with pytest.raises(Refused, match="match "):
            work()
    studio.do(is_missing_from, found, group)
    studio.book.ask(adds_up)
    studio.do(gather, [found])
    assert counts(studio) == {"piled": 3, "in work": 1}
    studio.book.ask(adds_up)


@pytest.mark.parametrize("candidates", [1, 2])
def test_the_lost_mark_is_void_where_it_is_known_which_one_it_was(studio, candidates):
    _, pile, skeins = lot_of(studio, 4, 4)
    studio.do(move, skeins[:candidates], To("lost"))
    found = studio.do(find, 1, 97_000)
    studio.do(is_one_of, found, skeins[:candidates])
    (tag,) = studio.print(pile, 1, why="an extra skein")
    said = studio.done(new_tag, found, tag).said
    void = studio.book.ask(lambda c: list(c.execute(
        select(Tag.mark, Tag.successor).where(Tag.void.is_not(None)))))
    assert [successor for _, successor in void] == ([tag] if candidates == 1 else [])
    assert said.endswith("is void") == (candidates == 1)
    studio.check()
    studio.undo()
    assert studio.book.ask(lambda c: list(c.execute(
        select(Tag.mark).where(Tag.void.is_not(None))))) == []
