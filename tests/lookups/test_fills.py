"""Where powder went: a refill never reaches back, and what was poured out reached nothing."""

from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import select

from app.calculations.codes import Kind
from app.lookups.certainty import held_by
from app.lookups.destinations import destinations
from app.lookups.fills import baths_of, dyed_of, fill_at, fills_after, shares_of
from app.lookups.thread import thread
from app.lookups.walks import below
from app.records import DyeLot
from app.store.dialect import among, listed
from app.work.additions import Addition, addition
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath
from app.work.holding import clear, hold, lift_hold
from app.work.jars import Refill, refill, say_strength
from app.work.painting import into_steamer, lay_on_board
from app.work.stocks import StockIn, fill_bottles, make_stock, refill_bottle
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back, what_became
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import Dyehouse
from tests.makers import Studio
from tests.work.test_stocks import painted


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars and a recipe of three dyes."""
    return Dyehouse(studio)


def lots(house: Dyehouse, fill: int) -> list[int]:
    """Those that powder of a fill reached, also as the rest in a later one."""
    question = select(DyeLot.id).where(among(DyeLot.bath, "ids")).order_by(DyeLot.id)
    return house.studio.book.ask(lambda c: list(c.execute(
        question, {"ids": listed(baths_of(c, fill))}).scalars()))


def refilled(house: Dyehouse) -> tuple[int, int, int]:
    """A lot of the old fill of jar 1, the new fill, and a lot of that."""
    before = house.dye(house.weighed())
    new = house.studio.do(refill, 1, Refill("q", 500_000))
    return before, new, house.dye(house.weighed())


def test_lots_before_a_refill_show_the_old_fill_only(house: Dyehouse) -> None:
    before, new, after = refilled(house)
    old = house.fills[1]
    of = house.studio.book.ask(dyed_of, [before, after])
    assert old in of[before].fills
    assert new not in of[before].fills
    assert new in of[after].fills
    assert old not in of[after].fills
    assert (of[before].known, of[after].known) == (True, True)
    assert lots(house, new) == [after]
    assert lots(house, old) == [before, after]  # its rest is in the new fill
    assert house.studio.book.ask(fills_after, old) == {old, new}


def test_a_fill_leads_to_its_skeins_and_to_no_others(house: Dyehouse) -> None:
    before, new, after = refilled(house)
    other = house.dye(house.weighed(jars=(2, 3)))
    found = house.studio.book.ask(destinations, "fill", new)
    assert [row.yarn for row in found.rows] == house.studio.book.ask(below, "fill", new)
    assert (found.count, found.together and found.together.word) == (2, "known")
    both = house.studio.book.ask(destinations, "fill", house.fills[1])
    assert (both.count, both.together and both.together.expected) == (4, 4)
    assert house.studio.book.ask(destinations, "fill", house.fills[2]).count == 6
    assert house.studio.book.ask(destinations, "fill", house.fills[4]).count == 0
    assert len({before, after, other}) == 3


def test_a_lot_without_a_weigh_out_says_that_its_fills_are_not_known(house: Dyehouse) -> None:
    lot = house.dye()
    assert not house.studio.book.ask(dyed_of, [lot])[lot].known
    assert [(link.thing, link.word) for link in house.studio.origins(1, "fill")] == [
        (None, "not known")]
    assert house.studio.book.ask(dyed_of, []) == {}


def test_what_was_tipped_back_or_thrown_reached_no_lot(house: Dyehouse) -> None:
    weighing = house.begin()
    back = house.take(weighing, house.fills[1], 5_000)
    house.studio.do(tip_back, back, 5_000)
    thrown = house.studio.do(begin_line, LineIn(weighing, fill=house.fills[2]))
    house.studio.do(what_became, thrown, "thrown", 500)
    house.take(weighing, house.fills[3], 602)
    lot = house.dye(weighing)
    assert house.studio.book.ask(dyed_of, [lot])[lot].fills == {house.fills[3]}
    assert house.studio.book.ask(baths_of, house.fills[1]) == frozenset()
    assert lots(house, house.fills[2]) == []


def test_a_cup_nobody_answered_for_may_be_in_the_bath(house: Dyehouse) -> None:
    weighing = house.begin()
    house.studio.do(begin_line, LineIn(weighing, fill=house.fills[1]))
    assert lots(house, house.fills[1]) == []
    lot = house.dye(weighing)
    assert lots(house, house.fills[1]) == [lot]


def test_powder_goes_through_stocks_and_additions(house: Dyehouse) -> None:
    studio = house.studio
    for_stock = studio.do(begin_weighing, WeighingIn("stock"))
    house.take(for_stock, house.fills[4], 10_000)
    stock = studio.do(make_stock, StockIn(for_stock, 1_000))
    first, second = house.dye(house.weighed()), house.dye(house.weighed())
    studio.do(addition, Addition(1, stock=stock, ul=5_000))
    assert lots(house, house.fills[4]) == [first]
    weighing = house.begin()
    line = studio.do(begin_line, LineIn(weighing, 1, stock=stock, instead_of=True))
    studio.do(take_weight, line, ul=40_000)
    third = house.dye(weighing)
    assert lots(house, house.fills[4]) == [first, third]
    assert second not in lots(house, house.fills[4])


def test_a_refilled_bottle_has_the_old_powder_in_it_still(house: Dyehouse) -> None:
    studio = house.studio
    (board,) = studio.do(make_plates, Kind.BOARD, [1])
    recipe, weighing = painted(house)
    house.take(weighing, house.fills[1], 2_640)
    one = studio.do(fill_bottles, recipe, weighing)
    again = studio.do(begin_weighing, WeighingIn("bottles", recipe))
    house.take(again, house.fills[2], 300)
    two = studio.do(refill_bottle, one, "B", again)
    made = []
    for bottle_set in (one, two):
        group = studio.wind(studio.cone(), 2)
        studio.do(lay_on_board, board, [group], bottle_set)
        made += studio.do(into_steamer, [board], None, studio.random)["lots"]
    of = studio.book.ask(dyed_of, made)
    assert [of[lot].fills for lot in made] == [
        {house.fills[1]}, {house.fills[1], house.fills[2]}]
    assert lots(house, house.fills[1]) == made
    assert lots(house, house.fills[2]) == made[1:]


def test_a_hold_on_a_fill_reaches_all_its_powder_went_into(house: Dyehouse) -> None:
    studio = house.studio
    before, new, after = refilled(house)
    rows = {lot: studio.book.ask(below, "lot", lot)[0] for lot in (before, after)}

    def holds() -> list[int]:
        found = studio.book.ask(thread, list(rows.values()))
        return [lot for lot, row in rows.items() if held_by(found, row)]
    one = studio.do(hold, "fill", new, "weak")
    assert holds() == [after]
    studio.do(lift_hold, one, "it was the lamp")
    old = studio.do(hold, "fill", house.fills[1], "weak")
    assert holds() == [before, after]
    studio.do(clear, old, rows[after], "dyed against the standard: right")
    assert holds() == [before]


def test_a_hold_on_a_bath_reaches_both_its_lots(house: Dyehouse) -> None:
    lot = house.dye(house.weighed())
    other = house.dye(house.weighed())
    row, beside = (house.studio.book.ask(below, "lot", one)[0] for one in (lot, other))
    house.studio.do(hold, "bath", 1, "boiled over")
    found = house.studio.book.ask(thread, [row, beside])
    assert (len(held_by(found, row)), held_by(found, beside)) == (1, ())
    assert house.studio.book.ask(destinations, "bath", 1).count == 2


def test_a_weigh_out_of_another_recipe_takes_a_lot_off_its_own(house: Dyehouse) -> None:
    recipe, _ = painted(house)
    group = house.studio.wind(house.studio.cone(), 2)
    done = house.studio.done(into_bath, BathIn((group,), recipe, None, house.weighed()),
                             house.studio.random)
    assert "This was weighed out for another recipe: the lot is marked by what is in it." in (
        done.findings)
    (lot,) = done.answer["lots"]
    assert house.studio.book.ask(dyed_of, [lot])[lot].off_recipe == (
        "weighed out for another recipe",)


def test_a_jar_holds_the_fill_of_its_moment(house: Dyehouse) -> None:
    house.studio.do(say_strength, 1, 980)
    then = house.studio.clock.now
    new = house.studio.do(refill, 1, Refill("q", 500_000))
    assert house.studio.book.ask(fill_at, 1, then) == house.fills[1]
    assert house.studio.book.ask(fill_at, 1, house.studio.clock.now) == new
    assert house.studio.book.ask(fill_at, 99, then) is None


@settings(max_examples=10, deadline=None,
          suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.tuples(st.integers(1, 700_000), st.integers(0, 700_000)), max_size=5))
def test_the_shares_of_every_fill_add_to_one(
    house: Dyehouse, refills: list[tuple[int, int]]
) -> None:
    for mg, left in refills:
        fill = house.studio.do(refill, 1, Refill(f"lot {mg}", mg, left_mg=left))
        shares = house.studio.book.ask(shares_of, fill)
        assert sum(one.share for one in shares) == 1
        assert all(one.share > 0 for one in shares)
        assert house.jar(1).filled_mg == mg + left
        if left:
            assert shares[-1].share < Fraction(1)
