"""How many skeins hang on the cord that is being made, and the disc it will wear."""

from PySide6.QtCore import Signal

from app.window.benches.winding.reel import Group, Join, Reel
from app.window.parts.card import Actions, Card
from app.window.parts.count_pad import CountPad
from app.window.parts.fields import CountField
from app.window.parts.key_button import KeyButton
from app.work.dividing import skeins

MOST = 40  # skeins of one cone on one cord
PAD = 12


class CountCard(Card):
    """The keys to count with, and what can be done with the count."""

    counted = Signal(int)
    disc_named = Signal(int)  # its number, typed

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("skeins on this cord")
        self.pad = CountPad("skeins", most=PAD, columns=PAD)
        self.disc = CountField("Number on the disc")
        self.tie_on = KeyButton("Tie on a disc", "Enter", strong=True)
        self.ran_out, self.end = KeyButton("Ran out", "J"), KeyButton("Cone finished", "E")
        self.fault = KeyButton("Fault", "H")
        self._typed = ""
        self.add(self.disc, self.pad, Actions(self.tie_on, self.ran_out, self.end, self.fault))
        self.pad.counted.connect(self._tapped)
        self.disc.hide()

    def show_group(self, reel: Reel, group: Group) -> None:
        """Offer what can be done with what is in hand."""
        if self.pad.count() != group.count:
            self.pad.clear()
        if not reel.total:
            self.leave_disc()
        joined = isinstance(group, Join)
        described = isinstance(group, Join) or group.form is not None
        undescribed = "" if described else f"This base is not described as a {group.put_up}."
        for key, why in (
            (self.tie_on, undescribed or ("" if reel.total else "Count the skeins first.")),
            (self.ran_out, "This skein has its join." if joined else undescribed),
            (self.end, f"First tie {skeins(reel.total)} on a disc." if reel.total else ""),
            (self.fault, "First take one cone in hand." if joined else ""),
        ):
            if why:
                key.refuse(why)
            else:
                key.allow()

    def type_digit(self, digit: str) -> None:
        """A digit of the count; a second one goes on where both make a count that can be."""
        both = int(self._typed + digit)
        self._typed = str(both) if self._typed and both <= MOST else digit
        self.counted.emit(int(self._typed))

    def forget_digits(self) -> None:
        """The next digit begins a new count."""
        self._typed = ""

    def ask_disc(self) -> None:
        """Ask for the number on the disc, for hands without a scanner."""
        self.disc.clear()
        self.pad.hide()
        self.disc.show()
        self.disc.line.setFocus()

    def leave_disc(self) -> None:
        """Count on."""
        self.disc.hide()
        self.pad.show()

    def name_disc(self) -> None:
        """Take the number that was typed, if it can be read."""
        number = self.disc.value()
        if number is not None:
            self.disc_named.emit(number)

    def _tapped(self, number: int) -> None:
        self._typed = ""
        self.counted.emit(number)
