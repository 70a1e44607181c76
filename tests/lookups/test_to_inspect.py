"""Which lots wait for a verdict, and which lot came before."""

from app.lookups.to_inspect import lot_before, to_inspect
from app.work.dyeing import lift
from app.work.inspecting import VerdictIn, decide
from tests.lookups.cards import dyed
from tests.makers import Studio


def test_a_lot_waits_from_the_pot_to_its_verdict(studio: Studio) -> None:
    assert studio.book.ask(to_inspect) == ()
    first, second = dyed(studio), dyed(studio)
    assert studio.book.ask(to_inspect) == ()
    for bath in (1, 2):
        studio.do(lift, bath)
    assert [line.lot for line in studio.book.ask(to_inspect)] == [first, second]
    decision = studio.done(decide, first, VerdictIn("standard"))
    assert [line.lot for line in studio.book.ask(to_inspect)] == [second]
    studio.undo(decision.seq)
    assert [line.lot for line in studio.book.ask(to_inspect)] == [first, second]


def test_the_lot_before_is_the_last_of_the_colourway_read_or_not(studio: Studio) -> None:
    first, second = dyed(studio), dyed(studio)
    assert studio.book.ask(lot_before, first) is None
    before = studio.book.ask(lot_before, second)
    assert before is not None
    assert before.lot == first
