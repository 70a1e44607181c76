"""A put-up on the balance at the tag table: the verdict first, what is offered, and the room."""

from decimal import Decimal, InvalidOperation

from PySide6.QtCore import Qt, Signal

from app.calculations.put_up_weight import CheckedWeight
from app.lookups.put_up_weights import ToWeigh
from app.problems import BadInput
from app.scanning.balance_ear import Heard
from app.window.benches.tagging.weight_words import LIGHT, lot_words, room_words, verdict_words
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, GramsField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, BigNumber, Words

_TIE_FIRST = "Tie its tag on and scan it first."


class WeighCard(Card):
    """`weighed` asks to take what stands in the field; `room` to keep what is written of the room.
    """

    weighed = Signal()
    room = Signal()

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("weigh and tag")
        self._column.setSpacing(Gap.SMALL)  # all of it is seen at once
        self.whose, self.verdict = Words("", Size.LEAD, bold=True), BigNumber()
        self.field = GramsField("On the balance")
        self.take = KeyButton("Take the weight", "Enter", strong=True)
        self.wire, self.said = Words("", ink=SECOND), Words()
        self.sell, self.second = KeyButton("", "F4"), KeyButton("Call it a second", "F5")
        self.reference, self.dry = GramsField("Reference, g"), GramsField("Its dry mass, g")
        self.damp = Field("or humidity, %", _humidity, "65")
        self.keep = KeyButton("Keep the room", "F6")
        self.leave = KeyButton("Back to the tags", "F8")
        self.add(self.whose, self.verdict, Actions(self.sell, self.second))
        row = self.add_row(self.field, self.take)
        row.setAlignment(self.take, Qt.AlignmentFlag.AlignBottom)
        row.setStretch(0, 1)
        self.add(self.wire, self.said)
        room = self.add_row(self.reference, self.dry, self.damp)
        for place in range(3):
            room.setStretch(place, 1)  # as wide as before where one says what is wrong
        self.add_last(Actions(self.keep, self.leave))
        self.setFocusProxy(self.field)
        self.take.clicked.connect(self.save)
        self.keep.clicked.connect(self.room)
        self.show_wire(Heard(), wired=False)
        self.show_weight(None, 0, None, tagged=False)

    def save(self) -> None:
        """Enter and DONE: the room if somebody writes of it, else the weight."""
        if any(field.line.hasFocus() for field in (self.reference, self.dry, self.damp)):
            self.room.emit()
        else:
            self.weighed.emit()

    def show_room(self, now: ToWeigh) -> None:
        """The room as it was read, and what was weighed of the lot before."""
        self.said.setText(f"{lot_words(now.lot, now.nominal_mg, now.put_up)} "
                          f"{room_words(now.room)}")
        if now.dry_mg and not self.dry.line.text():
            self.dry.line.setText(f"{Decimal(now.dry_mg) / 1000:f}")

    def show_weight(
        self, now: ToWeigh | None, mg: int, checked: CheckedWeight | None, *, tagged: bool
    ) -> None:
        """The verdict on what was weighed, and what may be done where it is light."""
        self.verdict.setVisible(now is not None)
        if now is not None:
            self.verdict.show_number(*verdict_words(now, mg, checked))
        light = checked is not None and checked.verdict in LIGHT
        for key in (self.sell, self.second):
            key.setVisible(light)
            if tagged:
                key.allow()
            else:
                key.refuse(_TIE_FIRST)
        self.sell.say(f"Sell as {checked.sell_as_g if checked else 0} g")

    def show_wire(self, heard: Heard, *, wired: bool) -> None:
        """What the balance on the wire says; nothing where none is wired."""
        words = heard.sentence
        if wired and heard.weight is not None:
            words = f"{heard.weight.figures} g {'stands' if heard.stands else 'still moves'}"
        self.wire.setText(words if wired else "")
        self.wire.setVisible(bool(wired and words))


def _humidity(text: str) -> Decimal:
    bare = text.strip().removesuffix("%").strip().replace(",", ".")
    try:
        number = Decimal(bare)
    except InvalidOperation:
        number = Decimal("NaN")
    if not (number.is_finite() and 0 <= number <= 100):
        raise BadInput(f"“{text.strip()}” is no humidity.", "Write a number from 0 to 100.")
    return number
