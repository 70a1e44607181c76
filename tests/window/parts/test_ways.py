"""The ways to ask stand below each other, the examples in one column."""

from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.window.parts.ways import ways_to_ask


def test_each_example_stands_before_its_words(qtbot: QtBot) -> None:
    place = QWidget()
    qtbot.addWidget(place)
    grid = ways_to_ask([("26?5R6?", "a part of a code"), ("Glove", "a name")])
    place.setLayout(grid)
    place.show()
    seen = [[grid.itemAtPosition(row, column).widget() for column in (0, 1)] for row in (0, 1)]
    assert [[one.accessibleName() or one.text() for one in line] for line in seen] == [
        ["26?5R6?", "a part of a code"], ["Glove", "a name"]]
    assert seen[0][0].x() == seen[1][0].x()
    assert seen[0][1].x() == seen[1][1].x() > seen[0][0].x()
