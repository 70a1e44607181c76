"""A shelf is counted by scans; the book follows by entries, and sold things stay a question."""

import pytest

from app.lookups.stocktakes import Count, stocktake
from app.problems import NotFound, Refused
from app.work.stocktaking import begin_stocktake, met, met_untagged, put_right
from tests.deeds import put, send
from tests.makers import Studio


def counted(studio: Studio, number: int) -> Count:
    found = studio.book.ask(stocktake, number)
    assert found is not None
    return found


def test_a_shelf_as_the_book_says_fits(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(put, skeins, "shelf", studio.pot)
    number = studio.do(begin_stocktake, studio.pot)
    assert studio.done(met, number, skeins[:2]).said == "counted 2 skeins"
    assert studio.done(met, number, skeins[1:]).said == "counted 1 skein"
    assert studio.done(met, number, skeins[1:]).said == "counted before"
    assert counted(studio, number).fits


def test_missing_elsewhere_and_sold_are_told_apart_and_put_right(studio: Studio) -> None:
    lot, skeins = studio.tagged(studio.cone(), 4)
    studio.do(put, skeins[:2], "shelf", studio.pot)
    studio.do(put, skeins[2:3], "shelf", studio.pot2)
    studio.do(send, skeins[3:])
    number = studio.do(begin_stocktake, studio.pot)
    studio.do(met, number, [skeins[0], skeins[2], skeins[3]])
    studio.do(met_untagged, number, lot, 2)
    found = counted(studio, number)
    assert [one.yarn for one in found.right] == [skeins[0]]
    assert [one.yarn for one in found.missing] == [skeins[1]]
    assert [(one.yarn, one.with_a_buyer) for one in found.elsewhere] == [
        (skeins[2], False), (skeins[3], True)]
    assert found.untagged[0].count == 2
    said = studio.done(put_right, number, "counted twice").said
    assert said == "put right: 1 skein here, 1 lost: counted twice"
    counts = {state: amount.count for (state, _), amount in studio.present().items()}
    assert counts == {"shelf": 2, "lost": 1, "sent, buyer not known": 1}
    studio.check()


def test_no_correction_without_its_reason_and_no_count_of_nothing(studio: Studio) -> None:
    lot, skeins = studio.tagged(studio.cone(), 1)
    number = studio.do(begin_stocktake, studio.pot)
    with pytest.raises(Refused, match="needs its reason"):
        studio.do(put_right, number, " ")
    with pytest.raises(Refused, match="None were counted"):
        studio.do(met_untagged, number, lot, 0)
    with pytest.raises(NotFound, match="This stocktake is not in the book"):
        studio.do(met, 99, skeins)
    assert studio.book.ask(stocktake, 99) is None
