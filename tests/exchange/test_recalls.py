"""A recall list in words: sums that add up, a file, and letters that name one buyer each."""

from typing import Any

import pytest

from app.exchange.recalls import ELSEWHERE, as_csv, letters, recalled
from app.work.holding import hold
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
    assert "it concerns all 2" in second
    assert "What was seen: oil." in second


def test_the_file_has_a_row_for_each_buyer_and_place(listed: Any) -> None:
    rows = as_csv(listed.found.rows).decode("utf-8-sig").split("\r\n")
    assert len(rows) == 1 + len(listed.found.rows) + 1
    assert any(row.startswith("'=Bo,") for row in rows)
