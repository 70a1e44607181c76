"""Rows that are built anew leave nothing behind."""

from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.parts.take_down import take_down


def test_what_lay_there_is_out_of_sight_at_once_and_gone_a_round_later(qtbot: QtBot) -> None:
    place, gone = QWidget(), []
    qtbot.addWidget(place)
    rows = QVBoxLayout(place)
    first, second = QLabel("031"), QLabel("032")
    for row in (first, second):
        row.destroyed.connect(lambda: gone.append(1))
        rows.addWidget(row)
    rows.addStretch(1)
    place.show()
    take_down(rows)
    assert rows.count() == 0
    assert not first.isVisible()
    assert not second.isVisible()
    qtbot.waitUntil(lambda: len(gone) == 2)
