"""What the scan line takes, said where nothing is in hand: an example and what it finds."""

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout

from app.window.look.look import Gap
from app.window.parts.words import CodeWords, Words


def ways_to_ask(ways: Iterable[tuple[str, str]]) -> QGridLayout:
    """(example, what it finds), the examples in one column."""
    grid = QGridLayout()
    grid.setHorizontalSpacing(Gap.CARD)
    grid.setVerticalSpacing(Gap.LINE)
    grid.setColumnStretch(1, 1)
    for row, (example, words) in enumerate(ways):
        grid.addWidget(CodeWords(example), row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(Words(words), row, 1)
    return grid
