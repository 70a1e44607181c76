"""A row is a key: arrow keys walk from row to row, Enter and Return choose."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.look.look import TARGET
from app.window.parts.row_button import RowButton


@pytest.fixture
def rows(qtbot: QtBot) -> Iterator[list[RowButton]]:
    place = QWidget()
    qtbot.addWidget(place)
    column, made = QVBoxLayout(place), [RowButton(), RowButton()]
    for row in made:
        row.row.addWidget(QLabel("26"))
        column.addWidget(row)
    place.show()
    QTest.qWaitForWindowActive(place)
    yield made
    place.close()


def test_arrow_keys_walk_from_row_to_row(rows: list[RowButton]) -> None:
    first, second = rows
    first.setFocus()
    QTest.keyClick(first, Qt.Key.Key_Down)
    assert second.hasFocus()
    QTest.keyClick(second, Qt.Key.Key_Up)
    assert first.hasFocus()


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_chooses_and_another_key_does_not(
    qtbot: QtBot, rows: list[RowButton], key: Qt.Key
) -> None:
    chosen: list[bool] = []
    rows[0].clicked.connect(lambda: chosen.append(True))
    QTest.keyClick(rows[0], Qt.Key.Key_A)
    assert chosen == []
    QTest.keyClick(rows[0], key)
    assert len(chosen) == 1


def test_a_row_is_as_high_as_a_finger_needs_and_is_drawn(rows: list[RowButton]) -> None:
    rows[0].setFocus()
    assert all(row.sizeHint().height() >= TARGET for row in rows)
    with_focus, without = (row.grab().toImage() for row in rows)
    assert with_focus != without
