import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.window.look.look import TARGET
from app.window.parts.count_pad import CountPad


@pytest.fixture
def pad(qtbot):
    pad = CountPad("red ties")
    qtbot.addWidget(pad)
    pad.show()
    QTest.qWaitForWindowActive(pad)
    return pad


def key(pad, number):
    return pad._keys.button(number)


def test_one_tap_counts(qtbot, pad):
    with qtbot.waitSignal(pad.counted) as heard:
        QTest.mouseClick(key(pad, 8), Qt.MouseButton.LeftButton)
    assert heard.args == [8]
    assert pad.count() == 8


def test_another_tap_counts_anew_and_clear_forgets(pad):
    key(pad, 8).click()
    key(pad, 6).click()
    assert pad.count() == 6
    pad.clear()
    assert pad.count() is None
    key(pad, 6).click()
    assert pad.count() == 6


def test_arrow_keys_walk_over_the_pad(pad):
    key(pad, 1).setFocus()
    QTest.keyClick(pad.windowHandle(), Qt.Key.Key_Right)
    QTest.keyClick(pad.windowHandle(), Qt.Key.Key_Down)
    QTest.keyClick(pad.windowHandle(), Qt.Key.Key_Space)
    assert pad.count() == 12


def test_every_key_has_a_name_and_is_large_enough(pad):
    for number in range(1, 21):
        assert key(pad, number).accessibleName() == f"{number} red ties"
        assert min(key(pad, number).width(), key(pad, number).height()) >= TARGET


def test_when_it_is_narrow_there_are_half_as_many_columns(qtbot, pad):
    pad.resize(300, 300)
    qtbot.waitUntil(lambda: key(pad, 5).y() < key(pad, 6).y())
    assert all(pad.rect().contains(button.geometry()) for button in pad._keys.buttons())
    pad.resize(700, 300)
    qtbot.waitUntil(lambda: key(pad, 5).y() == key(pad, 10).y() < key(pad, 11).y())
