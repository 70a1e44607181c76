"""Up and down the thread: every row on the way, and none whose link was taken back."""

from sqlalchemy import select

from app.lookups.fills import shares_of
from app.lookups.walks import above, below
from app.records import Cone
from app.work.dyeing import BathIn, into_bath
from tests.deeds import into_load
from tests.dyehouse import Dyehouse
from tests.makers import Studio


def test_a_row_lies_above_and_below_itself(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    assert studio.book.ask(above, [group]) == [group]
    assert studio.book.ask(below, "yarn", group) == [group]


def test_all_that_came_out_of_a_cone_lot_bath_load_or_row_lies_below_it(studio: Studio) -> None:
    cone = studio.cone()
    group = studio.wind(cone, 4)
    lot, wash = studio.dye(group), studio.do(into_load, "wash", [group])
    (pile,) = studio.finish(group, red=4)
    skeins = studio.tag(pile, 4)
    whole = {group, pile, *skeins}
    for kind, thing in (("cone", cone), ("lot", lot), ("bath", 1), ("load", wash),
                        ("yarn", group)):
        assert set(studio.book.ask(below, kind, thing)) == whole
    assert set(studio.book.ask(below, "yarn", pile)) == {pile, *skeins}
    assert set(studio.book.ask(above, skeins[:1])) == {skeins[0], pile, group}


def test_below_a_batch_lies_what_was_wound_of_its_cones(studio: Studio) -> None:
    one, two = studio.cones(2)
    wound = {studio.wind(one, 3), studio.wind(two, 2)}
    (other,) = studio.cones(1, batch="B-1")
    studio.wind(other, 2)
    batch = studio.book.ask(lambda c: c.execute(
        select(Cone.supplier_lot).where(Cone.id == one)).scalar_one())
    assert set(studio.book.ask(below, "supplier_lot", batch)) == wound


def test_below_a_makers_lot_lies_what_was_dyed_with_its_powder(studio: Studio) -> None:
    house = Dyehouse(studio)
    group = studio.wind(studio.cone(), 2)
    studio.do(into_bath, BathIn((group,), house.recipe, None, house.weighed()), studio.random)
    lot_p = studio.book.ask(shares_of, house.fills[1])[0].supplier_lot
    assert studio.book.ask(below, "supplier_lot", lot_p) == [group]


def test_what_met_lies_above_together_and_each_row_once(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 3), studio.wind(studio.cone(), 2)
    pool = studio.mix(a, b)
    left, right = studio.split(pool, 2, 3)
    again = studio.mix(left, right)
    assert sorted(studio.book.ask(above, [again, left])) == sorted([a, b, pool, left, right, again])


def test_a_link_that_was_taken_back_leads_nowhere(studio: Studio) -> None:
    cone = studio.cone()
    a, b = studio.wind(cone, 3), studio.wind(studio.cone(), 2)
    pool = studio.mix(a, b)
    studio.undo()
    assert studio.book.ask(above, [pool]) == [pool]
    assert studio.book.ask(below, "cone", cone) == [a]
    again = studio.mix(a, b)
    assert set(studio.book.ask(below, "cone", cone)) == {a, again}


def test_what_was_divided_before_it_went_in_is_not_below_the_bath(studio: Studio) -> None:
    left, right = studio.split(studio.wind(studio.cone(), 5), 2, 3)
    lot = studio.dye(left)
    assert studio.book.ask(below, "lot", lot) == [left]
    assert right not in studio.book.ask(below, "lot", lot)


def test_nothing_lies_above_nothing(studio: Studio) -> None:
    assert studio.book.ask(above, []) == []
    assert studio.book.ask(below, "cone", 99) == []
