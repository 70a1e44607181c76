import pytest
from PySide6.QtWidgets import QLabel

from app.exchange.cells import Row, Table
from app.exchange.columns import propose
from app.exchange.order_headings import ORDERS
from app.window.parts.columns_panel import NOWHERE, ColumnsPanel

NOTE = propose(Table((Row(1, ("Note", "Base", "Weight A", "Remark " * 9)),)), {})
SHOP = propose(Table((Row(1, ("Order", "Product", "Quantity", "Billing name", "Shipping name")),)),
               {}, None, ORDERS)


@pytest.fixture
def panel(qtbot):
    panel = ColumnsPanel()
    qtbot.addWidget(panel)
    return panel


def test_what_is_lacking_is_asked_with_every_heading(qtbot, panel):
    panel.show_match(NOTE, {"gross": "No column is headed so."}, {}, all_of=False)
    assert [key for key in panel.keys if key[0] == "gross"] == [
        ("gross", heading) for heading in NOTE.headings]
    assert "No column is headed so." in [one.text() for one in panel.findChildren(QLabel)]
    with qtbot.waitSignal(panel.chosen) as heard:
        panel.keys["gross", "Weight A"].click()
    assert heard.args == ["gross", "Weight A"]
    assert panel.keys["gross", "Weight A"].accessibleName() == (
        "the gross weight stands in Weight A")


def test_what_may_be_said_once_for_all_rows_is_written_there(qtbot, panel):
    panel.show_match(NOTE, {"batch": "Where is it?"}, {}, all_of=False)
    panel.fields["batch"].setText("A-203")
    with qtbot.waitSignal(panel.given) as heard:
        assert panel.settle()
    assert heard.args == ["batch", "A-203"]
    panel.show_match(SHOP, {"count": "Where is it?"}, {}, all_of=False)
    assert not panel.fields
    assert not panel.settle()


def test_a_doubt_may_be_settled_with_no_column_and_what_must_be_there_may_not(qtbot, panel):
    panel.show_match(SHOP, {"name": "It may stand in two."}, {}, all_of=False)
    with qtbot.waitSignal(panel.chosen) as heard:
        panel.keys["name", NOWHERE].click()
    assert heard.args == ["name", ""]
    panel.show_match(NOTE, {"gross": "Where is it?"}, {}, all_of=False)
    assert ("gross", NOWHERE) not in panel.keys


def test_all_fields_of_its_kind_of_list_can_be_put_right(qtbot, panel):
    panel.show_match(SHOP, {}, {}, all_of=True)
    assert [field for field, heading in panel.keys if heading == ""] == list(ORDERS.fields)
    with qtbot.waitSignal(panel.asked) as heard:
        panel.keys["count", ""].click()
    assert heard.args == ["count"]
