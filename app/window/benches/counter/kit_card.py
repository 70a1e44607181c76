"""A kit bag on the counter: what is in it; it is sold whole, or opened on a shelf."""

from PySide6.QtCore import Signal

from app.lookups.customers import Known
from app.lookups.kits import KitNow
from app.window.benches.counter.asking import Ask
from app.window.benches.counter.words import bag_count, bag_words, hold_words
from app.window.parts.card import Actions
from app.window.parts.hold_plate import HoldLine
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words

HELD = "A hold lies on it."


class KitCard(Ask):
    """`sold` gives whether to somebody with a name; a shelf's plate answers with its place."""

    sold = Signal(bool)

    def __init__(self, kit: KitNow, buyer: Known | None) -> None:
        super().__init__(f"Kit {kit.shown}: {bag_count(kit)}",
                         "To open it, scan the plate of the shelf that its skeins are laid on.", "")
        self.keys = (KeyButton("Sell it, no name", "1", strong=True),
                     KeyButton(f"Sell it to {buyer.name if buyer else '…'}", "2"))
        for key, named in zip(self.keys, (False, True), strict=True):
            key.clicked.connect(lambda _=False, named=named: self.sold.emit(named))
            if kit.holds:
                key.refuse(HELD)
        self.lay_out(*(HoldLine(hold_words(hold), here=False) for hold in kit.holds),
                     Words(bag_words(kit)), Actions(*self.keys))
        self.does.hide()
        self._named = buyer is not None

    def begin(self) -> None:
        self.leave.setFocus()

    def save(self) -> None:
        """DONE sells it, to who is served."""
        self.keys[self._named].click()

    def count(self, number: int) -> bool:
        if 1 <= number <= len(self.keys):
            self.keys[number - 1].click()
            return True
        return False

    def shelf(self, place: int, words: str) -> bool:
        self.answered.emit((place,))
        return True
