"""A kit's bag that was scanned: what is in it; its label, or its skeins back on a shelf."""

from PySide6.QtCore import Signal

from app.calculations.codes import shown
from app.lookups.kits import KitNow
from app.window.benches.packing.kit_words import made_words
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.hold_plate import HoldLine
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, CodeWords, Words


class BagCard(Card):
    """`label` prints what hangs on it; the plate of a shelf, which the bench takes, opens it."""

    label = Signal()
    other_stock = Signal()
    left = Signal()

    def __init__(self, kit: KitNow) -> None:
        super().__init__(in_hand=True)
        self.kit = kit
        self.setAccessibleName(f"Kit {kit.shown}")
        many = len(kit.skeins)
        self.title = Words(f"{kit.name}: {many} skein{'' if many == 1 else 's'} in the bag",
                           Size.LEAD, bold=True)
        self.inside, self.stock = Words(made_words(kit)), Words(ink=SECOND)
        self.label_key = KeyButton("Print its label", "F5")
        stock_key, leave = KeyButton("Other stock", "F9"), KeyButton("Leave it", "F8")
        self.label_key.clicked.connect(self.label)
        stock_key.clicked.connect(self.other_stock)
        leave.clicked.connect(self.left)
        self.add(CodeWords(shown(kit.code), Size.TITLE), self.title,
                 *(HoldLine(f"{hold.on[:1].upper()}{hold.on[1:]}: {hold.why}. Ask {hold.ask}.",
                            here=False) for hold in kit.holds),
                 self.inside,
                 Words("To open it, scan the plate of the shelf that its skeins are laid on. It is "
                       "sold whole at the Counter.", bold=True), self.stock)
        self.add_last(Actions(self.label_key, stock_key, leave))

    def show_stock(self, words: str) -> None:
        """Where its label is printed."""
        self.stock.setText(words)
