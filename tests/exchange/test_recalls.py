"""A recall list in words: sums that add up, a file, and letters that name one buyer each."""

import csv
import io
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from typing import Any

import pytest

from app.exchange.recalls import ELSEWHERE, as_csv, letters, recalled, who
from app.lookups.recall import recall_list
from app.work.holding import hold
from app.work.matching import find, is_one_of
from app.work.moving import put_by
from app.work.winding import Drawn, Wound, wind
from tests.deeds import customer, put, send
from tests.makers import EACH_MG, LONG_MM, Studio

MINI_MM = 77_600


@pytest.fixture
def listed(studio: Studio) -> Any:
    """Eight of a cone: two at Ada's, one at Bo's, one sold to nobody known, one lost, three here.
    """
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 8)
    studio.do(send, skeins[:2], studio.do(customer, "Ada Nygård"))
    studio.do(send, skeins[2:3], studio.do(customer, "=Bo"))
    studio.do(send, skeins[3:4])
    studio.do(put, skeins[4:5], "lost")
    studio.do(hold, "cone", cone, "oil")
    now = studio.clock.now
    return studio.book.ask(recalled, "cone", cone, "cone 1", now, now)


def test_the_sums_are_disjoint_and_add_up(listed: Any) -> None:
    *some, together = listed.sums
    assert [one.count for one in some] == [3, 1, 3, 0, 1]
    assert some[-1].words == ELSEWHERE
    assert (together.count, together.mg) == (8, 8 * EACH_MG)
    assert sum(one.mg for one in some) == together.mg
    assert listed.how_sure == "All 8 come from it."


def test_every_letter_names_its_buyer_and_no_other(listed: Any) -> None:
    first, second = sorted(letters(listed).split("\r\n\r\n\r\n"))
    assert first.startswith("Dear =Bo,")
    assert second.startswith("Dear Ada Nygård,")
    assert "Ada" not in first
    assert "Bo" not in second
    assert "2 skeins (" in second
    assert "It concerns all 2." in second
    assert "What was seen: oil." in second


def test_the_file_has_a_row_for_each_buyer_and_place(listed: Any) -> None:
    rows = as_csv(listed.found.rows).decode("utf-8-sig").split("\r\n")
    assert len(rows) == 1 + len(listed.found.rows) + 1
    assert any(row.startswith("'=Bo,") for row in rows)


def test_the_files_days_sort_and_its_grams_add_up(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 3)
    for each, name in zip(skeins, ("Ada Nygård", "Bo", "Cy"), strict=True):
        studio.do(send, [each], studio.do(customer, name))
    found = studio.book.ask(recall_list, "cone", cone)
    found = replace(found, rows=tuple(replace(row, mg=100_048) for row in found.rows))
    rows = list(csv.DictReader(io.StringIO(as_csv(found.rows).decode("utf-8-sig"))))
    assert sum(Decimal(row["grams"]) for row in rows) == Decimal("300.144")
    assert [row["since"] for row in rows] == [
        f"{row.since.astimezone():%Y-%m-%d}" for row in found.rows if row.since]


def test_what_is_only_put_by_for_somebody_is_still_here_and_no_letter_goes_out(
    studio: Studio
) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 2)
    now = studio.clock.now
    ada = studio.do(customer, "Ada Nygård")
    studio.do(put_by, skeins[:1], None, now + timedelta(days=7), ada)
    studio.do(send, skeins[1:], ada)
    one = studio.book.ask(recalled, "cone", cone, "cone 1", now, now)
    assert sorted(map(who, one.found.rows)) == ["Ada Nygård", "put by for Ada Nygård"]
    assert letters(one).count("1 skein (") == 1


def test_skeins_and_minis_are_told_apart_in_every_sum(studio: Studio) -> None:
    cone = studio.cone()
    drawn = Drawn(cone, 2 * LONG_MM), Drawn(cone, 3 * MINI_MM)
    long, short = studio.do(wind, [Wound(drawn[:1], 2, "skein", "red"),
                                   Wound(drawn[1:], 3, "mini", "white")])
    now = studio.clock.now
    one = studio.book.ask(recalled, "cone", cone, "cone 1", now, now)
    assert [(each.words, each.count, each.put_ups) for each in one.sums] == [
        ("sold, buyer known", 0, ""), ("sold, buyer not known", 0, ""), ("still here", 0, ""),
        ("in work", 5, "2 skeins, 3 minis"), ("in all", 5, "2 skeins, 3 minis")]


def test_two_buyers_of_one_name_get_a_letter_each(studio: Studio) -> None:
    """Nobody reads of the other's order."""
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 3)
    studio.do(send, skeins[:1], studio.do(customer, "Ada Nygård"))
    studio.do(send, skeins[1:], studio.do(customer, "Ada Nygård"))
    now = studio.clock.now
    told = letters(studio.book.ask(recalled, "cone", cone, "cone 1", now, now))
    assert sorted(told.count(words) for words in ("Dear Ada Nygård,", "1 skein (", "2 skeins (")) \
        == [1, 1, 2]
    assert all("1 skein" not in one or "2 skeins" not in one
               for one in told.split("\r\n\r\n\r\n"))


def test_a_find_that_stands_for_one_of_them_is_said_beside_the_sums(studio: Studio) -> None:
    """The list names the find and all it may be; the sums count it once, and it is told why."""
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 3)
    studio.do(send, skeins, studio.do(customer, "Ada Nygård"))
    studio.do(is_one_of, studio.do(find, 1, EACH_MG), skeins)
    now = studio.clock.now
    one = studio.book.ask(recalled, "cone", cone, "cone 1", now, now)
    assert (sum(row.count for row in one.found.rows), one.sums[-1].count) == (4, 3)
    assert one.how_sure == (
        "All 3 come from it. 1 found without a tag is, or may be, one of the others, not known "
        "which: the list names 4, and there are 3.")
