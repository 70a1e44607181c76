"""What lies on a shelf, as a table, with what a customer could take for one lot."""

from app.lookups.shelves import ShelfLot, ShelfNow
from app.window.parts.shelf_lots import ShelfLots


def lot(number, code, count, **changes):
    facts = {"colourway": "Ferry Ledger", "swatch": "#2E3553", "base": "Tarnfield 4-ply",
             "put_up": "skein", "put_by": 0} | changes
    return ShelfLot(number, code, count=count, marks=(), **facts)


def shown(qtbot, *lots):
    part = ShelfLots()
    qtbot.addWidget(part)
    part.show()
    part.show_shelf(ShelfNow(1, "S0127", "shelf 012", lots))
    return part


def test_each_lot_has_a_row(qtbot):
    part = shown(qtbot, lot(1, "2615R6F", 4, put_by=1), lot(None, None, 1, colourway=None))
    assert [tuple(row) for row in part.table._rows] == [
        ("#2E3553", "26·15·R6F", "Ferry Ledger", "Tarnfield 4-ply", "4 skeins, 1 put by"),
        ("#2E3553", "not known", "not known", "Tarnfield 4-ply", "1 skein")]
    assert not part.met.isVisible()


def test_two_lots_that_look_alike_are_told_with_their_counts(qtbot):
    part = shown(qtbot, lot(1, "2615R6F", 4), lot(2, "2618F49", 3), lot(3, "OLD77", 2))
    assert part.met.text() == (
        "3 lots of Ferry Ledger, Tarnfield 4-ply, lie here: 4 of 26·15·R6F, 3 of 26·18·F49 and "
        "2 of OLD77. Tie them apart, or say it to who buys.")


def test_an_empty_shelf_says_so(qtbot):
    part = shown(qtbot)
    assert part.table._none.text() == "Nothing lies here yet."
    assert part.table._none.isVisible()


def test_many_looks_that_lie_together_are_told_in_one_sentence(qtbot):
    looks = [(f"Look {number}", put_up) for number in range(3) for put_up in ("skein", "mini")]
    part = shown(qtbot, *(lot(None, code, 1, colourway=name, put_up=put_up)
                          for name, put_up in looks for code in ("2615R6F", "2618F49")))
    assert part.met.text() == ("In 3 colourways two lots or more lie together here. Tie them "
                               "apart, or say it to who buys.")
