"""What is to be said of a skein before it goes to anybody: its faults, closed or seen good."""

from datetime import timedelta

import pytest

from app.lookups.told_faults import faults_told, not_seen_good, told_words
from app.work.reporting import FaultIn, decide_cause, report_fault, seen_good
from tests.makers import Studio

STREAK, STAIN = FaultIn("streak", "counter"), FaultIn("stain", "customer")


@pytest.fixture
def skeins(studio: Studio) -> list[int]:
    return studio.tagged(studio.cone(), 3)[1]


def said(studio: Studio, skein: int) -> list[str]:
    return [told_words(one, "it") for one in studio.book.ask(not_seen_good, [skein]).get(skein, ())]


def test_a_fault_is_said_of_the_skeins_it_was_told_of_until_they_are_seen_good(
    studio: Studio, skeins: list[int]
) -> None:
    report = studio.do(report_fault, STREAK, skeins[:2])
    words = "“streak” was told of it on 6 Apr 2026; nobody closed it."
    assert [said(studio, skein) for skein in skeins] == [[words], [words], []]
    studio.do(seen_good, skeins[:1], "counter")
    studio.do(seen_good, skeins[1:2], "inspection", report)
    assert studio.book.ask(not_seen_good, skeins) == {}
    assert {skein: told["streak"].seen_good for skein, told in studio.book.ask(
        faults_told, skeins).items()} == {skeins[0]: True, skeins[1]: True}
    studio.do(report_fault, STREAK, skeins[:1])
    assert said(studio, skeins[0]) == [words]


def test_who_looked_for_another_fault_or_before_it_was_told_did_not_see_it_good(
    studio: Studio, skeins: list[int]
) -> None:
    one, other = skeins[:2]
    stain = studio.do(report_fault, STAIN, [one])
    studio.clock.now += timedelta(days=1)
    studio.do(report_fault, STREAK, [one, other])
    studio.do(seen_good, [one], "counter", stain)
    studio.do(seen_good, [other], "counter", happened=studio.clock.now - timedelta(hours=1))
    words = ["“streak” was told of it on 7 Apr 2026; nobody closed it."]
    assert (said(studio, one), said(studio, other)) == (words, words)


def test_its_newest_cause_is_said_and_what_was_taken_back_is_not(
    studio: Studio, skeins: list[int]
) -> None:
    report = studio.do(report_fault, STREAK, skeins[:1])
    studio.do(decide_cause, report, "not found")
    assert said(studio, skeins[0])[0].endswith("on 6 Apr 2026; its cause was not found.")
    studio.do(decide_cause, report, "cone", 1, "cone C·0001·A: oil in the yarn.")
    assert said(studio, skeins[0])[0].endswith("; its cause was cone C·0001·A: oil in the yarn.")
    studio.undo()
    assert said(studio, skeins[0])[0].endswith("its cause was not found.")
    studio.undo(studio.last() - 2)
    assert said(studio, skeins[0])[0].endswith("; nobody closed it.")
    studio.undo(studio.last() - 4)
    assert said(studio, skeins[0]) == []
