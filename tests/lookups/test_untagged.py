"""Skeins without a tag: of which lot they are, or may be."""

from app.lookups.things import by_code
from app.lookups.untagged import bare_for, finds_waiting, lot_meant, untagged_like, untagged_of
from app.work.bases import describe_base
from app.work.matching import belongs_to, find, is_missing_from, is_one_of, new_tag
from app.work.moving import To, move
from tests.makers import Studio, tarnfield


def short_lot(studio: Studio) -> tuple[int, int, list[int]]:
    """Six dyed, five counted and tagged: the lot, the row that was short, the skeins."""
    group = studio.wind(studio.cone(), 6)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=5)
    return lot, group, studio.tag(pile, 5)


def test_a_find_may_be_the_missing_one_or_one_of_the_tagged(studio: Studio) -> None:
    lot, group, skeins = short_lot(studio)
    found = studio.do(find, 1, 97_000)
    ((waiting, gap),) = studio.book.ask(untagged_of, lot).may_be
    assert (waiting.yarn, waiting.base, waiting.mg) == (found, "Tarnfield 4-ply", 97_000)
    assert (gap.missing, gap.short, gap.tagged) == (group, 1, tuple(skeins))
    assert [one.yarn for one in studio.book.ask(finds_waiting)] == [found]


def test_a_find_may_be_the_one_that_was_counted_and_never_tagged(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 6)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=6)
    skeins = studio.tag(pile, 5)
    studio.do(find, 1, 97_000)
    ((_, gap),) = studio.book.ask(untagged_of, lot).may_be
    assert (gap.missing, gap.waiting, gap.tagged) == (None, pile, tuple(skeins))


def test_a_find_of_another_base_or_put_up_is_not_of_the_lot(studio: Studio) -> None:
    lot, _, _ = short_lot(studio)
    studio.do(describe_base, tarnfield(name="Downholm Sock"))
    studio.do(find, 2, 97_000)
    studio.do(find, 1, 19_000, "mini")
    assert studio.book.ask(untagged_of, lot).may_be == ()
    assert len(studio.book.ask(finds_waiting)) == 2


def test_what_was_matched_wants_a_tag_until_it_wears_one(studio: Studio) -> None:
    lot, group, skeins = short_lot(studio)
    found = studio.do(find, 1, 97_000)
    studio.do(is_missing_from, found, group)
    told = studio.book.ask(untagged_of, lot)
    assert ([one.yarn for one in told.wanting], told.may_be) == ([found], ())
    assert studio.book.ask(finds_waiting) == ()
    pile = studio.book.ask(lot_meant, studio.book.ask(by_code, studio.code(lot))).pile
    (tag,) = studio.print(pile, 1, why="an extra skein")
    assert [one.yarn for one in studio.book.ask(bare_for, tag)] == [found]
    studio.do(new_tag, found, tag)
    assert studio.book.ask(untagged_of, lot).wanting == ()
    studio.do(move, [skeins[0], found], To("lost"))
    assert studio.book.ask(untagged_of, lot).wanting == ()


def test_a_find_that_is_one_of_a_lots_is_of_the_lot(studio: Studio) -> None:
    lot, _, skeins = short_lot(studio)
    found = studio.do(find, 1, 97_000)
    studio.do(is_one_of, found, skeins)
    assert [one.yarn for one in studio.book.ask(untagged_of, lot).wanting] == [found]


def test_one_of_two_lots_wants_a_tag_of_neither(studio: Studio) -> None:
    one, _, skeins = short_lot(studio)
    two, _, others = short_lot(studio)
    studio.do(is_one_of, studio.do(find, 1, 97_000), [skeins[0], others[0]])
    assert studio.book.ask(untagged_of, one).wanting == ()
    assert studio.book.ask(untagged_of, two).wanting == ()


def test_a_skein_that_wore_anothers_tag_wants_one_of_its_own_lot(studio: Studio) -> None:
    wrong, (skein, *_) = studio.tagged(studio.cone(), 3)
    right, _ = studio.tagged(studio.cone(), 2)
    meant = studio.book.ask(lot_meant, studio.book.ask(by_code, studio.code(right)))
    studio.do(belongs_to, skein, meant.pile)
    assert [one.yarn for one in studio.book.ask(untagged_of, right).wanting] == [skein]
    assert studio.book.ask(untagged_of, wrong).wanting == ()


def test_while_a_pile_waits_its_tags_are_for_its_own_skeins(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 6)
    studio.dye(group)
    (pile,) = studio.finish(group, red=5)
    studio.do(is_missing_from, studio.do(find, 1, 97_000), group)
    (tag,) = studio.print(pile, 1)
    assert studio.book.ask(bare_for, tag) == ()


def test_a_tag_means_the_lot_that_it_names_and_a_cone_means_none(studio: Studio) -> None:
    lot, (skein, *_) = studio.tagged(studio.cone(), 2)
    mark = next(one.code for one in studio.book.ask(lambda c: [by_code(c, "C00017")]) if one)
    assert studio.book.ask(lot_meant, studio.book.ask(by_code, mark)) is None
    uncounted = studio.dye(studio.wind(studio.cone(), 2))
    meant = studio.book.ask(lot_meant, studio.book.ask(by_code, studio.code(uncounted)))
    assert meant.pile is None
    assert (lot, skein) != (uncounted, 0)


def test_a_find_may_be_the_skein_whose_tag_was_lost(studio: Studio) -> None:
    _, (skein, other) = studio.tagged(studio.cone(), 2)
    studio.do(find, 1, 20_500, "mini")
    found = studio.do(find, 1, 97_000)
    assert studio.book.ask(untagged_like, skein) is None
    studio.do(move, [skein], To("lost"))
    like = studio.book.ask(untagged_like, skein)
    assert like is not None
    assert [(one.yarn, gap.tagged) for one, gap in like.may_be] == [(found, (skein,))]
    assert studio.book.ask(untagged_like, other) is None
