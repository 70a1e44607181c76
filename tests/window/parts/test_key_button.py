import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.look.look import TARGET, Size, look
from app.window.parts.key_button import KeyButton


@pytest.fixture
def pressed(qtbot):
    """A window with one key, and a list that grows when it is pressed."""
    heard, windows = [], []

    def make(*args, **more):
        window = QWidget()
        key = KeyButton(*args, **more)
        key.clicked.connect(lambda: heard.append(1))
        QVBoxLayout(window).addWidget(key)
        windows.append(window)
        qtbot.addWidget(window)
        window.show()
        QTest.qWaitForWindowActive(window)
        return key, heard

    return make


def strike(key, name):
    QTest.keyClick(key.window().windowHandle(), name)


def test_its_key_presses_it_wherever_the_focus_is(pressed):
    key, heard = pressed("Put by", "F5")
    strike(key, Qt.Key.Key_F5)
    assert heard == [1]


@pytest.mark.parametrize("name", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_means_both_enter_keys(pressed, name):
    key, heard = pressed("Take the weight", "Enter")
    strike(key, name)
    assert heard == [1]


def test_space_presses_it_when_it_has_the_focus(pressed):
    key, heard = pressed("Put by")
    key.setFocus()
    strike(key, Qt.Key.Key_Space)
    assert heard == [1]


def test_refused_it_says_why_and_does_nothing(pressed):
    key, heard = pressed("Sell", "F6")
    key.refuse("1 left, 2 wanted.")
    strike(key, Qt.Key.Key_F6)
    key.click()
    assert heard == []
    assert "1 left, 2 wanted." in key.accessibleDescription()
    key.allow()
    strike(key, Qt.Key.Key_F6)
    assert heard == [1]


@pytest.mark.parametrize("factor", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("why", ["", "12 of 12 are printed: say first which one is spoiled."])
def test_its_words_are_never_clipped(qtbot, dressed, factor, why):
    dressed(factor)
    key = KeyButton("Print one more tag", "F7")
    qtbot.addWidget(key)
    if why:
        key.refuse(why)
    size = key.sizeHint()
    words = QFontMetricsF(look().font(Size.PLAIN, bold=True))
    assert words.horizontalAdvance("Print one more tag") + 24 <= size.width()
    reason = QFontMetricsF(look().font(Size.SMALL)).boundingRect(
        QRect(0, 0, size.width() - 24, 1000), int(Qt.TextFlag.TextWordWrap), why
    )
    assert words.height() + reason.height() * bool(why) <= size.height()
    assert size.height() >= TARGET
    assert size.width() % 4 == size.height() % 4 == 0


def test_an_ampersand_is_a_word_and_no_hidden_key(qtbot):
    key = KeyButton("Wash & dry")
    qtbot.addWidget(key)
    assert key.shortcut().isEmpty()
    assert key.accessibleName() == "Wash & dry"


def test_it_can_say_something_else(qtbot):
    key = KeyButton("Show it")
    qtbot.addWidget(key)
    key.say("Show the whole of it")
    assert key.accessibleName() == "Show the whole of it"
