"""Tags and printers: stocks and their layouts, printers and their two numbers, the market."""

from functools import partial

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.documents.own_stocks import StudioStocks
from app.exchange.tag_stocks import tag_stocks
from app.lookups.sample_tags import Samples, sample_tags
from app.window.bench import Bench
from app.window.benches.desk.calibrating import Calibrating
from app.window.benches.desk.market_card import MarketCard
from app.window.benches.desk.stocks_page import Stocks
from app.window.look.look import Gap
from app.window.parts.card import Actions, SideBySide
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import to_top
from app.work.studio import choose

STOCKS, PRINTERS, MARKET = "Stocks", "Printers", "Market"


class TagsPage(QWidget):
    """Three pages in one, each by its key."""

    def __init__(self, stocks: QWidget, printers: QWidget, market: QWidget) -> None:
        super().__init__()
        self.views = {STOCKS: stocks, PRINTERS: printers, MARKET: market}
        self.keys = {name: KeyButton(name, key)
                     for name, key in zip(self.views, ("F8", "F9", "F10"), strict=True)}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(Actions(*self.keys.values()))
        for name, view in self.views.items():
            column.addWidget(view)
            self.keys[name].setCheckable(True)
            self.keys[name].clicked.connect(partial(self.turn_to, name))
        column.addStretch(1)
        self.turn_to(STOCKS)

    def turn_to(self, name: str) -> None:
        """Show one of the three, from its head."""
        for other, view in self.views.items():
            view.setVisible(other == name)
            self.keys[other].setChecked(other == name)
        to_top(self)


class TagsAndPrinters(QObject):
    """What the page asks of the book and of this computer, and does in them."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench = bench
        self.stocks, self.calibrating = Stocks(bench), Calibrating(bench)
        self.market = MarketCard()
        market = SideBySide(self.market, self.market.changed, shares=(1, 1))
        self.page = TagsPage(self.stocks.page, self.calibrating.page, market)
        self.market.kept.connect(lambda words: bench.do(choose, words))

    def look_again(self) -> None:
        """Stocks, printers and market as they stand now."""
        self._bench.ask(self._show_stocks, tag_stocks)
        self._bench.ask(self._show_samples, sample_tags)

    def _show_stocks(self, stocks: StudioStocks) -> None:
        self.stocks.show_stocks(stocks)
        self.calibrating.show_stocks(stocks)

    def _show_samples(self, samples: Samples) -> None:
        self.stocks.samples = self.calibrating.samples = samples
        self.market.show_samples(samples)
