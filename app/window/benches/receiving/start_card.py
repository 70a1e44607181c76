"""Nothing in hand at the door: a delivery by weight begins, or a list is chosen."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from app.exchange.delivery_note import NOT_STATED
from app.lookups.deliveries import AtTheDoor, DeliveryRow
from app.lookups.door import BaseNow
from app.problems import BadInput
from app.window.benches.receiving.delivery import OPENING, Heading, InHand
from app.window.benches.receiving.door_words import cones, the_one
from app.window.benches.receiving.hand import Hand, go_to
from app.window.benches.receiving.offered import Offered
from app.window.look.icons import Icon
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.picture import Picture
from app.window.parts.words import SECOND, Words

_DELIVERY = ("What came in?", "Say whose it is, then weigh cone after cone.")
_OPENING = ("What lay here before the book began?",
            "Part cones too: weigh each as it stands, with its centre.")


class StartCard(Hand):
    """Three fields and a list; `begun` gives the Heading of a delivery by weight."""

    begun = Signal(object)
    file_wanted = Signal()
    base_wanted = Signal(str)
    taken_up = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("what came in")
        self.opening = False
        self._bases: dict[str, BaseNow] = {}
        self._suppliers: list[str] = []
        self._last: Sequence[DeliveryRow] = ()
        self.title, self.told = Words("", Size.TITLE, bold=True), Words(ink=SECOND)
        self.supplier = Offered("Supplier", "not stated")
        self.note_no = Offered("Note no.", reader=self._note)
        self.base = Offered("Base", "a part of it, or ↓", self._one_base)
        self.weigh = KeyButton("Weigh the cones", "Enter", strong=True)
        self.new_base = KeyButton("Describe a base", "F6")
        self.again = KeyButton("", "F7")
        self.file = KeyButton("Choose the mill's list", "F3")
        self.switch = KeyButton("", "F4")
        self.old_lots = KeyButton("Old lots, dyed before", "F9")
        self._lay_out()
        self.weigh.clicked.connect(self.done)
        self.new_base.clicked.connect(lambda: self.base_wanted.emit(self._unknown_base()))
        self.again.clicked.connect(self.taken_up)
        self.file.clicked.connect(self.file_wanted)
        self.switch.clicked.connect(self.turn)
        self.show_left(None)
        self._say()

    def begin(self) -> None:
        go_to(self.supplier.line)

    def done(self) -> None:
        """Weigh the cones, if all is said."""
        supplier, note_no = self.supplier.value(), self.note_no.value()
        base = self.base.value()
        if supplier is None or note_no is None or base is None:
            wrong = next(f for f in (self.supplier, self.note_no, self.base) if f.value() is None)
            go_to(wrong.line)
            return
        self.base.line.setText(base)
        self.begun.emit(Heading(supplier, note_no, self._bases[base], self.opening))

    def clear(self) -> None:
        """Make room for the next delivery."""
        for field in (self.supplier, self.note_no, self.base):
            field.clear()
        self.opening = False
        self._say()

    def turn(self) -> None:
        """From a delivery to the opening stock, and back."""
        self.opening = not self.opening
        self._say()
        self.note_no.clear()

    def show_last(self, deliveries: Sequence[DeliveryRow]) -> None:
        """What came in last is offered first."""
        self._last = deliveries
        self._offer()

    def show_door(self, door: AtTheDoor) -> None:
        """Offer those who sent something before."""
        self._suppliers = [name for name in door.suppliers if name != NOT_STATED]
        self._offer()

    def show_bases(self, bases: Sequence[BaseNow]) -> None:
        """Offer the bases that are described."""
        self._bases = {base.name: base for base in bases}
        self._offer()

    def show_left(self, left: InHand | None) -> None:
        """A delivery that was left can be taken up again."""
        if left is not None:
            count = cones(len(left.cones))
            self.again.say(f"Go on with {count} of {left.heading.base.name}")
        self.again.setVisible(left is not None)

    def _offer(self) -> None:
        bases, senders = [row.base for row in self._last], [row.supplier for row in self._last]
        self.base.offer([*dict.fromkeys([name for name in bases if name in self._bases]
                                        + list(self._bases))])
        self.supplier.offer([*dict.fromkeys([name for name in senders if name in self._suppliers]
                                            + self._suppliers)])

    def _note(self, text: str) -> str:
        if not text.strip() and not self.opening:
            raise BadInput("Write the number that stands on the note.")
        return text.strip() or OPENING

    def _one_base(self, text: str) -> str:
        return the_one(text, self._bases, "base")

    def _unknown_base(self) -> str:
        written = self.base.line.text().strip()
        return "" if written in self._bases else written

    def _say(self) -> None:
        title, told = _OPENING if self.opening else _DELIVERY
        self.title.setText(title)
        self.told.setText(told)
        self.switch.say("A delivery instead" if self.opening else "Opening stock")
        self.note_no.line.setPlaceholderText(OPENING if self.opening else "")

    def _lay_out(self) -> None:
        words = QVBoxLayout()
        words.setSpacing(Gap.SMALL)
        words.addWidget(self.title)
        words.addWidget(self.told)
        words.addStretch(1)
        head = self.add_row(Picture(Icon.CONE))
        head.addLayout(words, 1)
        fields = QHBoxLayout()
        fields.setSpacing(Gap.PART)
        for field, share in ((self.supplier, 5), (self.note_no, 4), (self.base, 5)):
            fields.addWidget(field, share, Qt.AlignmentFlag.AlignTop)
        self.add(fields, Actions(self.weigh, self.again, self.new_base))
        self.add_last(Words("Or drop the list that came with it here: CSV or XLSX.", ink=SECOND))
        self.add_last(Actions(self.file, self.switch, self.old_lots))
