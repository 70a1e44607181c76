"""Holds: one entry at the source; lifted and cleared by entries of their own, with reasons."""

import pytest

from app.lookups.certainty import held_by
from app.lookups.thread import thread
from app.problems import NotFound, Refused
from app.work.holding import clear, hold, lift_hold
from tests.deeds import into_load
from tests.makers import Studio


def held(studio: Studio, yarn: int) -> tuple[int, ...]:
    return studio.book.ask(lambda c: held_by(thread(c, [yarn]), yarn))


def test_a_hold_on_a_cone_lot_load_or_row_reaches_what_is_below(studio: Studio) -> None:
    cone = studio.cone()
    group = studio.wind(cone, 4)
    lot, wash = studio.dye(group), studio.do(into_load, "wash", [group])
    (pile,) = studio.finish(group, red=4)
    placed = [studio.do(hold, kind, thing, "stained") for kind, thing in
              (("cone", cone), ("lot", lot), ("load", wash), ("yarn", group))]
    assert list(held(studio, pile)) == placed
    for number in placed:
        studio.do(lift_hold, number, "washed out")
    assert held(studio, pile) == ()


def test_a_lift_and_a_clearing_say_what_was_done(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    assert studio.done(hold, "cone", 1, "oil").said == "put a hold on a cone: oil"
    assert studio.done(clear, 1, group, "lamp").said == "cleared of hold 1: lamp"
    assert studio.done(lift_hold, 1, "washed").said == "lifted hold 1: washed"


@pytest.mark.parametrize("nothing", ["", "   "])
def test_no_hold_lift_or_clearing_without_its_reason(studio: Studio, nothing: str) -> None:
    group = studio.wind(studio.cone(), 4)
    with pytest.raises(Refused, match="A hold needs its reason"):
        studio.do(hold, "cone", 1, nothing)
    studio.do(hold, "cone", 1, "oil")
    with pytest.raises(Refused, match="Clearing needs its evidence"):
        studio.do(clear, 1, group, nothing)
    with pytest.raises(Refused, match="Lifting a hold needs its reason"):
        studio.do(lift_hold, 1, nothing)
    assert held(studio, group) == (1,)


def test_what_has_no_yarn_below_it_cannot_be_held(studio: Studio) -> None:
    with pytest.raises(Refused, match="A shelf cannot be held"):
        studio.do(hold, "shelf", 1, "dusty")


def test_a_hold_that_is_not_there_or_was_lifted_is_told_in_words(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    with pytest.raises(NotFound, match="There is no hold 5"):
        studio.do(lift_hold, 5, "washed")
    studio.do(hold, "cone", 1, "oil")
    studio.do(lift_hold, 1, "washed")
    for again in (lambda: studio.do(lift_hold, 1, "washed"),
                  lambda: studio.do(clear, 1, group, "lamp")):
        with pytest.raises(Refused, match="Hold 1 was lifted already"):
            again()


def test_an_undone_hold_holds_nothing(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.do(hold, "cone", 1, "oil")
    studio.undo()
    assert held(studio, group) == ()
    with pytest.raises(NotFound):
        studio.do(lift_hold, 1, "washed")
