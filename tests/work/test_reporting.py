"""A fault is kept as it was told; what was seen good too; the owner says what it was."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind, shown
from app.lookups.fault_evidence import in_question
from app.lookups.reports import report, reports
from app.lookups.skeins import named_by_tag
from app.lookups.told_faults import faults_told
from app.problems import NotFound, Refused
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.reporting import (
    FaultIn,
    decide_cause,
    report_fault,
    seen_good,
    told_by_mistake,
)
from app.work.selling import sell
from tests.makers import Studio

STREAK = FaultIn("streak", "counter", where_on="repeats", repeat_mm=1500, words="pale stripe")


def test_what_was_told_by_mistake_counts_no_more_and_comes_back_with_undo(studio):
    _, skeins = studio.tagged(studio.cone(), 4)
    told = studio.do(report_fault, FaultIn("streak", "inspection"), skeins[:2])
    studio.do(seen_good, skeins[2:3], "inspection", told)
    studio.do(decide_cause, told, "not found")
    assert studio.book.ask(in_question, "streak") is not None
    done = studio.done(told_by_mistake, told, reason="another skein was meant")
    assert done.said == "streak: told by mistake, it counts no more"
    assert studio.book.ask(in_question, "streak") is None
    assert studio.book.ask(faults_told, skeins) == {}
    assert studio.book.ask(reports) == ()
    with pytest.raises(NotFound, match="not in the book"):
        studio.do(told_by_mistake, told)
    studio.undo(done.seq)
    assert set(studio.book.ask(faults_told, skeins)) == set(skeins[:2])
    assert studio.book.ask(reports)[0].cause is not None


def test_a_fault_on_scanned_skeins_is_told_with_its_distance(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 3)
    done = studio.done(report_fault, STREAK, skeins[:2])
    assert done.said == "streak on 2 skeins"
    kept = studio.book.ask(report, done.answer)
    assert kept is not None
    assert (kept.fault, kept.where_on, kept.repeat_mm, kept.faulty) == (
        "streak", "repeats", 1500, 2)
    studio.check()


def test_what_a_customer_says_of_a_lot_is_kept_as_stated(studio: Studio) -> None:
    lot, _ = studio.tagged(studio.cone(), 3)
    told = studio.done(report_fault, FaultIn("stain", "customer", lot=lot, count=2))
    assert told.said == "stain on a lot, as stated"
    kept = studio.book.ask(report, told.answer)
    assert kept is not None
    assert (kept.marks, kept.count, kept.faulty) == ((), 2, 0)
    assert kept.lot


def test_good_ones_belong_to_the_report(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 4)
    number = studio.do(report_fault, STREAK, skeins[:2])
    assert studio.done(seen_good, skeins[2:], "inspection", number).said == "seen good: 2 skeins"
    kept = studio.book.ask(report, number)
    assert kept is not None
    assert (kept.faulty, kept.good, kept.cause) == (2, 2, None)


def test_not_found_is_a_cause_and_a_later_one_counts(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 2)
    number = studio.do(report_fault, STREAK, skeins[:1])
    assert studio.done(decide_cause, number, "not found").said == "streak: the cause was not found"
    assert studio.book.ask(report, number).cause == "not found"  # type: ignore[union-attr]
    studio.do(decide_cause, number, "cone", cone, "oil in the cone")
    assert studio.book.ask(report, number).cause == "oil in the cone"  # type: ignore[union-attr]
    studio.undo()
    assert studio.book.ask(report, number).cause == "not found"  # type: ignore[union-attr]


@pytest.mark.parametrize(("fault", "words"), [
    (FaultIn("ugly", "counter"), "What is seen was not said"),
    (FaultIn("streak", "counter", where_on="repeats"), "A fault that repeats has its distance"),
    (FaultIn("streak", "counter", repeat_mm=4), "A fault that repeats has its distance"),
    (FaultIn("streak", "counter", where_on="repeats", repeat_mm=0), "The distance is nothing"),
    (FaultIn("streak", "counter"), "Nothing was named"),
    (FaultIn("streak", "counter", lot=1, count=0), "None was said"),
])
def test_what_cannot_be_is_refused_with_a_sentence(
    studio: Studio, fault: FaultIn, words: str
) -> None:
    with pytest.raises(Refused, match=words):
        studio.do(report_fault, fault)


def test_what_is_not_in_the_book_cannot_be_looked_at(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 1)
    number = studio.do(report_fault, STREAK, skeins)
    with pytest.raises(NotFound, match="This skein is not in the book"):
        studio.do(seen_good, [999], "inspection")
    with pytest.raises(NotFound, match="This report is not in the book"):
        studio.do(seen_good, skeins, "inspection", 99)
    with pytest.raises(Refused, match="Nothing was looked at"):
        studio.do(seen_good, [], "inspection")
    with pytest.raises(Refused, match="closed with its cause"):
        studio.do(decide_cause, number, "fate")
    with pytest.raises(Refused, match="Which cone it came from"):
        studio.do(decide_cause, number, "cone")


def test_more_than_came_of_a_lot_is_kept_as_said_and_marked(studio: Studio) -> None:
    lot, _ = studio.tagged(studio.cone(), 3)
    told = studio.done(report_fault, FaultIn("stain", "customer", lot=lot, count=4))
    assert told.findings == ("4 are said to have it, and 3 came of this lot: ask again how many, "
                             "and whether they are all of it.",)
    assert not studio.done(report_fault, FaultIn("hole", "customer", lot=lot, count=3)).findings


def test_what_goes_to_a_buyer_though_a_fault_was_told_of_it_is_marked(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 5)
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    studio.do(report_fault, STREAK, skeins[:4])
    assert studio.done(move, skeins, To("shelf", place=shelf)).findings == ()
    first = shown(studio.book.ask(named_by_tag, skeins[:1])[skeins[0]].mark)
    assert studio.done(sell, skeins[:1]).findings == (
        f"“streak” was told of {first} on 6 Apr 2026; nobody closed it.",)
    assert studio.done(sell, skeins[4:]).findings == ()
    studio.do(seen_good, skeins[3:4], "counter")
    assert studio.done(sell, skeins[3:4]).findings == ()
    (both,) = studio.done(sell, skeins[1:3]).findings
    assert both.count("26·15·") == 2
    studio.check()


def test_seen_good_says_that_a_fault_told_before_goes_on_counting(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 5)
    number = studio.do(report_fault, STREAK, skeins[:4])
    other = studio.do(report_fault, FaultIn("stain", "customer"), skeins[4:])
    (found,) = studio.done(seen_good, skeins, "inspection", number).findings
    assert found.count("26·15·") == 3  # the first three of four, of the streak alone
    assert found.endswith(
        " and 1 more on 6 Apr 2026, and seen good does not take that back: among its suspects the "
        "fault counts while the report stands. Counter and Packing warn of it no more.")
    asked = studio.book.ask(in_question, "streak")
    assert asked is not None
    assert [one.seen.name for one in asked.evidence.skeins] == ["FAULTY"] * 4 + ["GOOD"]
    assert [one.split("”")[0] for one in studio.done(seen_good, skeins, "counter").findings] == [
        "“streak", "“stain"]
    assert studio.book.ask(report, other).good == 0  # type: ignore[union-attr]
    assert studio.done(seen_good, skeins[:1], "counter",
                       happened=studio.clock.now - timedelta(days=1)).findings == ()
