"""Where a lot is now, in totals."""

from app.lookups.lot_now import lot_now
from tests.full_lot import FullLot
from tests.makers import EACH_MG, Studio


def test_totals_by_state_and_order_add_up_and_name_no_buyer(studio: Studio) -> None:
    full = FullLot(studio)
    now = studio.book.ask(lot_now, full.lot)
    assert [(row.state, row.most, row.customer) for row in now.rows] == [
        ("missing at a count", 1, None), ("table", 7, None), ("sent, buyer known", 3, 1),
        ("sent, buyer not known", 1, None)]
    assert (now.count, now.seconds) == (12, 1)
    assert sum(row.mg for row in now.rows) == 12 * EACH_MG
    assert "Treddle" not in repr(now)


def test_skeins_of_a_pool_give_bounds(studio: Studio) -> None:
    rows = [studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 3)]
    lot = studio.dye(rows[0])
    studio.dye(rows[1])
    studio.mix(*rows)
    (row,) = studio.book.ask(lot_now, lot).rows
    assert (row.least, row.most) == (4, 4)
    assert studio.book.ask(lot_now, 99).rows == ()
