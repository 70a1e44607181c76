"""The rinses of a wash, and what to do from how each looked."""

import pytest

from app.calculations.rinses import After
from app.lookups.rinsing import rinsing
from app.work.loading import into_load
from app.work.readings import bleed, rinse


def looked(studio, *looks):
    load = studio.do(into_load, "wash", yarn=[studio.wind(studio.cone(), 2)])
    for number, look in enumerate(looks, 1):
        studio.do(rinse, load, number)
        if look is not None:
            studio.do(bleed, load, look)
    return studio.book.ask(rinsing, load)


@pytest.mark.parametrize(("looks", "then"), [
    ((), None), ((None,), None), ((2,), After.RINSE_AGAIN), ((2, 1), After.RINSE_AGAIN),
    ((2, 1, 0), After.CLEAR), ((2, 2), After.BLEEDS), ((2, 1, 1), After.BLEEDS),
    ((2, None, 1), After.RINSE_AGAIN), ((0,), After.CLEAR),
])
def test_what_comes_next(studio, looks, then):
    found = looked(studio, *looks)
    assert (found.rinses, found.looks, found.next) == (len(looks), looks, then)


def test_a_look_may_be_put_right_and_a_number_may_stand_for_those_before(studio):
    found = looked(studio, 2)
    studio.do(bleed, found.load, 1)
    studio.do(rinse, found.load, 3)
    assert studio.book.ask(rinsing, found.load).looks == (1, None, None)
    studio.undo()
    assert studio.book.ask(rinsing, found.load).looks == (1,)
