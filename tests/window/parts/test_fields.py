from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QHBoxLayout, QWidget

from app.window.look.look import TARGET
from app.window.parts.fields import CountField, GramsField, TextField


@pytest.fixture
def shown(qtbot):
    def show(field):
        qtbot.addWidget(field)
        field.show()
        QTest.qWaitForWindowActive(field)
        return field

    return show


def test_what_can_be_read_is_answered(shown):
    for field, written, meant in (
        (GramsField("Gross"), "1 462,5 g", Decimal("1462.5")),
        (CountField("Skeins"), "12", 12),
        (TextField("Note"), "  slub  ", "slub"),
    ):
        shown(field).line.setText(written)
        assert field.value() == meant
        assert not field.wrong.isVisible()


def test_what_is_wrong_is_said_and_what_was_typed_is_kept(shown):
    field = shown(GramsField("Gross"))
    field.line.setText("1,462")
    assert field.value() is None
    assert "1.462" in field.wrong.text()
    assert field.wrong.isVisible()
    assert field.line.text() == "1,462"
    assert field.line.accessibleDescription() == field.wrong.text()


def test_typing_on_takes_the_sentence_away(shown):
    field = shown(GramsField("Gross"))
    field.line.setText("1,462")
    field.value()
    field.line.setFocus()
    QTest.keyClick(field.line, Qt.Key.Key_End)
    QTest.keyClicks(field.line, "0")
    assert not field.wrong.isVisible()


def test_what_enter_is_answered_with_stays_although_it_can_be_read(shown):
    field = shown(CountField("How many"))
    field.line.returnPressed.connect(lambda: field.complain("5 are there, not 12."))
    field.line.setFocus()
    QTest.keyClicks(field.line, "12")
    QTest.keyClick(field.line, Qt.Key.Key_Return)
    assert field.wrong.isVisible()
    assert field.wrong.text() == "5 are there, not 12."
    QTest.keyClicks(field.line, "0")
    assert not field.wrong.isVisible()


def test_it_settles_when_the_person_is_done_and_it_can_be_read(qtbot, shown):
    field = shown(CountField("Skeins"))
    field.line.setFocus()
    QTest.keyClicks(field.line, "twelve")
    with qtbot.assertNotEmitted(field.settled):
        QTest.keyClick(field.line, Qt.Key.Key_Return)
    field.clear()
    QTest.keyClicks(field.line, "12")
    with qtbot.waitSignal(field.settled):
        QTest.keyClick(field.line, Qt.Key.Key_Return)


def test_the_name_is_the_fields_and_the_field_is_large_enough(shown):
    field = shown(GramsField("Gross weight"))
    assert field.line.accessibleName() == "Gross weight"
    assert field.line.height() >= TARGET


def test_a_needed_answer_says_so(shown):
    field = shown(TextField("At", needed="Say which station this is."))
    assert field.value() is None
    assert field.wrong.text() == "Say which station this is."


def test_a_field_stays_where_it_was_when_its_neighbour_complains(shown):
    beside = QWidget()
    row = QHBoxLayout(beside)
    wrong, right = CountField("How many"), TextField("For whom")
    row.addWidget(wrong)
    row.addWidget(right)
    beside.setFixedWidth(640)
    shown(beside)
    before = right.line.y()
    wrong.complain("1 can still be promised, not 2: look what is left, or offer another lot.")
    QTest.qWait(20)
    assert wrong.wrong.isVisible()
    assert right.line.y() == before == wrong.line.y()
