"""The stocks tags are printed on: ours and the studio's own, one of them chosen."""

from PySide6.QtCore import Signal

from app.documents.own_stocks import StudioStocks
from app.documents.stocks import Stock
from app.window.benches.desk.stock_words import page_words, stock_row
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words


class StocksCard(Card):
    """A row chooses a stock; `put_away` hides the chosen one, or takes it out again."""

    chosen = Signal(object)  # Stock
    put_away = Signal(str, bool)  # name, away

    def __init__(self) -> None:
        super().__init__("Stocks for tags")
        self.stocks = StudioStocks((), ())
        self.stock: Stock | None = None
        self.name = ""  # of the stock that is chosen once it is shown
        self.table = ThingTable(
            ("stock", Head("on a page", right=True)), "stocks", opens=True, most_rows=8)
        self.says = Words("", bold=True)
        self.new_key = KeyButton("Describe a new stock", strong=True)
        self.like_key = KeyButton("Describe one like it")
        self.away_key = KeyButton("Put away")
        self.add(self.table, self.says, Words(
            "A row chooses one. What was described is never changed, for sheets were printed on "
            "it: describe another like it, and put it away.",
            ink=SECOND))
        self.add_last(Actions(self.new_key, self.like_key, self.away_key))
        self.table.opened.connect(lambda row: self.choose(self.stocks.every[row]))
        self.away_key.clicked.connect(self._hide)

    def show_stocks(self, stocks: StudioStocks) -> None:
        """Show what there is; the chosen one stays chosen."""
        self.stocks = stocks
        self.table.show_rows([stock_row(one, away=one in stocks.away) for one in stocks.every])
        first = next((one for one in stocks.in_use if one.layout == "swing"), stocks.every[0])
        self.choose(next((one for one in stocks.every if one.name == self.name), first))

    def choose(self, stock: Stock) -> None:
        """This is the one that is meant."""
        self.stock, self.name = stock, stock.name
        self.says.setText(f"{stock.title}: {page_words(stock)}")
        self.away_key.say("Take out again" if stock in self.stocks.away else "Put away")
        self.chosen.emit(stock)

    def _hide(self) -> None:
        if self.stock is not None:
            self.put_away.emit(self.stock.name, self.stock not in self.stocks.away)
