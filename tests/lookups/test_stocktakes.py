"""A count is held against the book as it stands, also after things moved since."""

from app.lookups.stocktakes import stocktake
from app.work.stocktaking import begin_stocktake, met
from tests.deeds import put
from tests.makers import Studio


def test_what_was_sold_while_counting_is_not_missing(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(put, skeins, "shelf", studio.pot)
    number = studio.do(begin_stocktake, studio.pot)
    studio.do(met, number, skeins[:1])
    studio.do(put, skeins[1:], "table")
    found = studio.book.ask(stocktake, number)
    assert found is not None
    assert found.missing == ()
    assert found.right[0].mark


def test_a_scan_taken_back_was_not_counted(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 1)
    studio.do(put, skeins, "shelf", studio.pot)
    number = studio.do(begin_stocktake, studio.pot)
    studio.do(met, number, skeins)
    studio.undo()
    found = studio.book.ask(stocktake, number)
    assert found is not None
    assert [one.yarn for one in found.missing] == skeins
