"""The shop as the owner sees it: prices, free counts for the web, and removal on request."""

from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.exchange.free_counts import free_counts_file
from app.lookups.customers import Known, customers_named
from app.lookups.prices import CURRENCY, currency, price_list
from app.window.bench import Bench
from app.window.benches.desk.prices_card import PricesCard
from app.window.benches.desk.removal_card import RemovalCard
from app.window.look.look import Gap
from app.window.papers import keep
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.work.selling import forget_customer, set_price
from app.work.studio import choose


class ShopPage(QWidget):
    """Prices at the left; the file for the web shop and removal at the right."""

    def __init__(self) -> None:
        super().__init__()
        self.prices, self.removal = PricesCard(), RemovalCard()
        self.counts_key = KeyButton("Write the file", "F9")
        self.counts_at = Words()
        self.counts_at.hide()
        counts = Card("Free counts for the web shop")
        counts.add(Words("What is left to sell of every lot, with metres and price, as CSV. What "
                         "is on hold, put by or promised is not in it.", ink=SECOND),
                   self.counts_at)
        counts.add_last(Actions(self.counts_key))
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(counts)
        column.addWidget(self.removal)
        column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(SideBySide(self.prices, right, shares=(1, 1)))
        whole.addStretch(1)

    def show_file(self, path: Path) -> None:
        """Where the free counts are."""
        self.counts_at.setText(f"They are in {path}.")
        self.counts_at.show()


class Shop(QObject):
    """What the page of the shop asks of the book, and does in it."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.page = bench, ShopPage()
        page = self.page
        page.prices.priced.connect(self._price)
        page.prices.named.connect(lambda words: bench.do(choose, {CURRENCY: words}))
        page.counts_key.clicked.connect(self._write)
        page.removal.sought.connect(
            lambda name: bench.ask(page.removal.show_found, customers_named, name))
        page.removal.removed.connect(self._remove)

    def look_again(self) -> None:
        """Prices as they stand now."""
        self._bench.ask(self.page.prices.show_prices, price_list)
        self._bench.ask(self.page.prices.show_currency, currency)

    def _price(self, base: int, put_up: str, price: int) -> None:
        self._bench.do(set_price, base, put_up, price,
                       then=lambda _done: self.page.prices.is_set())

    def _remove(self, customer: Known, why: str) -> None:
        self._bench.do(forget_customer, customer.id, reason=why,
                       then=lambda _done: self.page.removal.done())

    def _write(self) -> None:
        session = self._bench.around.session

        def made() -> Path:
            data = session.ask(free_counts_file)
            return keep(session.book.path, "shop", "free-counts.csv", data)

        self._bench.around.background.read(self, made, self.page.show_file)
