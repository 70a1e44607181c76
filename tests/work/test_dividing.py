"""Yarn becomes other yarn: whole milligrams, whole members, and a row that is closed for good."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import select

from app.problems import Refused
from app.records import Part, Yarn
from app.store.deed import Deed
from app.work.dividing import Rest, close, make, must_be_whole, rest, skeins
from tests.makers import EACH_MG, Studio


def masses(studio: Studio, rows: list[int]) -> list[int]:
    return studio.book.ask(lambda c: list(c.execute(
        select(Yarn.mg).where(Yarn.id.in_(rows)).order_by(Yarn.id)).scalars()))


def test_what_is_left_of_a_row_is_what_was_not_taken_out(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 7)
    studio.do(make, "group", [(group, 3)])
    assert studio.do(lambda deed: repr(rest(deed, group))) == repr(Rest(4, 4 * EACH_MG))


def test_the_last_part_takes_the_milligrams_that_do_not_divide(studio: Studio) -> None:
    def odd(deed: Deed) -> list[int]:
        row = deed.add(Yarn(kind="group", base=1, put_up="skein", count=3, mg=100))
        return [make(deed, "group", [(row, 1)]) for _ in range(3)]
    assert masses(studio, studio.do(odd)) == [33, 33, 34]


@given(st.integers(1, 30), st.integers(0, 10**6), st.randoms(use_true_random=False))
def test_masses_add_up_however_a_row_is_divided(count: int, mg: int, random: object) -> None:
    left, total, parts = count, mg, []
    while left:
        took = random.randint(1, left)  # type: ignore[attr-defined]
        share = total if took == left else total * took // left
        parts.append(share)
        left, total = left - took, total - share
    assert sum(parts) == mg
    assert min(parts) >= 0


def test_more_than_is_left_cannot_be_taken(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    for took in (4, 0, -1):
        with pytest.raises(Refused, match=f"There are 3 left, not {took}; nothing was saved"):
            studio.do(make, "group", [(group, took)])


def test_a_row_of_alike_ties_keeps_them_and_of_unlike_wears_none(studio: Studio) -> None:
    a, b, c = (studio.wind(studio.cone(), 2, tie) for tie in ("red", "red", "blue"))
    alike, unlike = studio.do(lambda deed: [
        make(deed, "group", [(a, 1), (b, 1)]), make(deed, "group", [(a, 1), (c, 1)])])
    ties = studio.book.ask(lambda c: dict(c.execute(select(Yarn.id, Yarn.tie)).all()))
    assert (ties[alike], ties[unlike]) == ("red", None)


def test_one_skein_can_become_five_minis(studio: Studio) -> None:
    _, (skein,) = studio.tagged(studio.cone(), 1)
    minis = studio.do(make, "pile", [(skein, 1)], "scanned", 5, "mini")
    part = studio.book.ask(lambda c: c.execute(select(Part).where(Part.child == minis)).one())
    assert (part.took, part.gave, part.mg) == (1, 5, EACH_MG)
    studio.check()


def test_a_row_is_closed_once(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    studio.do(close, group)
    with pytest.raises(Refused, match=r"already divided, mixed or counted; .* Scan what it became"):
        studio.do(close, group)


def test_only_what_was_whole_then_goes_into_a_bath_or_load(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    wound = studio.clock.now
    studio.clock.now += timedelta(hours=1)
    studio.split(group, 2, 2)
    with pytest.raises(Refused, match=r"This yarn was divided on .*; nothing was saved"):
        studio.do(must_be_whole, group)
    studio.do(must_be_whole, group, happened=wound)


def test_what_was_taken_back_is_not_in_the_book_any_more(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.undo()
    for look in (rest, must_be_whole):
        with pytest.raises(Refused, match="not in the book any more"):
            studio.do(look, group)


def test_counts_are_said_with_their_word() -> None:
    assert [skeins(1), skeins(2), skeins(1, "mini"), skeins(5, "mini")] == [
        "1 skein", "2 skeins", "1 mini", "5 minis"]
