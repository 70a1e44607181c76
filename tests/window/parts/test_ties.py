"""Ties are a patch and a word for every thread."""

import json

import pytest

from app.lookups.studio import DEFAULTS
from app.window.look.look import Size
from app.window.parts.tie_patch import TiePatch
from app.window.parts.ties import PLAIN, THREADS, Ties, thread_colour, threads_of


def words(ties):
    return [patch.accessibleName() for patch in ties.findChildren(TiePatch) if not patch.isHidden()]


def test_every_thread_of_the_rotation_has_its_colour():
    assert set(json.loads(DEFAULTS["tie colours"])) == set(THREADS)
    assert len(set(THREADS.values())) == len(THREADS)


@pytest.mark.parametrize(("tie", "threads"), [
    ("red", ("red",)), ("red and yellow", ("red", "yellow")), ("", ())])
def test_a_tie_has_one_thread_or_two(tie, threads):
    assert threads_of(tie) == threads


def test_a_thread_of_the_studios_own_is_shown_by_its_name_or_plain_with_its_word():
    assert thread_colour("turquoise") == "#40e0d0"
    assert thread_colour("barn door") == PLAIN


def test_a_join_shows_a_patch_for_each_thread(qtbot):
    ties = Ties("red and yellow")
    qtbot.addWidget(ties)
    assert words(ties) == ["red tie", "yellow tie"]
    ties.show_tie("blue")
    assert (words(ties), ties.accessibleName()) == (["blue tie"], "blue ties")


def test_what_is_read_across_the_room_does_not_grow_with_the_text_and_the_rest_does(qtbot, dressed):
    large, small = Ties("red"), Ties("red", Size.PLAIN)
    for one in (large, small):
        qtbot.addWidget(one)
    before = large.sizeHint().height(), small.sizeHint().height()
    dressed(2.0)
    qtbot.wait(10)
    assert large.sizeHint().height() <= before[0] + 8
    assert Ties("red", Size.PLAIN).sizeHint().height() > before[1]
