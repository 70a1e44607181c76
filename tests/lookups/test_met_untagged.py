"""Yarn that met a suspect and wears no tag: where it lies, and what to look for on it."""

from app.calculations.codes import shown
from app.lookups.met_untagged import met_untagged, one_lot_of, to_look_for
from app.work.reporting import FaultIn, decide_cause, report_fault
from tests.deeds import into_load
from tests.makers import Studio


def told(studio: Studio, rows: list[int]) -> list[str]:
    return [one for one in studio.book.ask(to_look_for, rows, studio.clock.now)
            if one.startswith("Look for")]


def test_cords_and_piles_are_told_by_their_discs_and_tagged_skeins_are_not(
    studio: Studio
) -> None:
    cone = studio.cone()
    studio.tagged(cone, 3)
    cord = studio.wind(cone, 4, "red", studio.discs[1])
    half = studio.wind(cone, 2, "red", studio.discs[2])
    lot = studio.dye(half)
    (pile,) = studio.finish(half, red=2)
    studio.tag(pile, 1)
    found = {one.disc: one for one in studio.book.ask(met_untagged, "cone", cone)}
    assert {disc: (one.count, one.step) for disc, one in found.items()} == {
        "032": (4, "on its cord"), "033": (1, "counted, not tagged")}
    assert (found["032"].lot, found["033"].lot) == (None, shown(studio.code(lot)))
    of_the_lot = studio.book.ask(met_untagged, "lot", lot)
    assert [one.disc for one in of_the_lot] == ["033"]
    assert studio.book.ask(one_lot_of, [cord]) is None
    of_pile = studio.book.ask(one_lot_of, [pile])
    assert of_pile is not None
    assert of_pile.id == lot


def test_an_open_fault_of_the_same_cone_or_wash_is_looked_for_until_its_cause_is_known(
    studio: Studio
) -> None:
    one, two, far = studio.cones(3)
    cord, other, alone = studio.wind(one, 2), studio.wind(two, 2), studio.wind(far, 2)
    for row in (cord, other, alone):
        studio.dye(row)
    studio.do(into_load, "wash", [cord, other])
    skeins = studio.tag(studio.finish(cord, red=2)[0], 2)
    report = studio.do(report_fault, FaultIn("stain", "customer"), skeins[:1])
    (sentence,) = told(studio, [other])
    assert sentence.startswith("Look for “stain”: it was told of yarn that shares wash load ")
    assert told(studio, [alone]) == []
    studio.do(decide_cause, report, "not found")
    assert told(studio, [other]) == []
