"""The stages that some yarn went through, each with the rows that were there."""

from collections.abc import Sequence
from fractions import Fraction

import pytest
from sqlalchemy import Connection

from app.lookups.certainty import Link
from app.lookups.finishing import NO_TIE
from app.lookups.origins import members_of
from app.lookups.present import leaves
from app.lookups.skeins import now_of
from app.lookups.things import Found, by_code
from app.lookups.thread import thread
from app.lookups.trail_stages import Line, Stage, bare_cone, split_words, stages
from app.lookups.walks import below
from app.work.finishing import finish
from app.work.remaking import gather
from tests.deeds import into_load
from tests.makers import Studio


def line_of(connection: Connection, thing: Found, studio: Studio) -> Line:
    members = members_of(connection, thing, studio.clock.now)
    ids = frozenset(row for yarn in members for row in below(connection, "yarn", yarn))
    return Line(thing, members, ids, thread(connection, ids), leaves(connection, ids))


def of(studio: Studio, code: str | None) -> dict[str, Stage]:
    def ask(connection: Connection) -> Sequence[Stage]:
        found = by_code(connection, code or "")
        assert found is not None
        return stages(connection, line_of(connection, found, studio))
    return {stage.kind: stage for stage in studio.book.ask(ask)}


def link(least: int, most: int, of: int) -> Link:
    return Link(1, "one of a pool", least, most, Fraction(1), of, Fraction(1), "counted")


@pytest.mark.parametrize(("links", "words"), [
    ([link(12, 12, 12)], "12 skeins"), ([link(1, 1, 1)], "1 skein"),
    ([link(7, 7, 12), link(5, 5, 12)], "7 + 5"),
    ([link(0, 4, 12), link(0, 4, 12)], "0 to 4 of 12"),
])
def test_how_members_are_shared_is_said_shortly(links: list[Link], words: str) -> None:
    assert split_words(tuple(links)) == words


def test_each_stage_holds_the_rows_that_were_there(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4, disc=studio.discs[0])
    studio.dye(group)
    studio.do(into_load, "wash", [group])
    (pile,) = studio.finish(group, red=4)
    skeins = studio.tag(pile, 3)
    found = of(studio, studio.code(1))
    assert list(found) == ["delivery", "cone", "disc", "dye lot", "wash", "pile", "tags", "now"]
    assert [found[kind].rows for kind in ("disc", "dye lot", "wash", "pile", "tags")] == [
        (group,), (group,), (group,), (pile,), tuple(skeins)]
    assert set(found["now"].rows) == {pile, *skeins}


def test_a_lot_that_went_to_two_loads_says_how_many_were_in_each(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8)
    studio.dye(group)
    left, right = studio.split(group, 5, 3)

    def said(step: str) -> tuple[str, str]:
        stage = of(studio, studio.code(1))[step]
        return stage.code, stage.count
    studio.do(into_load, "wash", [left])
    assert said("wash") == ("load 1", "5 of 8")
    studio.do(into_load, "wash", [right])
    assert said("wash") == ("2 loads", "5 + 3")
    studio.do(into_load, "spin", [left, right])
    assert said("spin") == ("load 3", "8 skeins")
    studio.do(into_load, "wash", [left])
    assert said("wash") == ("3 loads", "5 + 5 + 3 of 8")
    again = studio.split(studio.mix(left, right), 4, 4)
    studio.do(into_load, "rail", [again[0]])
    assert said("rail") == ("load 5", "4 of 8")


def test_of_a_cone_only_what_came_out_of_it_is_meant(studio: Studio) -> None:
    one, two = studio.cones(2)
    a, b = studio.wind(one, 3, disc=studio.discs[0]), studio.wind(two, 2, disc=studio.discs[1])
    pool = studio.mix(a, b)
    studio.dye(pool)
    found = of(studio, "C00017")
    assert found["disc"].rows == (a, pool)  # and not the group of the other cone
    assert found["dye lot"].count == "3 of 5"


def test_piles_that_met_are_counted_once(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 3, "red"), studio.wind(studio.cone(), 2, "blue")
    studio.dye(a, b)
    (pa,), (pb,) = studio.finish(a, red=3), studio.finish(b, blue=2)
    both = studio.mix(pa, pb)
    found = of(studio, studio.code(1))
    assert (found["pile"].code, found["pile"].rows) == ("5 counted", (both,))


def test_a_lot_that_was_overdyed_counts_its_own_piles_and_tags_and_not_those_above_it(
    studio: Studio,
) -> None:
    first, skeins = studio.tagged(studio.cone(), 7)
    again = studio.do(gather, skeins[:6])
    second = studio.dye(again)
    (pile,) = studio.do(finish, [again], {NO_TIE: 6})
    studio.tag(pile, 5)
    over = of(studio, studio.code(second))
    assert (over["pile"].code, over["pile"].rows) == ("6 counted", (pile,))
    assert over["tags"].code == "5 of 5"
    under = of(studio, studio.code(first))
    assert (under["pile"].code, under["tags"].code) == ("7 counted", "6 of 6")


def test_a_skein_tells_the_last_count_that_it_came_out_of(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 7)
    again = studio.do(gather, skeins[:6])
    studio.dye(again)
    (pile,) = studio.do(finish, [again], {NO_TIE: 6})
    (last, *_) = studio.tag(pile, 6)
    found = of(studio, studio.book.ask(now_of, last).mark)
    assert (found["pile"].code, found["tags"].code) == ("6 counted", "6 of 6")


def test_more_than_three_lots_of_a_cone_are_only_numbered(studio: Studio) -> None:
    cone = studio.cone()
    for _ in range(5):
        studio.dye(studio.wind(cone, 1))
    found = of(studio, "C00017")
    assert found["dye lots"].code == "2 more"


def test_a_cone_of_which_nothing_was_wound_has_two_stages(studio: Studio) -> None:
    studio.cones(2)
    found = studio.book.ask(lambda c: list(bare_cone(c, by_code(c, "C00017") or _nothing())))
    assert [(stage.kind, stage.count) for stage in found] == [
        ("delivery", "2 cones"), ("cone", "nothing wound yet")]
    assert studio.book.ask(lambda c: list(bare_cone(c, _nothing()))) == []


def _nothing() -> Found:
    return Found("lot", 1, "2615R6F", "")
