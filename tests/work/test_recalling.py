"""A recall list is kept with how much it held, in earnest or for practice."""

import pytest

from app.lookups.past_recalls import past_recalls
from app.problems import Refused
from app.records import Recall
from app.work.recalling import keep_recall
from tests.deeds import send
from tests.makers import EACH_MG, Studio


def test_a_list_is_kept_with_what_it_accounts_for(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 3)
    studio.do(send, skeins[:1])
    began = studio.clock.now
    done = studio.done(keep_recall, "cone", cone, began, practice=False)
    assert done.said == (
        "kept the recall of cone C·0001·7, took 60 seconds: 2 of 3 accounted for")
    row = studio.book.ask(lambda c: c.execute(Recall.__table__.select()).one())
    assert (row.practice, row.skeins, row.mg, row.accounted, row.began) == (
        0, 3, 3 * EACH_MG, 2, began)
    studio.check()


def test_the_same_list_is_kept_once_until_something_changed(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 3)
    began = studio.clock.now
    studio.do(keep_recall, "cone", cone, began, practice=True)
    with pytest.raises(Refused, match="kept at .* already and holds the same"):
        studio.do(keep_recall, "cone", cone, began, practice=True)
    studio.do(send, skeins[:1])
    studio.do(keep_recall, "cone", cone, began, practice=True)
    studio.do(keep_recall, "cone", cone, began, practice=False)
    studio.do(keep_recall, "cone", cone, studio.clock.now, practice=True)
    assert len(studio.book.ask(past_recalls, "cone", cone)) == 4


def test_nothing_comes_of_a_person(studio: Studio) -> None:
    with pytest.raises(Refused, match="Nothing comes of a winder"):
        studio.do(keep_recall, "winder", 1, studio.clock.now, practice=True)
