"""MIXED, SPLIT and lost: what cannot be told apart is one row with exact counts."""

import pytest
from sqlalchemy import select

from app.lookups.discs import disc_of, yarn_on_disc
from app.problems import Refused
from app.records import Told
from app.work.bases import describe_base
from app.work.bundling import tie_on
from app.work.mixing import lose, mix, recognise, split
from app.work.winding import Drawn, Wound, wind
from tests.makers import EACH_MG, Studio, tarnfield


def groups(studio: Studio, *counts: int, discs: bool = False) -> list[int]:
    return [studio.wind(studio.cone(), count, disc=studio.discs[place] if discs else None)
            for place, count in enumerate(counts)]


def test_what_met_is_one_row_of_all_its_members(studio: Studio) -> None:
    done = studio.done(mix, groups(studio, 7, 5))
    assert done.said == "mixed 12 skeins of 2 origins"
    assert [(k.least, k.most, k.of) for k in studio.origins(done.answer)] == [
        (7, 7, 12), (5, 5, 12)]
    studio.check()


def test_one_thing_alone_has_not_met_anything(studio: Studio) -> None:
    (group,) = groups(studio, 7)
    for alone in ([group], [group, group], []):
        with pytest.raises(Refused, match="Only one thing was scanned"):
            studio.do(mix, alone)


def test_what_can_be_told_apart_is_not_mixed(studio: Studio) -> None:
    (group,) = groups(studio, 7)
    studio.do(describe_base, tarnfield(name="Gossamer Lamb"))
    lace = studio.wind(studio.cones(1, "Gossamer Lamb")[0], 3)
    (minis,) = studio.do(wind, [Wound((Drawn(1, 3 * 82_500),), 3, "mini", "red")])
    for other in (lace, minis):
        with pytest.raises(Refused, match="they can be told apart; nothing was saved"):
            studio.do(mix, [group, other])
    _, skeins = studio.tagged(studio.cone(), 2)
    with pytest.raises(Refused, match="A skein with its tag can be told apart"):
        studio.do(mix, skeins)


def test_the_cord_of_the_first_holds_all_and_the_other_disc_is_free(studio: Studio) -> None:
    pool = studio.do(mix, groups(studio, 7, 5, discs=True))
    assert studio.book.ask(disc_of, pool) == "031"
    assert studio.book.ask(yarn_on_disc, studio.discs[1], studio.clock.now) == []
    studio.do(tie_on, studio.discs[1], groups(studio, 2))


def test_a_disc_that_was_scanned_takes_it_all(studio: Studio) -> None:
    pool = studio.do(mix, groups(studio, 7, 5, discs=True), studio.discs[4])
    assert studio.book.ask(disc_of, pool) == "035"
    for free in studio.discs[:2]:
        assert studio.book.ask(yarn_on_disc, free, studio.clock.now) == []


def test_two_piles_pushed_together_stay_a_pile(studio: Studio) -> None:
    piles = [studio.finish(group, red=2)[0] for group in groups(studio, 2, 2)]
    studio.do(mix, piles)
    assert {key[0] for key in studio.present()} == {"piled"}


def test_what_was_mixed_is_not_mixed_again(studio: Studio) -> None:
    a, b, c = groups(studio, 2, 2, 2)
    studio.mix(a, b)
    with pytest.raises(Refused):
        studio.mix(a, c)


def test_a_split_makes_a_row_of_each_part_and_gives_the_discs_in_order(studio: Studio) -> None:
    (group,) = groups(studio, 8, discs=True)
    done = studio.done(split, group, [4, 3, 1], [studio.discs[5], studio.discs[6]])
    assert done.said == "split 8 into 4 and 3 and 1"
    assert [studio.book.ask(disc_of, part) for part in done.answer] == ["031", "036", "037"]
    studio.check()


def test_parts_without_a_disc_stay_on_the_cord(studio: Studio) -> None:
    (group,) = groups(studio, 8, discs=True)
    parts = studio.do(split, group, [4, 4])
    assert studio.book.ask(yarn_on_disc, studio.discs[0], studio.clock.now) == parts


@pytest.mark.parametrize("counts", [[4, 3], [8], [8, 0], [9, -1], []])
def test_parts_that_do_not_make_the_whole_are_counted_again(
    studio: Studio, counts: list[int]
) -> None:
    (group,) = groups(studio, 8)
    with pytest.raises(Refused, match=r"do not make 8; nothing was saved\. Count both parts"):
        studio.do(split, group, counts)


def test_what_was_lost_stays_a_member_of_its_pool(studio: Studio) -> None:
    pool = studio.mix(*groups(studio, 7, 5))
    kept, lost = studio.do(lose, pool, 2)
    assert {k.of for k in studio.origins(lost)} == {2}
    assert {key[0]: a.count for key, a in studio.present().items()} == {"in work": 10, "lost": 2}
    assert sum(k.expected for row in (kept, lost) for k in studio.origins(row)) == 12
    studio.check()


def test_all_of_a_row_can_be_lost_and_no_more(studio: Studio) -> None:
    (group,) = groups(studio, 3)
    for count in (4, 0):
        with pytest.raises(Refused, match=f"{count} of 3 cannot be lost"):
            studio.do(lose, group, count)
    (lost,) = studio.do(lose, group, 3)
    assert {key[0]: a.count for key, a in studio.present().items()} == {"lost": 3}
    assert studio.origins(lost)[0].word == "known"


def test_a_tagged_skein_is_lost_with_its_tag(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    assert studio.do(lose, skeins[0], 1) == skeins[:1]
    assert {key[0]: (a.count, a.mg) for key, a in studio.present().items()} == {
        "lost": (1, EACH_MG), "table": (1, EACH_MG)}
    studio.check()


def test_a_skein_is_recognised_once(studio: Studio) -> None:
    a, b = groups(studio, 7, 5)
    pool = studio.mix(a, b)
    three, _ = studio.split(pool, 3, 9)
    assert studio.done(recognise, three, pool, a).said == "recognised 3 skeins"
    part, _ = studio.split(three, 1, 2)
    for again in (three, part):
        with pytest.raises(Refused, match="This was told already, for it or a part of it"):
            studio.do(recognise, again, pool, b)


def test_only_what_came_out_of_a_pool_is_recognised_at_it(studio: Studio) -> None:
    a, b, c = groups(studio, 4, 3, 2)
    pool = studio.mix(a, b)
    nested = studio.mix(pool, c)
    one, _ = studio.split(nested, 1, 8)
    for strange, at in ((groups(studio, 2)[0], pool), (pool, pool), (one, pool)):
        with pytest.raises(Refused, match="did not come straight out of that pool"):
            studio.do(recognise, strange, at, a)
    with pytest.raises(Refused, match="Nothing of that went into this pool"):
        studio.do(recognise, one, nested, a)
    studio.do(recognise, one, nested, pool)
    studio.do(recognise, one, pool, a)  # step by step it is told
    assert [(k.thing, k.word) for k in studio.origins(one)] == [(1, "known")]
    studio.check()


def test_more_told_than_went_in_is_recorded_and_said(studio: Studio) -> None:
    a, b = groups(studio, 2, 3)
    pool = studio.mix(a, b)
    three, _ = studio.split(pool, 3, 2)
    done = studio.done(recognise, three, pool, a)
    assert done.findings == ("These counts do not fit: 3 told of 2 that went in.",)
    assert studio.book.ask(lambda c: c.execute(select(Told.count)).scalar()) == 3
