import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.window.tables.quiet_view import QuietView
from app.window.tables.record_table import Column, RecordTable


@pytest.fixture
def view(qtbot):
    name: Column[str] = Column("Name", lambda row: row)
    length: Column[str] = Column("Length", lambda row: str(len(row)), right=True)
    view = QuietView("names")
    model = RecordTable([name, length], lambda keys: {key: f"row {key}" for key in keys}, view)
    model.show_keys(range(100_000))
    view.setModel(model)
    view.resize(500, 300)
    qtbot.addWidget(view)
    view.show()
    view.fit_columns()
    return view


def test_arrow_keys_walk_and_enter_opens(qtbot, view):
    view.setFocus()
    view.selectRow(0)
    QTest.keyClick(view, Qt.Key.Key_Down)
    with qtbot.waitSignal(view.opened) as heard:
        QTest.keyClick(view, Qt.Key.Key_Return)
    assert heard.args == [1]


def test_the_columns_fill_the_view(view):
    assert view.horizontalHeader().length() == view.viewport().width()


def test_a_very_long_list_opens_at_once_and_jumps_to_its_end(view):
    view.scrollToBottom()
    assert view.rowAt(view.viewport().height() - 5) == 99_999


def test_rows_grow_with_the_text(view, dressed):
    before = view.rowHeight(0)
    dressed(2.0)
    assert view.rowHeight(0) > before


def test_the_view_is_named(view):
    assert view.accessibleName() == "names"
