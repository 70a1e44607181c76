from dataclasses import replace

from PySide6.QtCore import Qt

from app.window.shades.lot_list import LotList
from tests.window.shades.maps import CODES, a_map


def test_every_lot_is_a_row_that_says_its_numbers_and_is_tapped(qtbot):
    rows = LotList()
    qtbot.addWidget(rows)
    shades = a_map(hand=2)
    rows.show_map(replace(shades, left=(0, *shades.left[1:])))
    said = [row.accessibleName() for row in rows.rows]
    assert said[2].startswith(f"3 {CODES[2]}, in hand: L* 49.0, a* −35.9, b* 4.4, ")
    assert said[0].endswith("none left")
    assert said[1].endswith("4 left")
    chosen = []
    rows.chosen.connect(chosen.append)
    rows.resize(400, 800)
    rows.show()
    qtbot.mouseClick(rows.rows[4], Qt.MouseButton.LeftButton)
    qtbot.keyClick(rows.rows[6], Qt.Key.Key_Return)
    assert chosen == [4, 6]
    rows.show_map(a_map([step.colour for step in shades.lots[:2]]))
    assert len(rows.rows) == 2
