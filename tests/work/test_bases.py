"""Describing bases: a version from a delivery on, in words that make a hundred per cent."""

import pytest
from sqlalchemy import select

from app.problems import BadInput
from app.records import BaseVersion, Cone, PutUp
from app.work.bases import BaseWords, describe_base
from tests.makers import Studio, tarnfield


def version(studio: Studio, number: int) -> BaseVersion:
    return studio.book.ask(lambda c: c.execute(
        select(BaseVersion).where(BaseVersion.id == number)).one())  # type: ignore[return-value]


def test_the_next_words_are_the_next_version_and_the_old_one_stays(studio: Studio) -> None:
    again = studio.done(describe_base, tarnfield(fibre="20 % polyamide, 80 % wool"))
    assert again.said == "described Tarnfield 4-ply, version 2: 80 % wool, 20 % polyamide"
    assert (version(studio, 1).fibre, version(studio, again.answer).fibre) == (
        "100 % wool", "80 % wool, 20 % polyamide")
    assert version(studio, again.answer).base == version(studio, 1).base


def test_cones_keep_the_version_they_came_with(studio: Studio) -> None:
    old = studio.cone()
    new_version = studio.do(describe_base, tarnfield(fibre="75 % wool, 25 % polyamide"))
    new = studio.cone()
    kept = studio.book.ask(lambda c: dict(c.execute(select(Cone.id, Cone.base_version)).all()))
    assert kept == {old: studio.version, new: new_version}


def test_another_name_is_another_base(studio: Studio) -> None:
    made = studio.do(describe_base, tarnfield(name="Gossamer Lamb"))
    assert version(studio, made).number == 1
    assert version(studio, made).base != version(studio, 1).base


def test_put_ups_are_described_with_their_base(studio: Studio) -> None:
    rows = studio.book.ask(lambda c: c.execute(
        select(PutUp.name, PutUp.turns, PutUp.nominal_mm).order_by(PutUp.id)).all())
    assert [tuple(row) for row in rows] == [("skein", 275, 388_000), ("mini", 55, 77_600)]


@pytest.mark.parametrize("fibre", ["80 % wool", "60 % wool, 60 % linen", "wool", ""])
def test_fibres_that_do_not_make_a_hundred_are_not_taken(studio: Studio, fibre: str) -> None:
    with pytest.raises(BadInput):
        studio.do(describe_base, tarnfield(fibre=fibre))
    assert studio.last() == 5


def test_an_undone_description_does_not_give_its_number_away(studio: Studio) -> None:
    words: BaseWords = tarnfield(fibre="75 % wool, 25 % polyamide")
    studio.do(describe_base, words)
    studio.undo()
    assert version(studio, studio.do(describe_base, words)).number == 3
    old = studio.cone()
    assert studio.book.ask(lambda c: c.execute(
        select(Cone.base_version).where(Cone.id == old)).scalar()) == 3
