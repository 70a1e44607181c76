"""Holds: one entry at the source; lifted and cleared by entries of their own, with reasons."""

import pytest
from sqlalchemy import select

from app.lookups.certainty import held_by
from app.lookups.fills import shares_of
from app.lookups.holds import live_holds
from app.lookups.thread import thread
from app.problems import NotFound, Refused
from app.records import Cone
from app.work.dyeing import BathIn, into_bath
from app.work.holding import clear, hold, lift_hold
from tests.deeds import into_load
from tests.dyehouse import Dyehouse
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


def test_a_hold_on_a_batch_is_one_entry_for_all_its_cones(studio: Studio) -> None:
    one, two = studio.cones(2)
    (other,) = studio.cones(1, batch="B-1")
    batch = studio.book.ask(lambda c: c.execute(
        select(Cone.supplier_lot).where(Cone.id == one)).scalar_one())
    reached, spared = [studio.wind(one, 3), studio.wind(two, 2)], studio.wind(other, 2)
    placed = studio.do(hold, "supplier_lot", batch, "oily")
    assert [held(studio, row) for row in (*reached, spared)] == [(placed,), (placed,), ()]
    joined = studio.join([(one, 255_200), (other, 157_300)])
    assert held(studio, joined) == (placed,)
    (facts,) = studio.book.ask(live_holds)
    assert facts.on == "batch A-203 of Aske Mill"


def test_a_hold_on_a_makers_lot_of_dye_reaches_each_fill_it_went_into(studio: Studio) -> None:
    house = Dyehouse(studio)
    lot_p = studio.book.ask(shares_of, house.fills[1])[0].supplier_lot
    group = studio.wind(studio.cone(), 2)
    studio.do(into_bath, BathIn((group,), house.recipe, None, house.weighed()), studio.random)
    placed = studio.do(hold, "supplier_lot", lot_p, "recalled by its maker")
    assert held(studio, group) == (placed,)


def test_a_lift_and_a_clearing_say_what_was_done(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    assert studio.done(hold, "cone", 1, "oil").said == (
        "put a hold on cone C·0001·7: oil")
    assert studio.done(clear, 1, group, "lamp").said == (
        "cleared some skeins of the hold on cone C·0001·7: lamp")
    assert studio.done(lift_hold, 1, "washed").said == (
        "lifted the hold on cone C·0001·7: washed")


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
