import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.window.parts.thing_table import Head, ThingTable

ROWS = [("R. Osk", "2", "2615R6F"), ("walk-in", "1", "2606H3W")]


@pytest.fixture
def table(qtbot):
    heads = ("customer", Head("skeins", right=True), Head("lot", codes=True))
    table = ThingTable(heads, "buyers", none="Nobody yet.", opens=True)
    qtbot.addWidget(table)
    table.resize(600, 300)
    table.show()
    QTest.qWaitForWindowActive(table)
    return table


def test_all_rows_are_in_sight(table):
    table.show_rows(ROWS)
    bottom = table.view.rowViewportPosition(1) + table.view.rowHeight(1)
    assert bottom <= table.view.viewport().height()
    assert not table.view.verticalScrollBar().isVisible()


def test_numbers_keep_to_the_right_with_their_head(table):
    table.show_rows(ROWS)
    right = Qt.AlignmentFlag.AlignRight
    assert table.model.index(0, 1).data(Qt.ItemDataRole.TextAlignmentRole) & right
    alignment = table.model.headerData(
        1, Qt.Orientation.Horizontal, Qt.ItemDataRole.TextAlignmentRole
    )
    assert alignment & right


def test_no_rows_say_so(table):
    assert not table.view.isVisible()
    assert table._none.isVisible()
    table.show_rows(ROWS)
    assert table.view.isVisible()
    assert not table._none.isVisible()


def test_a_row_opens_with_enter_and_with_a_click(qtbot, table):
    table.show_rows(ROWS)
    table.view.setFocus()
    table.view.selectRow(1)
    with qtbot.waitSignal(table.opened) as heard:
        QTest.keyClick(table.view, Qt.Key.Key_Return)
    assert heard.args == [1]
    first = table.view.visualRect(table.model.index(0, 0)).center()
    with qtbot.waitSignal(table.opened) as heard:
        QTest.mouseClick(table.view.viewport(), Qt.MouseButton.LeftButton, pos=first)
    assert heard.args == [0]


def test_rows_that_open_are_as_high_as_what_is_pressed(qtbot, table):
    quiet = ThingTable(("customer",))
    qtbot.addWidget(quiet)
    assert table.view.row_height() >= 44 > quiet.view.row_height() >= 24


def test_tab_leaves_the_table(qtbot, table):
    table.show_rows(ROWS)
    assert not table.view.tabKeyNavigation()


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_cells_have_room_for_their_words(table, dressed, factor):
    table.show_rows(ROWS)
    dressed(factor)
    for column in range(3):
        needs = table.view.sizeHintForColumn(column)
        assert table.view.columnWidth(column) >= needs
    assert table.view.rowHeight(0) >= table.view.fontMetrics().height()


def test_a_swatch_column_has_room_for_swatches(qtbot):
    table = ThingTable((Head("", swatch=True), "lot"))
    qtbot.addWidget(table)
    table.show_rows([("#1B856E", "26·06·H3W"), ("", "26·12·F5F")])
    table.resize(300, table.sizeHint().height())
    image = table.grab().toImage()
    head = table.view.horizontalHeader().height()
    assert table.view.row_height() >= 44
    assert image.pixelColor(20, head + 28).name().upper() == "#1B856E"
