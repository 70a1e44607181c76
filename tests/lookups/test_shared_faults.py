"""The second complaint that shares a cone, fill or load with an earlier one is told so."""

from datetime import timedelta

from app.lookups.shared_faults import shared_with_earlier
from app.work.reporting import FaultIn, report_fault
from tests.deeds import into_load
from tests.makers import Studio


def shared(studio: Studio, yarn: list[int], fault: str = "streak") -> list[str]:
    found = studio.book.ask(shared_with_earlier, fault, yarn, None, studio.clock.now)
    return [one.kind for one in found]


def test_what_both_went_through_is_named(studio: Studio) -> None:
    one, two = studio.cones(2)
    cord, other = studio.wind(one, 2), studio.wind(two, 2)
    studio.dye(cord), studio.dye(other)
    studio.do(into_load, "wash", [cord, other])
    first = studio.tag(studio.finish(cord, red=2)[0], 2)
    second = studio.tag(studio.finish(other, red=2)[0], 2)
    studio.do(report_fault, FaultIn("streak", "customer"), first[:1])
    assert shared(studio, first[1:]) == ["cone", "wash load"]
    assert shared(studio, second) == ["wash load"]
    assert shared(studio, second, "stain") == []


def test_the_same_skein_told_twice_is_no_second_complaint(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(report_fault, FaultIn("streak", "customer"), skeins[:1])
    assert shared(studio, skeins[:1]) == []


def test_after_half_a_year_it_is_not_held_together(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(report_fault, FaultIn("streak", "customer"), skeins[:1])
    studio.clock.now += timedelta(days=181)
    assert shared(studio, skeins[1:]) == []


def test_a_lot_as_stated_stands_for_all_of_it(studio: Studio) -> None:
    cone = studio.cone()
    lot, _ = studio.tagged(cone, 2)
    _, others = studio.tagged(cone, 2)
    studio.do(report_fault, FaultIn("streak", "customer", lot=lot, count=1))
    assert shared(studio, others) == ["cone"]
