import pytest
from PySide6.QtWidgets import QLabel

from app.window.parts.trouble_lines import TroubleLines


@pytest.fixture
def lines(qtbot):
    lines = TroubleLines()
    qtbot.addWidget(lines)
    return lines


def test_nothing_to_say_takes_no_room(lines):
    lines.show_lines("What is wrong:", ["Row 3."])
    assert [one.text() for one in lines.findChildren(QLabel)] == ["What is wrong:", "Row 3."]
    lines.show_lines("What is wrong:", [])
    assert lines.isHidden()


def test_as_many_are_shown_as_can_be_read_and_the_rest_is_counted(lines):
    lines.show_lines("What is wrong:", [f"Row {n}." for n in range(1, 9)])
    assert lines.lines == [*(f"Row {n}." for n in range(1, 7)), "And 2 more like these."]
