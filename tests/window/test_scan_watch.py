import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QPushButton, QVBoxLayout, QWidget

from app.scanning.keystrokes import Garbled, Keystrokes, Scanned
from app.window.scan_watch import ScanWatch
from tests.window.hands import pause, scan, send


class Desk(QWidget):
    """A field and a key, with a watch over both."""

    def __init__(self, prefixes=None):
        super().__init__()
        self.field, self.key = QLineEdit(), QPushButton("Done")
        column = QVBoxLayout(self)
        column.addWidget(self.field)
        column.addWidget(self.key)
        self.heard, self.pressed, self.entered = [], [], []
        self.key.clicked.connect(lambda: self.pressed.append(1))
        self.field.returnPressed.connect(lambda: self.entered.append(self.field.text()))
        self.watch = ScanWatch(Keystrokes(prefixes or {}), self)
        self.watch.heard.connect(self.heard.append)


@pytest.fixture
def desk(qtbot):
    desk = Desk({"~": "pots", "#": "wash"})
    qtbot.addWidget(desk)
    desk.show()
    QTest.qWaitForWindowActive(desk)
    desk.field.setFocus()
    pause()
    return desk


@pytest.mark.parametrize("gap", [1, 5, 20, 35])
def test_a_scan_lands_in_no_field_and_presses_nothing(qtbot, desk, gap):
    send(desk, "2615R6F\r", gap)
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert desk.heard == [Scanned("2615R6F")]
    assert desk.field.text() == ""
    assert desk.entered == []


@pytest.mark.parametrize("gap", [50, 80, 200])
def test_typing_by_hand_comes_whole_and_in_order(qtbot, desk, gap):
    send(desk, "Osk 26, not 27\r", gap)
    qtbot.waitUntil(lambda: desk.entered == ["Osk 26, not 27"])
    assert desk.heard == []


@pytest.mark.parametrize("gap", [1, 20])
def test_a_few_quick_keys_are_not_lost(qtbot, desk, gap):
    send(desk, "the", gap)
    qtbot.waitUntil(lambda: desk.field.text() == "the")
    assert desk.heard == []


def test_typing_and_scanning_in_turn(qtbot, desk):
    send(desk, "slub", 90)
    pause()
    send(desk, "2615R6F\r", 5)
    pause()
    send(desk, " at one end", 90)
    qtbot.waitUntil(lambda: desk.field.text() == "slub at one end")
    assert desk.heard == [Scanned("2615R6F")]


def test_a_real_scan_takes_the_enter_away_from_shortcuts(qtbot, desk):
    taken = []
    QShortcut(QKeySequence("Return"), desk, lambda: taken.append(1))
    scan(desk, "2615R6F")
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert desk.heard == [Scanned("2615R6F")]
    assert taken == []
    QTest.qWait(50)
    scan(desk, "")
    assert taken == [1]


def test_a_real_scan_ended_by_tab_does_not_move_the_focus(qtbot, desk):
    scan(desk, "2615R6F", end="\t")
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert desk.field.hasFocus()


def test_an_arrow_or_a_backspace_never_overtakes_a_letter(qtbot, desk):
    window = desk.windowHandle()
    QTest.keyClick(window, Qt.Key.Key_X)
    QTest.keyClick(window, Qt.Key.Key_Y)
    QTest.keyClick(window, Qt.Key.Key_Left)
    QTest.keyClick(window, Qt.Key.Key_Z)
    qtbot.waitUntil(lambda: desk.field.text() == "xzy")


def test_a_held_key_repeats_at_once(qtbot, desk):
    from PySide6.QtCore import QCoreApplication, QEvent
    from PySide6.QtGui import QKeyEvent

    for repeat in (False, True, True, True, True):
        event = QKeyEvent(
            QEvent.Type.KeyPress, Qt.Key.Key_7, Qt.KeyboardModifier.NoModifier, "7", repeat
        )
        QCoreApplication.sendEvent(desk.windowHandle(), event)
    assert desk.field.text() == "77777"
    assert desk.heard == []


def test_a_space_bar_still_presses_a_key(qtbot, desk):
    desk.key.setFocus()
    QTest.keyClick(desk.windowHandle(), Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.pressed == [1])
    assert not desk.key.isDown()


def test_capitals_of_a_scanner_need_no_second_look(qtbot, desk):
    window = desk.windowHandle()
    for character in "2615":
        QTest.keyClick(window, Qt.Key(ord(character)))
    QTest.keyPress(window, Qt.Key.Key_Shift)
    QTest.keyClick(window, Qt.Key.Key_R, Qt.KeyboardModifier.ShiftModifier)
    QTest.keyRelease(window, Qt.Key.Key_Shift)
    QTest.keyClick(window, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert desk.heard[0].text.upper() == "2615R"


def test_a_slow_scanner_with_a_prefix_is_heard_and_named(qtbot, desk):
    send(desk, "~2615R6F\r", 80)
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert desk.heard == [Scanned("2615R6F", "pots")]


def test_two_scanners_at_once_are_refused_with_a_sentence(qtbot, desk):
    send(desk, "~26#2619K4415R6F\r\r", 5)
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert [type(one) for one in desk.heard] == [Garbled]
    assert desk.field.text() == ""


def test_keys_that_waited_while_the_window_was_busy_stay_together(qtbot, desk):
    """The timer is late; the keys that follow were struck in time all the same."""
    send(desk, "261", 5)
    busy = QTimer(desk)
    busy.setSingleShot(True)
    busy.timeout.connect(lambda: QTest.qSleep(120))
    busy.start(20)
    qtbot.waitUntil(lambda: not busy.isActive())
    send(desk, "5R6F\r", 5)
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert desk.heard == [Scanned("2615R6F")]
    assert desk.field.text() == ""


def test_another_window_is_watched_as_soon_as_it_has_the_focus(qtbot, desk):
    other = QLineEdit()
    qtbot.addWidget(other)
    other.show()
    other.activateWindow()
    QTest.qWaitForWindowActive(other)
    pause()
    send(other, "2615R6F\r", 5)
    qtbot.waitUntil(lambda: bool(desk.heard))
    assert other.text() == ""
