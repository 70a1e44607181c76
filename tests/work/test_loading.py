"""Soak, wash, spin, rail, steamer."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind
from app.problems import NotFound, Refused
from app.work.bundling import make_plates, take_off
from app.work.loading import into_load


def test_half_a_lot_may_be_in_another_load(studio):
    group = studio.wind(studio.cone(), 8)
    lot = studio.dye(group)
    left, right = studio.split(group, 4, 4)
    first = studio.do(into_load, "wash", yarn=[left])
    second = studio.do(into_load, "wash", yarn=[right])
    assert [link.thing for link in studio.origins(left, "load")] == [first]
    assert [link.thing for link in studio.origins(right, "load")] == [second]
    assert [link.thing for link in studio.origins(left, "lot")] == [lot]


def test_a_disc_is_read_as_it_was_when_it_happened(studio):
    first, second = studio.wind(studio.cone(), 6), studio.wind(studio.cone(), 6)
    from app.work.bundling import tie_on
    studio.do(tie_on, studio.discs[0], [first])
    yesterday = studio.clock.now
    studio.do(take_off, studio.discs[0])
    studio.do(tie_on, studio.discs[0], [second])
    late = studio.do(into_load, "soak", discs=[studio.discs[0]], happened=yesterday)
    now = studio.do(into_load, "soak", discs=[studio.discs[0]])
    assert [link.thing for link in studio.origins(first, "load")] == [late]
    assert [link.thing for link in studio.origins(second, "load")] == [now]


def test_an_empty_load_and_a_free_disc_are_refused(studio):
    with pytest.raises(Refused, match="Nothing is in the load"):
        studio.do(into_load, "wash")
    with pytest.raises(NotFound, match="hangs on nothing"):
        studio.do(into_load, "wash", discs=[studio.discs[3]])


def test_what_was_divided_goes_in_as_what_it_became(studio):
    group = studio.wind(studio.cone(), 8)
    studio.split(group, 4, 4)
    with pytest.raises(Refused, match="divided"):
        studio.do(into_load, "wash", yarn=[group])


def test_the_sentence_says_step_and_count(studio):
    group = studio.wind(studio.cone(), 1)
    assert studio.done(into_load, "rail", yarn=[group]).said == "rail 1: 1 skein"


def test_the_sentence_says_the_place_by_its_words(studio):
    group = studio.wind(studio.cone(), 8)
    tub, rail = (studio.do(make_plates, kind, [2], words)[0]
                 for kind, words in ((Kind.VESSEL, "soak tub"), (Kind.RAIL, "heater side")))
    said = studio.done(into_load, "soak", yarn=[group], plate=tub).said
    assert said == "soak 1 in soak tub 2: 8 skeins"
    assert studio.done(into_load, "rail", yarn=[group], plate=rail).said == (
        "rail 2 on rail 2: 8 skeins")
    with pytest.raises(NotFound, match="plate is not in the book; nothing was saved"):
        studio.do(into_load, "wash", yarn=[group], plate=999)


def test_what_is_off_is_kept_with_the_load_and_told(studio):
    group = studio.wind(studio.cone(), 8, "red", studio.discs[0])
    studio.do(into_load, "soak", yarn=[group])
    studio.clock.now += timedelta(hours=40)
    done = studio.done(into_load, "wash", discs=[studio.discs[0]])
    assert done.findings == ("Disc 031 was in the soak for 40 hours: smell at it.",)
    assert [link.thing for link in studio.origins(group, "load")] == [1, done.answer]
