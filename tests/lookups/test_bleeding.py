"""What was seen of a lot's water, and how sure it is that this lot bled."""

from app.lookups.bleeding import Bled, bled
from app.lookups.now import NOW
from app.work.mixing import split
from app.work.readings import bleed
from tests.lookups.waters import NAVY, PALE, lot_of, washed


def test_a_lot_alone_in_its_water_bled_itself(studio):
    row, lot = lot_of(studio, "N", NAVY)
    assert studio.book.ask(bled, [lot], NOW) == {}
    washed(studio, row, how=2)
    assert studio.book.ask(bled, [lot], NOW) == {lot: Bled(2, alone=True)}
    assert studio.book.ask(bled, [lot], NOW)[lot].words == "bleeds strongly"
    washed(studio, row, how=0)
    assert studio.book.ask(bled, [lot], NOW)[lot].words == ""


def test_beside_another_lot_it_is_only_known_that_the_water_bled(studio):
    (one, a), (two, b) = lot_of(studio, "N", NAVY), lot_of(studio, "P", PALE)
    load = washed(studio, one, two, how=1)
    assert studio.book.ask(bled, [a, b], NOW)[b].words == "in a water that bled slightly"
    studio.do(bleed, load, 2, one)
    found = studio.book.ask(bled, [a, b], NOW)
    assert (found[a].words, found[b].how) == ("bleeds strongly", 1)


def test_half_a_lot_that_was_split_off_tells_of_the_lot(studio):
    row, lot = lot_of(studio, "N", NAVY)
    _, half = studio.do(split, row, (4, 2))
    washed(studio, half, how=2)
    assert studio.book.ask(bled, [lot], NOW) == {lot: Bled(2, alone=True)}
