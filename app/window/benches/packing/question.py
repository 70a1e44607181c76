"""What the packer is asked about a scanned skein; every answer is one key."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal

from app.calculations.codes import shown
from app.lookups.orders import LineNow
from app.lookups.packing import TagScanned
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words


class WhichLine(Card):
    """The skein fits several lines; `chosen` gives the line."""

    chosen = Signal(int)
    left = Signal()

    def __init__(self, tag: TagScanned, lines: Sequence[LineNow]) -> None:
        super().__init__(in_hand=True)
        self.tag, self.lines = tag, lines
        read = all(line.is_read for line in lines)
        self.asks = Words(
            f"{shown(tag.mark)}, {tag.colourway_name}, " + (
                f"fits {len(lines)} lines: which one?" if read
                else "is it for these words? Nothing could be read from them."),
            Size.LEAD, bold=True)
        self.keys = [KeyButton(_words(line), str(n)) for n, line in enumerate(lines, 1)]
        for line, key in zip(lines, self.keys, strict=True):
            key.clicked.connect(partial(self.chosen.emit, line.id))
        none = KeyButton("Put it back", "F8")
        none.clicked.connect(self.left)
        self.add(self.asks, Actions(*self.keys, none))

    def choose(self, number: int) -> None:
        """The line with this figure, by a COUNT plate."""
        if 0 < number <= len(self.keys):
            self.keys[number - 1].click()


class TakeOut(Card):
    """The skein is in the parcel already; `chosen` gives the shelf that it goes back to."""

    chosen = Signal(int)
    left = Signal()

    def __init__(self, tag: TagScanned, number: str) -> None:
        super().__init__(in_hand=True)
        self.tag = tag
        self.asks = Words(f"{shown(tag.mark)} is in this parcel. Take it out of order {number}?",
                          Size.LEAD, bold=True)
        shelf = tag.last_shelf
        self.out = KeyButton(f"Take it out, to {shelf.words}" if shelf else "", "Enter",
                             strong=True)
        self.out.clicked.connect(lambda: self.chosen.emit(shelf.id if shelf else 0))
        keep = KeyButton("Keep it in", "F8")
        keep.clicked.connect(self.left)
        how = ("Or scan the plate of another shelf." if shelf
               else "Scan the plate of the shelf that it goes to.")
        self.add(self.asks, Words(how, ink=SECOND), Actions(self.out, keep))
        self.out.setVisible(shelf is not None)


def _words(line: LineNow) -> str:
    lot = f", {shown(line.lot_code)}" if line.lot_code else ""
    return f"{line.name}{lot}: {line.filled} of {line.wanted}"
