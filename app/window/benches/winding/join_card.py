"""The cone ran out inside a skein: how much of it is in there, and which cone went on."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from app.calculations.codes import shown
from app.lookups.deliveries import ConeOnHand
from app.problems import BadInput
from app.window.benches.winding.lengths import read_length
from app.window.benches.winding.reel import Reel, Skeins, left_on
from app.window.benches.winding.winding_words import long
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import Words

MOST_OFFERED = 4


class JoinCard(Card):
    """Asks one length and one cone; `cone_chosen` is for hands without a scanner."""

    cone_chosen = Signal(str)  # code
    given_up = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.first: Skeins | None = None
        self.told = Words()
        self.length = Field(
            "How much of it is in this skein?",
            self._read,
            "metres, or turns off the counter like 170 turns",
        )
        self.next = Words("Now scan the cone that went on, or choose it.", Size.TITLE, bold=True)
        self._offers = QVBoxLayout()
        row = QHBoxLayout()
        row.setSpacing(Gap.CARD)
        row.addWidget(self.told, 1)
        row.addWidget(self.length, 1)
        self.add(row, self.next, self._offers)

    def begin(self, reel: Reel, first: Skeins, others: Sequence[ConeOnHand]) -> None:
        """This cone ran out; `others` may have gone on."""
        form = first.form
        assert form is not None, "only what is described is wound"
        self.first = first
        left_mm = left_on(reel, first.cone)
        book = f"The book leaves {long(max(0, left_mm))} on it."
        if left_mm >= form.mm:
            book = f"{book} That is more than one {form.name}: read the counter of the reel."
        self.told.setText(
            f"{shown(first.cone.facts.code)} ran out inside a {form.name} of {long(form.mm)}, "
            f"{form.turns} turns. {book}"
        )
        self.length.clear()
        if 0 < left_mm < form.mm:
            self.length.line.setText(f"{left_mm / 1000:.1f}")
        self._offer(
            [
                one
                for one in others
                if one.base == first.cone.facts.base_name and one.id != first.cone.facts.id
            ]
        )
        self.length.line.setFocus()
        self.length.line.selectAll()

    def first_mm(self) -> int | None:
        """How much of the first cone is in the skein; none while the field is not readable."""
        return self.length.value()

    def _read(self, text: str) -> int:
        assert self.first is not None
        form = self.first.form
        assert form is not None
        length_mm = read_length(text, form.reel_mm)
        if not 0 < length_mm < form.mm:
            raise BadInput(
                f"A {form.name} is {long(form.mm)} long: {long(length_mm)} of one cone "
                "cannot be in it with a second.",
                "Read the counter again.",
            )
        return length_mm

    def _offer(self, others: Sequence[ConeOnHand]) -> None:
        take_down(self._offers)
        keys = [KeyButton(shown(one.code)) for one in others[:MOST_OFFERED]]
        for key, one in zip(keys, others, strict=False):
            key.clicked.connect(partial(self.cone_chosen.emit, one.code))
        give_up = KeyButton("It did not run out", "J")
        give_up.clicked.connect(self.given_up)
        self._offers.addWidget(Actions(*keys, give_up))
