"""A recall list in words: sums that add up, a file, and letters that name one buyer each."""

from typing import Any

import pytest

from app.exchange.recalls import ELSEWHERE, as_csv, letters, recalled
from app.work.holding import hold
from app.work.matching import find, is_one_of
from tests.deeds import customer, put, send
from tests.makers import EACH_MG, Studio


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
        "All 3 come from it. 1 found without a tag stands for one of the others, not known which: "
        "the list names 4, and there are 3.")
