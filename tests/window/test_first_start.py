import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit

from app.window.first_start import FirstStart


@pytest.fixture
def first(qtbot):
    first = FirstStart()
    qtbot.addWidget(first)
    first.show()
    QTest.qWaitForWindowActive(first)
    first.setFocus()
    return first


def test_two_answers_begin_a_book(qtbot, first):
    window = first.windowHandle()
    QTest.keyClicks(first.studio.line, "Quernlow Dyeyard")
    QTest.keyClicks(first.initials.line, "ow")
    with qtbot.waitSignal(first.answered) as heard:
        QTest.keyClick(window, Qt.Key.Key_Return)
    assert heard.args == ["Quernlow Dyeyard", "OW", ""]


def test_a_name_may_be_given(qtbot, first):
    QTest.keyClicks(first.studio.line, "Quernlow Dyeyard")
    QTest.keyClicks(first.initials.line, "OW")
    QTest.keyClicks(first.name.line, "O. Wray")
    with qtbot.waitSignal(first.answered) as heard:
        QTest.keyClick(first.windowHandle(), Qt.Key.Key_Return)
    assert heard.args[2] == "O. Wray"


@pytest.mark.parametrize("initials", ["", "O W", "OWENS", "–"])
def test_what_is_missing_is_said_and_the_rest_kept(qtbot, first, initials):
    first.studio.line.setText("Quernlow Dyeyard")
    first.initials.line.setText(initials)
    with qtbot.assertNotEmitted(first.answered):
        QTest.keyClick(first.windowHandle(), Qt.Key.Key_Return)
    assert first.initials.wrong.isVisible()
    assert first.studio.line.text() == "Quernlow Dyeyard"


def test_it_asks_no_more_than_it_must(first):
    assert len(first.findChildren(QLineEdit)) == 3
    assert first.studio.line.hasFocus()
