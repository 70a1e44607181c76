"""A shelf is counted by scans; the book follows by entries, and sold things stay a question."""

import pytest
from sqlalchemy import select

from app.lookups.stocktakes import Count, stocktake
from app.problems import NotFound, Refused
from app.records import Whereabouts
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


@pytest.mark.parametrize(("why", "state"), [
    ("given away or used in the studio", "given"), ("thrown away", "discarded"),
    ("laid elsewhere, not known where", "lost"), ("the roof leaked", "lost")])
def test_the_reason_says_what_became_of_them(studio: Studio, why: str, state: str) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(put, skeins, "shelf", studio.pot)
    number = studio.do(begin_stocktake, studio.pot)
    studio.do(met, number, skeins[:1])
    studio.do(put_right, number, why)
    counts = {now: amount.count for (now, _), amount in studio.present().items()}
    assert counts == {"shelf": 1, state: 1}
    with pytest.raises(Refused, match="Nothing here is to be put right"):
        studio.do(put_right, number, why)


def test_what_was_sold_without_a_scan_has_an_order_as_stated(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 1)
    studio.do(put, skeins, "shelf", studio.pot)
    number = studio.do(begin_stocktake, studio.pot)
    studio.do(put_right, number, "sold without a scan")
    with studio.book.reading() as connection:
        assert connection.execute(select(Whereabouts.state, Whereabouts.basis).where(
            Whereabouts.until.is_(None))).all() == [("sent", "stated")]
