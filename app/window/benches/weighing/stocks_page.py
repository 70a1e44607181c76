"""The stock solutions as they stand now, and the way to make another."""

from collections.abc import Sequence

from app.calculations.cautions import Step
from app.lookups.stocks import StockOnShelf, stocks_on_shelf
from app.window.bench import Around
from app.window.benches.weighing.for_stock import ForStock
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.stock_words import (
    age_words,
    left_words,
    life_words,
    percent_words,
)
from app.window.parts.card import Actions, Card
from app.window.parts.cautions_card import CautionsCard
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.window.session import Done
from app.work.weighing import WeighingIn, begin_weighing


class StocksPage(WeighHand):
    """A stock is made of a jar's powder, or of a part of another stock."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.stocks: Sequence[StockOnShelf] = ()
        self.table = ThingTable(
            (Head("bottle", right=True), "dye", "strength", Head("left", right=True), "age",
             "keeps until", "of"), "stock solutions",
            none="No stock stands ready. F9 makes one: weigh the powder, make it up with water.",
            most_rows=14)
        self.make = KeyButton("Make a stock", "F9", strong=True)
        self.make.clicked.connect(self.done)
        card = Card("The stocks now")
        card.add(self.table, Words("What is left is reckoned from what was poured. Shake a bottle "
                                   "and look for dye at the bottom.", ink=SECOND))
        card.add_last(Actions(self.make, self.put_away("Back to the balance")))
        self.body.addWidget(card)
        self.body.addWidget(CautionsCard("While a stock is made", Step.STOCK))
        self.look()

    def look(self) -> None:
        """Look again at all stocks."""
        self.ask(self._show, stocks_on_shelf)

    def done(self) -> None:
        """Begin a weigh-out for a stock."""
        self.do(begin_weighing, WeighingIn("stock"), then=self._begun)

    def _begun(self, done: Done[int]) -> None:
        around = self.around
        self.over.emit(ForStock(around, done.answer, None, lambda: StocksPage(around)))

    def _show(self, stocks: Sequence[StockOnShelf]) -> None:
        self.stocks = stocks
        now = self.around.session.now()
        self.table.show_rows([
            (one.bottle or "", one.dye or "not known", f"{percent_words(one.mg_per_l)} w/v",
             left_words(one.left_ul), age_words(one, now), life_words(one, now),
             one.jar or "a jar not known") for one in stocks])
