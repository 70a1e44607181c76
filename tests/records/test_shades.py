"""A reading is of one thing, a step is on the scale, a verdict says what it must."""

from app.records import GreyStep, ShadeReading, Verdict
from tests.makers import Studio
from tests.records.forbidden import forbids

TEAL = {"l_milli": 48_300, "a_milli": -36_600, "b_milli": 3_300, "lamp": "D65", "observer": 2,
        "readings": 4}


def test_a_reading_is_of_a_lot_a_standard_or_a_cone_and_of_one_only(studio: Studio) -> None:
    lot = studio.dye(studio.wind(studio.cone(), 2))
    forbids(studio, "of_one_thing", ShadeReading(**TEAL))
    forbids(studio, "of_one_thing", ShadeReading(lot=lot, cone=1, **TEAL))
    forbids(studio, "standard_has_a_base", ShadeReading(colourway=1, **TEAL))
    forbids(studio, "was_read", ShadeReading(lot=lot, **{**TEAL, "readings": 0}))
    forbids(studio, "came", ShadeReading(lot=lot, came="photo", **TEAL))
    for one in ({"lot": lot}, {"colourway": 1, "base": 1}, {"cone": 1}):
        studio.do(lambda deed, one=one: deed.add(ShadeReading(**one, **TEAL)))


def test_a_grey_step_lies_on_the_scale(studio: Studio) -> None:
    lot = studio.dye(studio.wind(studio.cone(), 2))
    forbids(studio, "is_a_step", GreyStep(lot=lot, half_steps=11))
    forbids(studio, "is_a_step", GreyStep(lot=lot, half_steps=1))
    forbids(studio, "scale", GreyStep(lot=lot, half_steps=9, scale="blue wool"))
    studio.do(lambda deed: deed.add(GreyStep(lot=lot, half_steps=9)))


def test_a_one_off_has_a_name_and_seconds_and_holds_say_why(studio: Studio) -> None:
    lot = studio.dye(studio.wind(studio.cone(), 2))
    forbids(studio, "verdict", Verdict(lot=lot, verdict="fine"))
    forbids(studio, "one_off_has_a_name", Verdict(lot=lot, verdict="one-off"))
    for verdict in ("seconds", "hold"):
        forbids(studio, "says_why", Verdict(lot=lot, verdict=verdict))
    studio.do(lambda deed: deed.add(Verdict(lot=lot, verdict="one-off", name="Late Frost")))
