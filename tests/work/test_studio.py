"""The studio's choices, and a person's word that the clock is right."""

import pytest
from sqlalchemy import select

from app.records import Setting
from app.work.studio import choose, confirm_day
from tests.makers import Studio


def kept(studio: Studio) -> list[tuple[str, str]]:
    return [tuple(row) for row in studio.book.ask(
        lambda c: c.execute(select(Setting.key, Setting.value).order_by(Setting.id)).all())]


def test_a_choice_is_a_new_row_and_the_old_one_stays(studio: Studio) -> None:
    studio.do(choose, {"name": "Quernlow Dyeyard"})
    studio.do(choose, {"name": "Quernlow Dye Yard"})
    assert kept(studio) == [("name", "Quernlow Dyeyard"), ("name", "Quernlow Dye Yard")]


def test_only_what_differs_is_written(studio: Studio) -> None:
    done = studio.done(choose, {"name": "Quernlow Dyeyard", "address": ""})
    assert done.said == "chose name"
    assert kept(studio) == [("name", "Quernlow Dyeyard")]
    assert studio.done(choose, {"name": "Quernlow Dyeyard"}).said == "chose nothing new"


def test_what_cannot_be_chosen_is_a_fault(studio: Studio) -> None:
    with pytest.raises(KeyError, match="no such settings"):
        studio.do(choose, {"colour of the door": "red"})


def test_the_day_is_confirmed_by_a_person(studio: Studio) -> None:
    assert studio.done(confirm_day).said == "confirmed the day: 6 Apr 2026"
