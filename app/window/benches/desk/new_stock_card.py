"""A new stock by its geometry: measured with a ruler, in millimetres, and written as it is."""

from typing import Any

from PySide6.QtCore import Signal

from app.documents.own_stocks import LAYOUT_NAMES
from app.documents.stocks import Stock
from app.problems import BadInput, Refused
from app.window.benches.desk.stock_words import LAYOUT_WORDS, page_words
from app.window.parts.amounts import read_count
from app.window.parts.card import Actions, Card
from app.window.parts.fields import CountField, Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.millimetres import pair_words, read_mm, read_pair
from app.window.parts.words import SECOND, Words

_LEAST_DOTS, _MOST_DOTS = 150, 1200


class NewStockCard(Card):
    """`kept` gives the Stock as it was written; `left` when it is not wanted now.

    What was typed stays, also while another page is looked at or the stock is refused.
    """

    kept = Signal(object)
    left = Signal()

    def __init__(self) -> None:
        super().__init__("A new stock", in_hand=True)
        self.title = TextField("What it is called", "Tags 70 × 50, fifteen on A4",
                               "Say what it is called.")
        self.page = Field("Page, across × down", read_pair, "210 × 297")
        self.tag = Field("Tag, across × down", read_pair, "70 × 50")
        self.first = Field("First tag from left × top", read_pair, "0 × 23.5")
        self.step = Field("From one tag to the next", read_pair, "70 × 50")
        self.across, self.down = CountField("Tags across", "3"), CountField("Tags down", "5")
        self.edge = Field("Unprinted edge", read_mm, "4")
        self.dots = Field("Dots an inch", _dots, "203, 300 or 600")
        self.layout_at, self.cut, self.turned = LAYOUT_NAMES.index("card"), False, False
        self.layout_key, self.cut_key, self.feed_key = KeyButton(""), KeyButton(""), KeyButton("")
        self.keep_key = KeyButton("Keep the stock", strong=True)
        self.leave_key = KeyButton("Leave it")
        self.show_key = KeyButton("Show it true to size")
        self.says = Words("", bold=True)
        self._lay_out()
        self._join()
        self.clear()

    def like(self, stock: Stock) -> None:
        """Begin with the measures of this one; it needs a name of its own."""
        self.title.clear()
        for field, text in (
                (self.page, pair_words(stock.page)), (self.tag, pair_words(stock.tag)),
                (self.first, pair_words(stock.first)), (self.step, pair_words(stock.step)),
                (self.across, str(stock.across)), (self.down, str(stock.down)),
                (self.edge, f"{stock.edge:g}"), (self.dots, str(stock.dpi))):
            field.line.setText(text)
        self.layout_at = LAYOUT_NAMES.index(stock.layout)
        self.cut, self.turned = stock.cut, stock.long_edge_first
        self._say()

    def clear(self) -> None:
        """Room for the next, on the paper most printers have."""
        for field in self._fields.values():
            field.clear()
        self.page.line.setText("210 × 297")
        self.edge.line.setText("4")
        self.dots.line.setText("300")
        self._say()

    def written(self) -> Stock | None:
        """The stock as it is written; none, and a sentence in its place, where it cannot be."""
        read: dict[str, Any] = {name: field.value() for name, field in self._fields.items()}
        if any(value is None for value in read.values()):
            return None
        try:
            stock = Stock(name="", layout=LAYOUT_NAMES[self.layout_at], cut=self.cut,
                          long_edge_first=self.turned, **read)
        except Refused as refused:
            self.says.setText(f"{refused.what} {refused.next_step}")
            return None
        self.says.setText(page_words(stock))
        return stock

    def keep(self) -> None:
        """Keep it as it is written."""
        stock = self.written()
        if stock is not None:
            self.kept.emit(stock)

    @property
    def _fields(self) -> dict[str, Field[Any]]:
        return {"title": self.title, "page": self.page, "tag": self.tag, "first": self.first,
                "step": self.step, "across": self.across, "down": self.down, "edge": self.edge,
                "dpi": self.dots}

    def _turn_layout(self) -> None:
        self.layout_at = (self.layout_at + 1) % len(LAYOUT_NAMES)
        self._say()

    def _turn(self, what: str) -> None:
        setattr(self, what, not getattr(self, what))
        self._say()

    def _say(self) -> None:
        self.layout_key.say(f"Layout: {LAYOUT_WORDS[LAYOUT_NAMES[self.layout_at]]}")
        self.cut_key.say("Cut from plain card" if self.cut else "Cut already")
        self.feed_key.say("Long edge goes in first" if self.turned else "Short edge goes in first")
        self.says.setText("Measure it with a ruler, in millimetres.")

    def _join(self) -> None:
        self.layout_key.clicked.connect(self._turn_layout)
        self.cut_key.clicked.connect(lambda: self._turn("cut"))
        self.feed_key.clicked.connect(lambda: self._turn("turned"))
        self.keep_key.clicked.connect(self.keep)
        self.leave_key.clicked.connect(self.left)
        for field in self._fields.values():
            field.line.returnPressed.connect(self.keep)

    def _lay_out(self) -> None:
        self.add(self.title)
        self.add_row(self.page, self.tag)
        self.add_row(self.first, self.step)
        self.add_row(self.across, self.down, self.dots, self.edge)
        self.add(Actions(self.layout_key, self.cut_key, self.feed_key), self.says)
        self.add(Words("Too small for its least sizes it is refused: square code of 0.5 mm a "
                       "module, lot 4 mm high, text of 6 points.", ink=SECOND))
        self.add_last(Actions(self.show_key, self.keep_key, self.leave_key))


def _dots(text: str) -> int:
    dots = read_count(text)
    if not _LEAST_DOTS <= dots <= _MOST_DOTS:
        raise BadInput(f"A printer of {dots} dots an inch prints no tags.",
                       f"Write {_LEAST_DOTS} to {_MOST_DOTS}; most have 203, 300 or 600.")
    return dots
