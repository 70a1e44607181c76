import sys

import pytest
from PySide6.QtWidgets import QPushButton

from app.problems import Refused
from app.window import problem_box


@pytest.fixture
def boxes(qtbot):
    shown = []

    def show(error):
        shown.append(problem_box.show_failure(None, error))
        return shown[-1]

    yield show
    for box in shown:
        box.close()


def test_a_problem_is_told_in_its_own_words(boxes):
    box = boxes(Refused("Printed already.", "Say which tag is spoiled."))
    assert (box.text(), box.informativeText()) == ("Printed already.", "Say which tag is spoiled.")


def test_a_fault_says_what_is_safe_and_goes_to_the_log(boxes, caplog):
    box = boxes(ZeroDivisionError("turns"))
    assert "Nothing of this was saved" in box.text()
    assert "ZeroDivisionError" in caplog.text
    assert "turns" in box.detailedText()


def test_the_box_blocks_nothing(boxes):
    box = boxes(Refused("no"))
    assert box.isVisible()


@pytest.mark.filterwarnings("ignore")
def test_an_exception_in_a_slot_reaches_the_person(qtbot, monkeypatch):
    seen = []
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    monkeypatch.setattr(problem_box, "show_failure", lambda owner, error: seen.append(error))
    problem_box.install()
    button = QPushButton()
    qtbot.addWidget(button)
    button.clicked.connect(lambda: 1 / 0)
    button.click()
    assert [type(error) for error in seen] == [ZeroDivisionError]
