"""The balance on this computer's wire: how it talks, and what arrives just now."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import Signal

from app.problems import BadInput
from app.scanning.balance_ear import Heard, Sends, Wiring, read_frame
from app.window.look.look import Size
from app.window.parts.amounts import read_count
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

_NOTHING = "Nothing arrived yet."


class WireCard(Card):
    """`kept` says that the wire is to be used as written."""

    kept = Signal()

    def __init__(self) -> None:
        super().__init__("Balance on this computer’s wire")
        self.sends = Sends.ALWAYS
        self.port = TextField("Port", "none")
        self.speed = Field("Speed", _speed, "9600")
        self.frame = Field("Bits, parity", read_frame, "8N1")
        self.balance = Field("Its plate", _number, "3")
        self.asks = TextField("Asked with", "P\\r\\n")
        self.mark = TextField("Mark if moving", "none")
        self.sends_key = KeyButton("", "F6")
        self.keep_key = KeyButton("Listen to it", "F9")
        self.ports, self.says = Words("", ink=SECOND), Words("", Size.LEAD, bold=True)
        self.lines = Words(_NOTHING)
        self.lines.setAccessibleName("what arrives")
        self.add(self.says, self.lines, self.ports)
        self.add_row(self.port, self.speed, self.frame)
        self.add_row(self.balance, self.asks, self.mark)
        self.add(Words("All of this stands in the balance’s own booklet.", ink=SECOND))
        self.add_last(Actions(self.sends_key, self.keep_key))
        self.sends_key.clicked.connect(self._next)
        self.keep_key.clicked.connect(self.keep)

    @property
    def _fields(self) -> tuple[Field[Any], ...]:
        return self.port, self.speed, self.frame, self.balance, self.asks, self.mark

    def has_focus(self) -> bool:
        """Whether somebody writes here."""
        return any(field.line.hasFocus() for field in self._fields)

    def keep(self) -> None:
        """Use the wire as written."""
        self.kept.emit()

    def show_wiring(self, wiring: Wiring) -> None:
        """As it stands."""
        self.sends = wiring.sends
        texts = (wiring.port, str(wiring.speed), wiring.frame,
                 str(wiring.balance) if wiring.balance else "", wiring.asks_with,
                 wiring.moving_mark)
        for field, text in zip(self._fields, texts, strict=True):
            field.line.setText(text)
        self._say_sends()

    def show_ports(self, ports: Sequence[str]) -> None:
        """The ports that are there now."""
        self.ports.setText(f"Ports here now: {', '.join(ports) or 'none'}.")

    def show_heard(self, heard: Heard) -> None:
        """The last lines as they came, and what they say."""
        self.lines.setText("\n".join(heard.lines) or _NOTHING)
        weight = heard.weight
        said = "" if weight is None else (
            f"{weight.figures} g, {'stands' if heard.stands else 'still moving'}"
            + ("" if weight.has_unit else " (without a unit: read as grams)"))
        self.says.setText(heard.sentence or said)
        self.says.setVisible(bool(heard.sentence or said))

    def wiring(self) -> Wiring | None:
        """As written; none where something cannot be read, which is said in its place."""
        speed, frame, number = self.speed.value(), self.frame.value(), self.balance.value()
        if speed is None or frame is None or number is None:
            return None
        return Wiring(self.port.line.text().strip(), speed, frame, self.sends,
                      self.asks.line.text(), self.mark.line.text().strip(), number)

    def _next(self) -> None:
        ways = list(Sends)
        self.sends = ways[(ways.index(self.sends) + 1) % len(ways)]
        self._say_sends()

    def _say_sends(self) -> None:
        self.sends_key.say(f"It sends {self.sends}")
        self.asks.setEnabled(self.sends is Sends.ASKED)


def _speed(text: str) -> int:
    speed = read_count(text)
    if not 50 <= speed <= 921_600:
        raise BadInput(f"{text.strip()} is no speed of a wire.", "Write it like 9600.")
    return speed


def _number(text: str) -> int:
    return read_count(text) if text.strip() else 0
