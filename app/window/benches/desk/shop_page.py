"""The shop as the owner sees it: prices, free counts for the web, and each customer."""

from collections.abc import Sequence
from datetime import date, datetime, time
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import day_words
from app.exchange.customer_file import customer_csv, customer_json
from app.exchange.free_counts import free_counts_file
from app.exchange.orders_file import number_of_order
from app.lookups.customer_data import customer_data
from app.lookups.customers import Known, customers_sought
from app.lookups.prices import CURRENCY, currency, price_list
from app.lookups.redyes_asked import RedyeAsked, redyes_asked
from app.lookups.shade_bands import kept_bands, shade_bands
from app.problems import Refused
from app.window.bench import Bench
from app.window.benches.desk.customer_card import CustomerCard
from app.window.benches.desk.limits_card import LimitsCard
from app.window.benches.desk.prices_card import PricesCard
from app.window.look.look import Gap
from app.window.papers import keep, throw_away
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.days import month_said
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.work.selling import forget_customer, set_price
from app.work.studio import choose

FOLDER = "shop"


class ShopPage(QWidget):
    """Prices at the left; the file for the web shop and the customers at the right."""

    def __init__(self) -> None:
        super().__init__()
        self.prices, self.customer = PricesCard(), CustomerCard()
        self.limits = LimitsCard()
        self.redyes = ThingTable((Head("since"), "colourway and base", "wanted"),
                                 "to be dyed for customers", "Nobody waits for a redye.",
                                 most_rows=8)
        to_dye = Card("To be dyed for customers")
        to_dye.add(Words("Noted at the Counter, never promised; gone from here once such a lot is "
                         "in its pot.", ink=SECOND), self.redyes)
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
        column.addWidget(self.customer)
        column.addWidget(to_dye)
        column.addWidget(self.limits)
        column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(SideBySide(self.prices, right, shares=(1, 1)))
        whole.addStretch(1)

    def show_redyes(self, found: Sequence[RedyeAsked]) -> None:
        """What is to be dyed for somebody, the oldest first."""
        self.redyes.show_rows([(day_words(one.since), f"{one.colourway}, {one.base}", one.words)
                               for one in found])

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
        page.limits.kept.connect(lambda bands: bench.do(
            choose, kept_bands(bands), then=lambda _done: page.limits.is_kept()))
        page.counts_key.clicked.connect(self._write)
        page.customer.sought.connect(self._seek)
        page.customer.opened.connect(
            lambda one: bench.ask(page.customer.show_data, customer_data, one.id))
        page.customer.wanted.connect(self._write_customer)
        page.customer.removed.connect(self._remove)

    def look_again(self) -> None:
        """Prices as they stand now."""
        self._bench.ask(self.page.prices.show_prices, price_list)
        self._bench.ask(self.page.prices.show_currency, currency)
        self._bench.ask(self.page.show_redyes, redyes_asked)
        self._bench.ask(self.page.limits.show_bands, shade_bands)

    def _price(self, base: int, put_up: str, price: int) -> None:
        self._bench.do(set_price, base, put_up, price,
                       then=lambda _done: self.page.prices.is_set())

    def _seek(self, words: str) -> None:
        said = month_said(words, self._bench.around.session.now().astimezone().date(), 1)
        month = None if said is None else (_begins(said[0]), _begins(said[1]), said[2])
        self._bench.ask(self.page.customer.show_found, customers_sought, words,
                        number_of_order(words), month)

    def _write_customer(self, customer: Known | None) -> None:
        if customer is None:
            return
        session, page = self._bench.around.session, self.page

        def made() -> list[Path]:
            return [keep(session.book.path, FOLDER, name, session.ask(as_file, customer.id))
                    for name, as_file in zip(_files(customer), (customer_json, customer_csv),
                                             strict=True)]

        def shown(paths: list[Path]) -> None:
            page.customer.show_files([path.name for path in paths], str(paths[0].parent))

        self._bench.around.background.read(self, made, shown)

    def _remove(self, customer: Known, why: str) -> None:
        def done() -> None:
            self.page.customer.done()
            try:
                for name in _files(customer):
                    throw_away(self._bench.around.session.book.path, FOLDER, name)
            except Refused as refused:
                self._bench.around.trouble(refused)

        self._bench.do(forget_customer, customer.id, reason=why, then=lambda _done: done())

    def _write(self) -> None:
        session = self._bench.around.session

        def made() -> Path:
            data = session.ask(free_counts_file)
            return keep(session.book.path, FOLDER, "free-counts.csv", data)

        self._bench.around.background.read(self, made, self.page.show_file)


def _begins(day: date) -> datetime:
    return datetime.combine(day, time()).astimezone()


def _files(customer: Known) -> tuple[str, str]:
    """By number, for a name does not go into the name of a file."""
    return f"customer-{customer.id}.json", f"customer-{customer.id}.csv"
