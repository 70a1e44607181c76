"""The room where the rails hang: two numbers once a day, and every rail has its hour."""

from decimal import Decimal, InvalidOperation

from PySide6.QtCore import Signal

from app.calculations.moments import moment_words
from app.lookups.rails import Room
from app.problems import BadInput
from app.window.parts.card import Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

_HOTTEST, _DAMPEST = 60, 100


class RoomCard(Card):
    """`read` gives tenths of a degree and per mille of humidity."""

    read = Signal(int, int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("the room")
        self.said = Words(ink=SECOND)
        self.heat = Field("Heat of the room, °C", lambda text: _number(text, _HOTTEST, "°C"), "18")
        self.damp = Field("Humidity, %", lambda text: _number(text, _DAMPEST, "%"), "60")
        self.keep = KeyButton("Keep the room", "F4")
        self.keep.clicked.connect(self._keep)
        row = self.add_row(self.said, self.heat, self.damp, self.keep)
        row.setStretch(0, 1)
        self.hide()

    def show_room(self, room: Room | None) -> None:
        """The room as it was read today, or the asking for it."""
        if room is None:
            self.said.setText("Read the room once a day, and every rail has its hour.")
        else:
            self.said.setText(f"The room has {room.words}, read {moment_words(room.at)}. The hours "
                              "are reckoned with the fan on.")

    def _keep(self) -> None:
        """F4 with nothing written begins to write."""
        for field in (self.heat, self.damp):
            if not field.line.text().strip():
                field.setFocus()
                return
        heat, damp = self.heat.value(), self.damp.value()
        if heat is not None and damp is not None:
            self.read.emit(round(heat * 10), round(damp * 10))
            self.heat.clear()
            self.damp.clear()


def _number(text: str, most: int, unit: str) -> Decimal:
    bare = text.strip().removesuffix(unit).strip().replace(",", ".")
    try:
        number = Decimal(bare)
    except InvalidOperation:
        number = Decimal("NaN")
    if not (number.is_finite() and 0 <= number <= most):
        raise BadInput(f"“{text.strip()}” is not read there.",
                       f"Write a number from 0 to {most} {unit}.")
    return number
