"""Reports of one case are closed together, with one cause, and taken back together."""

import pytest

from app.lookups.fault_cases import open_of_case, other_cases
from app.lookups.reports import report
from app.problems import Refused
from app.work.closing_cases import close_with_it
from app.work.reporting import FaultIn, decide_cause, report_fault
from tests.makers import Studio

KNOWN = "cone C·0001·7: seen on the thing itself"


def cause_of(studio: Studio, number: int) -> str | None:
    found = studio.book.ask(report, number)
    assert found is not None
    return found.cause


def test_all_that_met_the_cause_get_it_and_no_other(studio: Studio) -> None:
    one, other = studio.cones(2)
    first, second, apart = (
        studio.do(report_fault, FaultIn("streak", "customer"), studio.tagged(cone, 2)[1][:1])
        for cone in (one, one, other))
    with pytest.raises(Refused, match="None of them is open"):
        studio.do(close_with_it, first, [second])
    studio.do(decide_cause, first, "cone", one, KNOWN)
    done = studio.done(close_with_it, first, [second, apart])
    assert done.said == "streak: 1 more report closed, from cone C·0001·7"
    assert [cause_of(studio, number) for number in (first, second, apart)] == [KNOWN, KNOWN, None]
    assert len(studio.book.ask(other_cases, "streak")) == 2
    with pytest.raises(Refused, match="None of them is open"):
        studio.do(close_with_it, first, [second])
    studio.undo()
    assert studio.book.ask(open_of_case, first) == (second,)
    studio.check()
