"""One stock on its printer: which printer, how far it is off, and the grid that tells it."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.documents.stocks import Correction, Stock
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.millimetres import read_signed_mm, signed_words
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words

NO_PRINTER = "No printer: a file"


class GridCard(Card):
    """`chosen` gives the printer for the stock, '' for none; `read` the two numbers of the grid."""

    chosen = Signal(str)
    grid = Signal()
    read = Signal(float, float)

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.title = Words("", Size.LEAD, bold=True)
        self.now, self.says = Words("", Size.LEAD), Words("", bold=True)
        self.across = Field("Read across, mm", read_signed_mm, "-2.1")
        self.down = Field("Read down, mm", read_signed_mm, "-1.4")
        self.grid_key = KeyButton("Print the test grid", strong=True)
        self.keep_key = KeyButton("Keep the two numbers")
        self.printers: dict[str, KeyButton] = {}
        self._keys = QVBoxLayout()
        self.add(self.title, Words("Printed by", ink=SECOND), self._keys, self.now,
                 Actions(self.grid_key))
        self.add(Words("Read both scales where the real edge of the stock crosses them, with "
                       "their signs: across at the left of the first tag, then down at its top. "
                       "Plain paper laid over the stock against the light does too.", ink=SECOND))
        self.add_row(self.across, self.down)
        self.add(self.says)
        self.add_last(Actions(self.keep_key))
        self.grid_key.clicked.connect(self.grid)
        self.keep_key.clicked.connect(self._read)
        for field in (self.across, self.down):
            field.line.returnPressed.connect(self._read)

    def show_stock(
        self, stock: Stock, printers: Sequence[str], printer: str, correction: Correction
    ) -> None:
        """This stock, its printer, and what its print is moved by."""
        take_down(self._keys)
        self.printers = {name: KeyButton(name or NO_PRINTER) for name in ("", *printers)}
        for name, key in self.printers.items():
            key.setCheckable(True)
            key.setChecked(name == printer)
            key.clicked.connect(partial(self.chosen.emit, name))
        self._keys.addWidget(Actions(*self.printers.values()))
        self.title.setText(stock.title)
        across, down = map(signed_words, correction)
        self.now.setText("Not corrected." if correction == (0.0, 0.0) else
                         f"Corrected by {across} across, {down} down.")

    def tell(self, sentence: str) -> None:
        """What came of the numbers."""
        self.says.setText(sentence)
        self.says.setVisible(bool(sentence))

    def clear(self) -> None:
        """The numbers are kept; the next grid is read anew."""
        self.across.clear()
        self.down.clear()

    def _read(self) -> None:
        across, down = self.across.value(), self.down.value()
        if across is not None and down is not None:
            self.read.emit(across, down)
