"""Reports as the owner reads them: those without a cause first."""

from app.lookups.reports import report, reports
from app.work.reporting import FaultIn, decide_cause, report_fault
from tests.makers import Studio


def test_those_without_a_cause_come_first_and_then_the_newest(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 4)
    told = [studio.do(report_fault, FaultIn(fault, "counter"), [skein])
            for fault, skein in zip(("streak", "stain", "streak"), skeins, strict=False)]
    studio.do(decide_cause, told[2], "not found")
    assert [row.id for row in studio.book.ask(reports)] == [told[1], told[0], told[2]]
    assert studio.book.ask(report, 99) is None


def test_a_report_names_its_faulty_skeins_by_their_marks(studio: Studio) -> None:
    lot, skeins = studio.tagged(studio.cone(), 2)
    number = studio.do(report_fault, FaultIn("knot", "return"), skeins)
    kept = studio.book.ask(report, number)
    assert kept is not None
    assert len(kept.marks) == 2
    assert all(mark.replace("·", "").startswith(studio.code(lot) or "") for mark in kept.marks)


def test_a_report_taken_back_is_no_report(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 1)
    studio.do(report_fault, FaultIn("knot", "return"), skeins)
    studio.undo()
    assert studio.book.ask(reports) == ()
