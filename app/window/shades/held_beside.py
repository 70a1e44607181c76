"""Before what is said of an offer: the lot in hand touching the one that is offered."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from app.calculations.shade_difference import Difference
from app.window.look.look import Gap, look
from app.window.parts.swatch import Swatch
from app.window.shades.beside import zones_of

SIZE = QSize(112, 44)
"""Two swatches of one size, side by side."""
_LARGE = 1.5  # a text factor


def held_beside(lot: str, apart: Difference | None, said: QWidget) -> QWidget:
    """Both as they were read, with their number for those who see no colour.

    Room alone where the two were not measured against each other, so that rows line up; none of
    that in large text.
    """
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(Gap.LINE)
    if apart is not None:
        swatch = Swatch(zones_of(apart.standard, apart.other),
                        f"{lot} beside what is offered, {apart}", SIZE)
        swatch.setToolTip(f"left {lot}, right what is offered")
        row.addWidget(swatch, 0, Qt.AlignmentFlag.AlignTop)
    elif look().text < _LARGE:
        row.addSpacing(SIZE.width() + Gap.LINE)
    row.addWidget(said, 1)
    return holder
