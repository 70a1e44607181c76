"""One hold as it stands: the plate, what it is on, why, since when, whom to ask, and its ways out.
"""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.lookups.holds import HoldFacts
from app.window.benches.desk.desk_words import long_moment
from app.window.look.look import Gap, Size
from app.window.parts.card import SideBySide
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words


class HoldRow(QWidget):
    """`lift` and `clear` ask for the hold's end, or for one skein to be let through."""

    lift = Signal(object)  # HoldFacts
    clear = Signal(object)

    def __init__(
        self, hold: HoldFacts, *, here: bool = True, keys: bool = False, clears: bool = False,
        lifts: bool = True,
    ) -> None:
        """`here`: on this very thing; `keys`: with letters; `clears`, `lifts`: the ways out."""
        super().__init__()
        self.hold = hold
        words = QVBoxLayout()
        words.setSpacing(0)
        what = f"{hold.on}: {hold.why}"
        words.addWidget(Words(f"{what[:1].upper()}{what[1:]}", bold=True))
        words.addWidget(Words(f"since {long_moment(hold.since)} · ask {hold.ask}", ink=SECOND))
        self.lift_key = KeyButton("Lift the hold", "L" if keys else "")
        self.clear_key = KeyButton("Clear this skein", "C" if keys else "")
        self.lift_key.clicked.connect(lambda: self.lift.emit(hold))
        self.clear_key.clicked.connect(lambda: self.clear.emit(hold))
        self.setAccessibleName(f"HOLD on {what}, ask {hold.ask}")
        told = QHBoxLayout()
        told.setSpacing(Gap.LINE)
        told.addWidget(HoldPlate(here=here, size=Size.LEAD), 0, Qt.AlignmentFlag.AlignTop)
        told.addLayout(words, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        offered = [*([self.clear_key] if clears else []), *([self.lift_key] if lifts else [])]
        sides = [_holding(told), *([_keys(offered)] if offered else [])]
        row.addWidget(SideBySide(*sides, shares=(1, 0)))


def _keys(offered: Sequence[KeyButton]) -> QWidget:
    keys = QHBoxLayout()
    keys.setSpacing(Gap.LINE)
    keys.addStretch(1)
    for key in offered:
        key.setMinimumWidth(180)  # as wide as the keys below it
        keys.addWidget(key, 0, Qt.AlignmentFlag.AlignTop)
    return _holding(keys)


def _holding(layout: QHBoxLayout) -> QWidget:
    holder = QWidget()
    layout.setContentsMargins(0, 0, 0, 0)
    holder.setLayout(layout)
    return holder
