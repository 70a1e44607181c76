import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.problems import NotFound, Refused
from app.window.parts.key_button import KeyButton
from app.window.strips import ProblemStrip, SignOn


@pytest.fixture
def strip(qtbot):
    strip = ProblemStrip()
    qtbot.addWidget(strip)
    return strip


@pytest.fixture
def sign_on(qtbot):
    sign_on = SignOn()
    qtbot.addWidget(sign_on)
    sign_on.open("till")
    QTest.qWaitForWindowActive(sign_on)
    return sign_on


def key(widget, name):
    return next(k for k in widget.findChildren(KeyButton) if k.accessibleName() == name)


def test_a_problem_says_what_and_what_to_do(strip):
    strip.show_problem(Refused("12 of 12 are printed.", "Say which is spoiled."))
    assert strip.isVisible()
    assert strip.accessibleName() == "12 of 12 are printed. Say which is spoiled."
    assert not key(strip, "").isVisible()


def test_it_is_put_away_with_one_key(strip):
    strip.show_problem(Refused("No."))
    key(strip, "Put away").click()
    assert not strip.isVisible()


def test_a_way_on_is_offered_and_taken(strip):
    taken = []
    strip.show_problem(NotFound("It is a lot."), "Show it", lambda: taken.append(1))
    key(strip, "Show it").click()
    assert taken == [1]
    assert not strip.isVisible()


def test_who_it_is_takes_two_answers_and_enter(qtbot, sign_on):
    assert sign_on.initials.line.hasFocus()
    QTest.keyClicks(sign_on.initials.line, "da")
    with qtbot.waitSignal(sign_on.signed) as heard:
        QTest.keyClick(sign_on.initials.line, Qt.Key.Key_Return)
    assert heard.args == ["da", "till"]


def test_without_initials_nobody_signs_on(qtbot, sign_on):
    with qtbot.assertNotEmitted(sign_on.signed):
        key(sign_on, "Sign on").click()
    assert sign_on.initials.wrong.text() == "Write the initials you sign with."
