"""Readings: one number at the pot, in the wash, or of the room; what cannot be is refused."""

from typing import Any

import pytest
from sqlalchemy import select

from app.problems import NotFound, Refused
from app.records import BathReading, LoadReading
from app.work.readings import bleed, read_bath, rinse, room, step_done, water_added
from tests.deeds import into_load
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.fixture
def dyed(studio: Studio) -> Studio:
    """Bath 1 of a written recipe with one step, and wash 1 of the yarn in it."""
    lot = Dyehouse(studio).dye()
    assert lot == 1
    studio.do(into_load, "wash", [1])
    return studio


def kept(studio: Studio, kind: Any) -> list[tuple[str, int]]:
    rows = studio.book.ask(lambda c: c.execute(
        select(kind.kind, kind.value).where(kind.struck.is_(None)).order_by(kind.id)).all())
    return [tuple(row) for row in rows]


def test_ph_heat_and_clearness_are_read_together_or_alone(dyed: Studio) -> None:
    done = dyed.done(lambda deed: read_bath(deed, 1, ph_centi=430, decidegrees=850, clearness=1))
    assert done.said == "bath 1: pH 4.30, 85 °C, tinted"
    dyed.do(lambda deed: read_bath(deed, 1, clearness=0))
    assert kept(dyed, BathReading) == [("pH centi", 430), ("decidegrees", 850), ("clearness", 1),
                                       ("clearness", 0)]
    dyed.undo()
    assert len(kept(dyed, BathReading)) == 3
    dyed.check()


def test_a_step_of_the_recipe_is_done_and_water_added(dyed: Studio) -> None:
    assert dyed.done(step_done, 1, 1).said == "bath 1: heat up"
    assert dyed.done(water_added, 1, 11_400).said == "bath 1: 11.4 L of water added"
    assert kept(dyed, BathReading) == [("step done", 1), ("water ml", 11_400)]
    with pytest.raises(Refused, match="This step is not of the recipe of this bath"):
        dyed.do(step_done, 1, 2)


def test_a_fourth_rinse_is_no_rinse_any_more(dyed: Studio) -> None:
    done = dyed.done(rinse, 1, 3)
    assert (done.said, done.findings) == ("wash 1: rinse 3", ())
    assert dyed.done(rinse, 1, 4).findings == (
        "Rinse 4: this is not rinsing any more, the dye is not fixed. Back to acid and heat?",)
    assert kept(dyed, LoadReading) == [("rinse", 3), ("rinse", 4)]


def test_bleeding_is_of_the_load_or_of_one_yarn_in_it(dyed: Studio) -> None:
    assert dyed.done(bleed, 1, 2).said == "wash 1: bleeding strong"
    dyed.do(bleed, 1, 1, 1)
    assert dyed.book.ask(lambda c: c.execute(select(LoadReading.yarn)).scalars().all()) == [None, 1]
    other = dyed.wind(1, 1)
    with pytest.raises(Refused, match="This yarn is not in the load"):
        dyed.do(bleed, 1, 1, other)


def test_the_room_has_heat_and_humidity(dyed: Studio) -> None:
    assert dyed.done(room, 1, 200, 500).said == "load 1: the room has 20 °C and 50 %"
    assert kept(dyed, LoadReading) == [("room decidegrees", 200), ("room permille", 500)]


@pytest.mark.parametrize(("work", "what"), [
    (lambda deed: read_bath(deed, 1), "Nothing was read"),
    (lambda deed: read_bath(deed, 1, ph_centi=1401), "1401 cannot be read there"),
    (lambda deed: read_bath(deed, 1, clearness=3), "3 cannot be read there"),
    (lambda deed: read_bath(deed, 9, clearness=1), "This bath is not in the book"),
    (lambda deed: water_added(deed, 1, -1), "-1 cannot be read there"),
    (lambda deed: rinse(deed, 9, 1), "This load is not in the book"),
    (lambda deed: bleed(deed, 1, 3), "3 cannot be read there"),
    (lambda deed: room(deed, 1, 200, 1001), "1001 cannot be read there"),
    (lambda deed: room(deed, 9, 200, 500), "This load is not in the book"),
])
def test_what_cannot_be_read_is_not_kept(dyed: Studio, work: Any, what: str) -> None:
    with pytest.raises((Refused, NotFound), match=what):
        dyed.do(work)
    assert kept(dyed, BathReading) == kept(dyed, LoadReading) == []
