"""What is in hand: its colour, its name and code, what the book says first, and what stops it."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from app.exchange.tracing import sentences
from app.scanning.how_known import Came
from app.scanning.saying import void_words
from app.window.benches.desk.desk_words import came_of, ecru_words, kind_words
from app.window.benches.desk.hold_row import HoldRow
from app.window.benches.desk.looking import InHand
from app.window.benches.desk.thing_row import swatch_of
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.key_button import KeyButton
from app.window.parts.read_page import FROM_WORDS
from app.window.parts.swatch import Swatch
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, CodeWords, FactLine, Words

SWATCH = QSize(152, 136)
MOST_BATCHES = 3
"""Of what is mixed in a jar so many can be held here, the most of it first."""
_SHOWN_HERE = ("Became", "How sure")
_NO_HOLD = {
    "tag": "It hangs on no skein: hold its lot.",
    "jar": "Hold its fill, among the suspects of a fault (F1).",
    "disc": "Hold the lot or the cone of what hangs on it.",
}


class NameCard(Card):
    """The card of the thing in hand, with the keys for it."""

    lift = Signal(object)  # HoldFacts
    clear = Signal(object)

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("in hand")
        self.kind, self.code = Words(ink=SECOND), CodeWords(size=Size.TITLE)
        self.name, self.note = Words("", Size.LEAD, bold=True), Words()
        self.named = Words(bold=True)
        self.named.hide()
        self.hold_key = KeyButton("Put a hold on it", "H")
        self.paper_key = KeyButton("Trace as paper", "P")
        self.picture_key = KeyButton("Trail as a picture", "T")
        self.away_key = KeyButton("Put away", "F8")
        self.fault_key = KeyButton("Report a fault", "F")
        self.good_key = KeyButton("Seen good", "G")
        self.recall_key = KeyButton("Who has it", "R")
        self.shades_key = KeyButton("Shades", "S")
        self.batch_keys = tuple(KeyButton("", "" if n else "B") for n in range(MOST_BATCHES))
        self.facts: list[FactLine] = []
        self.holds: list[HoldRow] = []
        self._holds, self._facts = QVBoxLayout(), QVBoxLayout()
        self._holds.setSpacing(Gap.SMALL)
        self._facts.setSpacing(Gap.HAIR)
        self._swatch = QVBoxLayout()
        self._swatch.setSpacing(Gap.HAIR)
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        for part in (self.kind, self.code, self.name, self.named, self.note):
            words.addWidget(part)
        words.addSpacing(Gap.HAIR)
        words.addLayout(self._facts)
        words.addStretch(1)
        row = QHBoxLayout()
        row.setSpacing(Gap.PART)
        row.addLayout(self._swatch)
        row.addLayout(words, 1)
        self.add(self._holds, SideBySide(_holding(row), _holding(self._keys()), shares=(1, 0)),
                 Actions(self.fault_key, self.good_key, self.recall_key, self.shades_key,
                         *self.batch_keys))

    def show_thing(self, thing: InHand) -> None:
        """Show another thing."""
        found = thing.found
        kind = kind_words(found.kind)
        self.kind.setText(f"{kind[:1].upper()}{kind[1:]}")
        self.code.show_code(found.shown)
        self.name.setText(found.words)
        self.name.setVisible(bool(found.words))
        self.note.setText(f"{void_words(found)} Throw it away." if found.void else "")
        self.note.setVisible(found.void)
        self._show_swatch(thing)
        self._show_facts(thing)
        self._show_holds(thing)
        self._offer(thing)
        if thing.source is None:
            self.hold_key.refuse(_NO_HOLD.get(found.kind, f"A {kind} is never on hold."))
        else:
            self.hold_key.allow()

    def show_came(self, came: Came) -> None:
        """Say that the thing was only named, where no scan brought it here."""
        words = FROM_WORDS.get(came, "")
        self.named.setText(f"As stated, {words}: scan its tag when it comes." if words else "")
        self.named.setVisible(bool(words))

    def _offer(self, thing: InHand) -> None:
        """What may be told of it, and asked of all that came of it."""
        kind = thing.found.kind
        self.fault_key.setVisible(kind in ("skein", "lot"))
        self.good_key.setVisible(kind == "skein")
        self.recall_key.setVisible(thing.source is not None)
        self.shades_key.setVisible(kind in ("skein", "lot", "tag"))
        for n, key in enumerate(self.batch_keys):
            key.setVisible(n < len(thing.batches))
        for key, batch in zip(self.batch_keys, thing.batches, strict=False):
            key.say(f"Hold the whole batch: {came_of(batch)}" if len(thing.batches) == 1 else
                    f"Hold {batch.words}: {came_of(batch)}")

    def _keys(self) -> QBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(Gap.SMALL)
        for key in (self.hold_key, self.picture_key, self.paper_key, self.away_key):
            column.addWidget(key)
        column.addStretch(1)
        return column

    def _show_swatch(self, thing: InHand) -> None:
        take_down(self._swatch)
        picture = swatch_of(thing.found, SWATCH, 84)
        self._swatch.addWidget(picture, 0, Qt.AlignmentFlag.AlignTop)
        if isinstance(picture, Swatch) and thing.found.swatch:
            self._swatch.addWidget(Words("by eye, not measured", Size.SMALL, ink=SECOND))
        self._swatch.addStretch(1)

    def _show_facts(self, thing: InHand) -> None:
        take_down(self._facts)
        said = [one for one in sentences(thing.traced) if one[0] in _SHOWN_HERE]
        near = (("Companions", thing.relatives.companions), ("Sisters", thing.relatives.sisters),
                ("Same recipe and day, fills not known", thing.relatives.fills_not_known))
        said += [(label, ", ".join(codes)) for label, codes in near if codes]
        if thing.ecru is not None:
            said.append(("Undyed", ecru_words(thing.ecru)))
        self.facts = [FactLine(label, words[:1].upper() + words[1:]) for label, words in said]
        for fact in self.facts:
            self._facts.addWidget(fact)

    def _show_holds(self, thing: InHand) -> None:
        take_down(self._holds)
        self.holds = [
            HoldRow(hold, here=hold.source == thing.source, keys=not place,
                    clears=thing.found.kind == "skein" and hold.source != thing.source)
            for place, hold in enumerate(thing.holds)
        ]
        for row in self.holds:
            row.lift.connect(self.lift)
            row.clear.connect(self.clear)
            self._holds.addWidget(row)


def _holding(layout: QBoxLayout) -> QWidget:
    holder = QWidget()
    layout.setContentsMargins(0, 0, 0, 0)
    holder.setLayout(layout)
    return holder
