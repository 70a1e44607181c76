"""Something is added at the pot: from a jar that was scanned, or by its name, and how much."""

from PySide6.QtCore import Signal

from app.calculations.pot_words import read_pot_amount
from app.lookups.jars import JarNow
from app.lookups.weigh_sources import StockNow
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words


class Adding(Card):
    """`added` gives milligrams, microlitres (one of them none) and the name, '' for a jar."""

    added = Signal(object, object, str)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("added at the pot")
        self.jar: JarNow | None = None
        self.stock: StockNow | None = None
        self.headline = Words("", Size.TITLE, bold=True)
        self.name = TextField("What", "citric acid", needed="Scan its jar, or name it.")
        self.amount = Field("How much", self._read, "2.5 g or 40 mL")
        put_in = KeyButton("Put in", "F7", strong=True)
        put_in.clicked.connect(self.put_in)
        leave = KeyButton("Leave it", "F9")
        leave.clicked.connect(self.left)
        self.add(self.headline)
        row = self.add_row(self.name, self.amount)
        row.setStretch(0, 1)
        row.setStretch(1, 1)
        self.add(Words("Weigh it away from the steam, acid into water; the makers' sheets say "
                       "more.", ink=SECOND))
        self.add_last(Actions(put_in, leave))

    def begin(self, jar: JarNow | None = None, stock: StockNow | None = None) -> None:
        """A jar, a stock, or what has no plate and is named."""
        self.jar, self.stock = jar, stock
        if stock is not None:
            dye = f" of {jar.dye}" if jar else ""
            self.headline.setText(f"{stock.mg_per_l / 10_000:g} % stock{dye} goes in")
        elif jar is not None:
            self.headline.setText(f"{jar.dye} goes in, from jar {jar.shown}")
        else:
            self.headline.setText("More goes in")
        self.name.setVisible(jar is None and stock is None)
        self.show()
        (self.amount if jar or stock else self.name).setFocus()

    def put_in(self) -> None:
        """It was put in, if it is said what and how much."""
        name = "" if self.jar or self.stock else self.name.value()
        amount = self.amount.value()
        if name is not None and amount is not None:
            self.added.emit(*amount, name)

    def clear(self) -> None:
        """It is in the book: make room for the next."""
        self.name.clear()
        self.amount.clear()
        self.hide()

    def _read(self, text: str) -> tuple[int | None, int | None]:
        return read_pot_amount(text, stock=self.stock is not None)
