"""What may still be said of the thing in hand: of which origin it is, and that some are gone."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.lookups.recognising import MayBeOf, StillToSay
from app.window.benches.desk.desk_words import how_many
from app.window.look.look import Gap
from app.window.parts.card import Actions, Card
from app.window.parts.fields import CountField
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words


class EvidenceCard(Card):
    """`recognised` gives StillToSay and MayBeOf; `lost` StillToSay and how many.

    `other_lot`: the tag in hand hangs on a skein of another lot.
    """

    recognised = Signal(object, object)
    lost = Signal(object, int)
    other_lot = Signal()

    def __init__(self) -> None:
        super().__init__("What was seen of it since")
        self.said: StillToSay | None = None
        self.keys: list[KeyButton] = []
        self.count = CountField("How many are gone")
        self.lost_key = KeyButton("")
        self.other_key = KeyButton("Its tag is another lot's", "W")
        self._of = Words(ink=SECOND)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Gap.SMALL)
        self.add(self._of, self._rows, self.count, Actions(self.lost_key, self.other_key))
        self.lost_key.clicked.connect(self._lose)
        self.count.line.returnPressed.connect(self._lose)
        self.other_key.clicked.connect(self.other_lot)
        self.hide()

    def show_said(self, said: StillToSay | None, *, tagged: bool = False) -> None:
        """Show what may be said of another thing; of a tagged skein, also that its tag is wrong."""
        self.said = said
        self.setVisible(said is not None)
        take_down(self._rows)
        self.keys = []
        if said is None:
            return
        self.other_key.setVisible(tagged)
        one = said.count == 1
        self._of.setText(f"{'It is' if one else 'They are'} one of a pool. Whoever sees by tie, "
                         "count or shade which:")
        self._of.setVisible(bool(said.may_be))
        for may_be in said.may_be:
            self._rows.addWidget(self._key(said, may_be))
        self.count.setVisible(not one)
        self.count.clear()
        self.lost_key.say("It is lost" if one else "So many are lost")

    def _key(self, said: StillToSay, may_be: MayBeOf) -> KeyButton:
        key = KeyButton(f"{'It is' if said.count == 1 else 'All are'} of {may_be.words}: "
                        f"{how_many(may_be.count)} not told yet")
        key.clicked.connect(lambda: self.recognised.emit(said, may_be))
        self.keys.append(key)
        return key

    def _lose(self) -> None:
        if self.said is None:
            return
        count = 1 if self.said.count == 1 else self.count.value()
        if count:
            self.lost.emit(self.said, count)
