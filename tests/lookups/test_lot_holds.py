"""The holds that reached a lot."""

import pytest
from sqlalchemy import select

from app.lookups.batch_record import batch_record
from app.lookups.lot_holds import LotHold
from app.records import Cone
from app.work.dyeing import BathIn, into_bath
from app.work.holding import hold
from tests.dyehouse import Dyehouse
from tests.full_lot import FullLot
from tests.makers import Studio


def holds_of(studio: Studio, lot: int) -> tuple[LotHold, ...]:
    return studio.book.ask(batch_record, lot, studio.clock.now).holds


def test_a_lifted_hold_stays_with_its_clearing(studio: Studio) -> None:
    (one,) = holds_of(studio, FullLot(studio).lot)
    assert (one.facts.why, one.facts.lifted, one.lifted_by) == ("uneven at the ties", True, "OW")
    assert one.lifted is not None
    assert [(clear.evidence, clear.person) for clear in one.cleared] == [
        ("looked at in daylight", "OW")]


@pytest.mark.parametrize("kind", ["cone", "yarn", "bath", "fill", "supplier_lot"])
def test_a_hold_reaches_from_wherever_it_was_placed(studio: Studio, kind: str) -> None:
    house = Dyehouse(studio)
    cone = studio.cone()
    row = studio.wind(cone, 2)
    weighing = house.weighed(row)
    lot = studio.do(*_into(studio, house, row, weighing))["lots"][0]
    assert holds_of(studio, lot) == ()
    batch = studio.book.ask(lambda c: c.scalar(select(Cone.supplier_lot).where(Cone.id == cone)))
    thing = {"cone": cone, "yarn": row, "bath": 1, "fill": house.fills[1],
             "supplier_lot": batch}[kind]
    studio.do(hold, kind, thing, "weak")
    assert [one.facts.why for one in holds_of(studio, lot)] == ["weak"]


def test_a_hold_on_what_is_not_in_it_does_not_reach_it(studio: Studio) -> None:
    house = Dyehouse(studio)
    row = studio.wind(studio.cone(), 2)
    lot = studio.do(*_into(studio, house, row, house.weighed(row)))["lots"][0]
    studio.do(hold, "fill", house.fills[4], "weak")
    studio.do(hold, "cone", studio.cone(), "oil")
    assert holds_of(studio, lot) == ()


def _into(studio: Studio, house: Dyehouse, row: int, weighing: int) -> tuple[object, ...]:
    return into_bath, BathIn((row,), house.recipe, None, weighing), studio.random
