"""Recall lists that were kept: of one thing first, then what was practised on others."""

from datetime import timedelta

from app.lookups.past_recalls import past_recalls
from app.work.recalling import keep_recall
from tests.makers import Studio


def keep(studio: Studio, cone: int, *, practice: bool, minutes: int = 4) -> None:
    """Asked for so long before it is kept; the clock goes on a minute with the deed."""
    began = studio.clock.now - timedelta(minutes=minutes - 1)
    studio.do(keep_recall, "cone", cone, began, practice=practice)


def test_those_of_a_thing_stand_first_then_what_was_practised_on_others(studio: Studio) -> None:
    one, other = studio.cones(2)
    studio.tagged(one, 3)
    keep(studio, other, practice=False)
    keep(studio, other, practice=True, minutes=9)
    keep(studio, one, practice=False)
    keep(studio, one, practice=True, minutes=2)
    assert [(row.on, row.practice, row.seconds // 60, row.count, row.accounted)
            for row in studio.book.ask(past_recalls, "cone", one)] == [
        ("cone C·0001·7", True, 2, 3, 3), ("cone C·0001·7", False, 4, 3, 3),
        ("cone C·0002·K", True, 9, 0, 0)]
    assert [row.practice for row in studio.book.ask(past_recalls)] == [True, False, True, False]


def test_one_that_was_taken_back_was_not_kept(studio: Studio) -> None:
    keep(studio, studio.cone(), practice=True)
    studio.undo()
    assert studio.book.ask(past_recalls) == ()
