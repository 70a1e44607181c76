"""Holds: what was held, why, and whom to ask."""

from app.calculations.codes import shown
from app.lookups.cones import cone_facts
from app.lookups.holds import hold_facts, live_holds
from app.work.holding import hold, lift_hold
from tests.deeds import into_load
from tests.dyehouse import Dyehouse


def test_a_hold_names_its_cone_its_reason_and_whom_to_ask(studio):
    cone = studio.cone()
    one = studio.do(hold, "cone", cone, "oil stain")
    (facts,) = studio.book.ask(hold_facts, [one])
    code = shown(studio.book.ask(cone_facts, cone).code)
    assert (facts.on, facts.why, facts.ask) == (f"cone {code}", "oil stain", "OW, Osk Wray")
    assert not facts.lifted


def test_a_hold_on_a_lot_a_load_or_yarn_says_so(studio):
    group = studio.wind(studio.cone(), 3)
    lot = studio.dye(group)
    load = studio.do(into_load, "wash", [group])
    holds = [
        studio.do(hold, *source, "looks off")
        for source in (("lot", lot), ("load", load), ("yarn", group))
    ]
    assert [facts.on for facts in studio.book.ask(hold_facts, holds)] == [
        f"lot {shown(studio.code(lot))}",
        f"wash {load}",
        "some skeins",
    ]


def test_a_lifted_hold_says_that_it_was_lifted(studio):
    one = studio.do(hold, "cone", studio.cone(), "oil stain")
    studio.do(lift_hold, one, "it was grease on the card")
    assert studio.book.ask(hold_facts, [one])[0].lifted


def test_the_holds_that_stand_name_their_source_and_the_code_to_scan(studio):
    cone = studio.cone()
    lot, skeins = studio.tagged(cone, 2)
    studio.do(lift_hold, studio.do(hold, "lot", lot, "looked off"), "it was the lamp")
    studio.do(hold, "cone", cone, "oil stain")
    studio.do(hold, "yarn", skeins[0], "moth")
    on_cone, on_skein = studio.book.ask(live_holds)
    assert (on_cone.source, on_cone.code) == (("cone", cone), "C00017")
    assert on_skein.source == ("yarn", skeins[0])
    assert on_skein.on == f"skein {shown(on_skein.code)}"
    assert on_skein.code.startswith(studio.code(lot))


def test_a_hold_on_a_jars_fill_or_a_bath_says_so(studio):
    house = Dyehouse(studio)
    lot = house.dye(house.weighed())
    holds = [studio.do(hold, *source, "weak") for source in (("fill", house.fills[2]), ("bath", 1))]
    fill, bath = studio.book.ask(hold_facts, holds)
    assert (fill.on, fill.source, fill.code) == ("jar 2, fill 1", ("fill", house.fills[2]), "J002T")
    assert bath.on == f"the bath of lot {shown(studio.code(lot))}"
    assert bath.code == studio.code(lot)
