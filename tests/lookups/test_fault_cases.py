"""A closed report counts for others only while they may share its cause."""

from typing import Any

import pytest

from app.lookups.fault_cases import open_of_case, other_cases
from app.lookups.fault_evidence import in_question
from app.work.reporting import FaultIn, decide_cause, report_fault
from tests.makers import Studio

Told = tuple[Studio, tuple[int, int], list[int], tuple[int, int]]


@pytest.fixture
def told(studio: Studio) -> Told:
    """A streak on one skein of each of two cones, a report each."""
    cones, yarn, reports = [], [], []
    for _ in range(2):
        cones.append(studio.cone())
        yarn.append(studio.tagged(cones[-1], 3)[1][0])
        reports.append(studio.do(report_fault, FaultIn("streak", "customer"), yarn[-1:]))
    return studio, (cones[0], cones[1]), yarn, (reports[0], reports[1])


def faulty(studio: Studio, report: int | None = None) -> Any:
    found = studio.book.ask(in_question, "streak", None, report)
    assert found is not None
    return {found.row[one.name] for one in found.evidence.skeins
            if one.seen.name == "FAULTY"}, found.other_cases


def test_a_report_closed_as_another_cone_says_nothing_of_the_open_one(told: Told) -> None:
    studio, (first, _), yarn, (closed, _) = told
    assert faulty(studio) == (set(yarn), 0)
    studio.do(decide_cause, closed, "cone", first, "seen on the thing itself")
    assert faulty(studio) == ({yarn[1]}, 1)


def test_it_counts_on_where_the_open_one_went_through_its_cause(told: Told) -> None:
    studio, (first, _), yarn, (closed, _) = told
    other = studio.tagged(first, 2)[1][0]
    studio.do(report_fault, FaultIn("streak", "customer"), [other])
    studio.do(decide_cause, closed, "cone", first)
    assert faulty(studio) == ({*yarn, other}, 0)


def test_not_found_settles_nothing_and_nor_does_an_end_of_all(told: Told) -> None:
    studio, (first, second), yarn, (one, other) = told
    studio.do(decide_cause, one, "not found")
    assert studio.book.ask(other_cases, "streak") == frozenset()
    studio.do(decide_cause, one, "cone", first)
    assert studio.book.ask(other_cases, "streak") == {yarn[0]}
    studio.do(decide_cause, other, "cone", second)
    assert faulty(studio) == (set(yarn), 0)
    assert faulty(studio, one) == ({yarn[0]}, 1)
    assert faulty(studio, other) == ({yarn[1]}, 1)


def test_the_open_reports_of_a_case_are_those_that_met_its_cause(told: Told) -> None:
    """Tagged skeins, a pool that may have, and a lot as stated; another fault or cone is not."""
    studio, (first, second), yarn, (closed, apart) = told
    again = studio.do(report_fault, FaultIn("streak", "customer"), [studio.tagged(first, 2)[1][0]])
    studio.do(report_fault, FaultIn("hole", "customer"), yarn[:1])
    pool = studio.mix(studio.wind(first, 2), studio.wind(second, 2))
    lot = studio.dye(pool)
    mixed = studio.tag(studio.finish(pool, red=4)[0], 4)
    perhaps = studio.do(report_fault, FaultIn("streak", "customer"), mixed[:1])
    stated = studio.do(report_fault, FaultIn("streak", "customer", lot=lot, count=1))
    assert studio.book.ask(open_of_case, closed) == ()
    studio.do(decide_cause, closed, "not found")
    assert studio.book.ask(open_of_case, closed) == ()
    studio.do(decide_cause, closed, "cone", first)
    assert studio.book.ask(open_of_case, closed) == (again, perhaps, stated)
    studio.do(decide_cause, perhaps, "not found")
    assert studio.book.ask(open_of_case, closed) == (again, stated)
    studio.do(decide_cause, apart, "cone", second)
    assert studio.book.ask(open_of_case, apart) == (stated,)
