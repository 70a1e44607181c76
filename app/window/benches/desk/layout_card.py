"""How the tags of one stock are laid out: which layout, what is printed, and how large."""

from PySide6.QtCore import Signal

from app.documents.own_stocks import LAYOUT_NAMES, Layout
from app.documents.stocks import Stock
from app.documents.tag_choices import LEAST_LOT_MM, MAY_BE_LEFT_OUT, Choices
from app.documents.tag_forms import check_sizes
from app.problems import BadInput, Refused
from app.window.benches.desk.stock_words import LAYOUT_WORDS, LEFT_OUT_WORDS
from app.window.parts.amounts import read_count
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.millimetres import read_mm
from app.window.parts.words import SECOND, Words


class LayoutCard(Card):
    """`kept` gives the Layout for the stock in hand; what is written stays when it is refused."""

    kept = Signal(object)

    def __init__(self) -> None:
        super().__init__("How its tags are laid out", in_hand=True)
        self.stock: Stock | None = None
        self.layout_at = 0
        self.layout_key = KeyButton("")
        self.prints = {part: KeyButton(LEFT_OUT_WORDS[part]) for part in MAY_BE_LEFT_OUT}
        self.text = Field("Text, in percent", read_count, "100")
        self.lot = Field("Lot’s height, mm", _or_none, f"{LEAST_LOT_MM:g} or more")
        self.module = Field("Code module, mm", read_mm, "0.5")
        self.says = Words("", bold=True)
        self.says.hide()
        self.keep_key = KeyButton("Keep this layout", strong=True)
        self.show_key = KeyButton("Show it true to size")
        for key in self.prints.values():
            key.setCheckable(True)
        self.layout_key.clicked.connect(self._turn)
        self.keep_key.clicked.connect(self.keep)
        self.add(Actions(self.layout_key))
        self.add(Words("Printed where there is room, besides the maker and address, what it is, "
                       "its net contents and its lot:", ink=SECOND),
                 Actions(*self.prints.values()))
        self.add_row(self.text, self.lot, self.module)
        self.add(self.says, Words("What the market’s law asks for is printed all the same.",
                                  ink=SECOND))
        self.add_last(Actions(self.show_key, self.keep_key))

    def show_stock(self, stock: Stock) -> None:
        """Show how this stock's tags are laid out now."""
        choices, self.stock = stock.choices, stock
        self.layout_at = LAYOUT_NAMES.index(stock.layout)
        for part, key in self.prints.items():
            key.setChecked(part not in choices.leaves_out)
        for field, text in ((self.text, f"{choices.text * 100:g}"),
                            (self.lot, f"{choices.lot_mm:g}" if choices.lot_mm else ""),
                            (self.module, f"{choices.module_mm:g}")):
            field.clear()
            field.line.setText(text)
        self.says.setText("")
        self._say()

    def written(self) -> Layout | None:
        """The layout as it is written; none, and the reason in its place, where it cannot be."""
        text, lot, module = self.text.value(), self.lot.value(), self.module.value()
        if text is None or lot is None or module is None:
            return None
        leaves_out = tuple(part for part, key in self.prints.items() if not key.isChecked())
        name = LAYOUT_NAMES[self.layout_at]
        try:
            choices = Choices(text=text / 100, lot_mm=lot, module_mm=module, leaves_out=leaves_out)
            check_sizes(name, choices)
        except Refused as refused:
            self._tell(f"{refused.what} {refused.next_step}")
            return None
        self._tell("")
        return Layout(name, choices)

    def keep(self) -> None:
        """Keep it as it is written."""
        layout = self.written()
        if layout is not None:
            self.kept.emit(layout)

    def _turn(self) -> None:
        self.layout_at = (self.layout_at + 1) % len(LAYOUT_NAMES)
        self._say()

    def _say(self) -> None:
        self.layout_key.say(f"Layout: {LAYOUT_WORDS[LAYOUT_NAMES[self.layout_at]]}")
        self._tell(self.says.text())

    def _tell(self, sentence: str) -> None:
        self.says.setText(sentence)
        self.says.setVisible(bool(sentence))


def _or_none(text: str) -> float:
    if not text.strip():
        return 0.0
    if not (length := read_mm(text)):
        raise BadInput("A lot without height cannot be read.",
                       "Leave it empty for the layout’s own height.")
    return length
