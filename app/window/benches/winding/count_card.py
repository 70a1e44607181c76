"""How many skeins hang on the cord that is being made, and the disc it will wear."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from app.window.benches.winding.reel import Group, Join, Reel
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.count_pad import CountPad
from app.window.parts.fields import CountField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Digits, Words
from app.work.dividing import skeins

MOST = 40  # skeins of one cone on one cord
PAD = 12
PLATES = "Plates: COUNT · DONE ties on · SPLIT minis · MIXED a skein of two cones · HOLD a fault"


class CountCard(Card):
    """The count in large figures, the keys to set it, and what can be done with it."""

    counted = Signal(int)
    disc_named = Signal(int)  # its number, typed

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("skeins on this cord")
        self.number, self.what = Digits("", Size.HUGE), Words("", Size.LEAD, bold=True)
        self.next = Words("", Size.LEAD)
        self.pad = CountPad("skeins", most=PAD, columns=PAD)
        self.disc = CountField("Number on the disc", "31")
        self.tie_on = KeyButton("Tie on a disc", "Enter", strong=True)
        self.form, self.ran_out = KeyButton("Wind minis", "M"), KeyButton("Ran out", "J")
        self.other_thread = KeyButton("Other thread", "T")
        self.end, self.fault = KeyButton("Cone finished", "E"), KeyButton("Fault", "H")
        self._typed = ""
        top = QHBoxLayout()
        top.setSpacing(Gap.PART)
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addStretch(1)
        words.addWidget(self.what)
        words.addWidget(self.next)
        words.addStretch(1)
        top.addWidget(self.number)
        top.addLayout(words, 1)
        top.addWidget(self.disc, 0, Qt.AlignmentFlag.AlignVCenter)
        self.add(top, self.pad)
        self.add(Actions(self.tie_on, self.form, self.ran_out, self.other_thread, self.end,
                         self.fault))
        self.add(Words(PLATES, Size.SMALL, ink=SECOND))
        self.pad.counted.connect(self._tapped)
        self.disc.hide()

    def show_group(self, reel: Reel, group: Group, disc: str = "") -> None:
        """Show the count of what is in hand, and what comes next."""
        count = group.count
        self.number.show_number(str(count) if count else "–")
        self.what.setText(
            f"{'skein' if count == 1 else 'skeins'} of two cones"
            if isinstance(group, Join)
            else _of(group.put_up, count)
        )
        self.next.setText(_next(reel, group, disc))
        if self.pad.count() != count:
            self.pad.clear()
        if not reel.total:
            self.disc.hide()
        self._show_keys(reel, group)

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
        self.disc.show()
        self.disc.line.setFocus()

    def name_disc(self) -> bool:
        """Take the number that was typed; True if one was asked for and can be read."""
        number = self.disc.value()
        if number is not None:
            self.disc_named.emit(number)
        return number is not None

    def _tapped(self, number: int) -> None:
        self._typed = ""
        self.counted.emit(number)

    def _show_keys(self, reel: Reel, group: Group) -> None:
        joined = isinstance(group, Join)
        other = "mini" if isinstance(group, Join) or group.put_up == "skein" else "skein"
        self.form.say(f"Wind {other}s")
        for key, why in (
            (self.tie_on, "" if reel.total else "Count the skeins first."),
            (self.form, _why_not_wound_as(group, other)),
            (self.ran_out, "This skein has its join." if joined else ""),
            (self.fault, "First take one cone in hand." if joined else ""),
            (self.end, _why_not_ended(reel)),
        ):
            if why:
                key.refuse(why)
            else:
                key.allow()


def _of(put_up: str, count: int) -> str:
    return skeins(count or 2, put_up).partition(" ")[2]


def _next(reel: Reel, group: Group, disc: str) -> str:
    if disc and not reel.total:
        return f"Disc {disc} is at hand: count the skeins, then DONE."
    if disc:
        return f"Disc {disc} is at hand: DONE ties it on."
    if isinstance(group, Join):
        return "Count what the next cone gave, or scan the disc."
    if not group.count:
        return "Count what hangs on this cord."
    return "Now scan the disc of this cord."


def _why_not_wound_as(group: Group, put_up: str) -> str:
    if isinstance(group, Join):
        return "A join is one skein."
    if group.cone.form(put_up) is None:
        return f"{group.cone.facts.base_name} is not described as a {put_up}."
    return ""


def _why_not_ended(reel: Reel) -> str:
    return f"First tie {skeins(reel.total)} on a disc." if reel.total else ""
