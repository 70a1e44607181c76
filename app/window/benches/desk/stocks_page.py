"""Stocks and layouts: chosen, described, laid out, and seen true to size before anything is kept.
"""

from dataclasses import replace
from functools import partial

from PIL import Image
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.documents.own_stocks import Layout, StudioStocks
from app.documents.proof import true_size_picture
from app.documents.stocks import Stock
from app.documents.tag_words import TagWords
from app.exchange.sample_sheets import sample_sheet, sample_words
from app.exchange.tag_stocks import (
    describe_stock,
    lay_out,
    put_away_stock,
    tag_stocks,
    take_out_stock,
)
from app.lookups.sample_tags import Samples
from app.problems import BadInput, Problem
from app.window.bench import Bench
from app.window.benches.desk.layout_card import LayoutCard
from app.window.benches.desk.new_stock_card import NewStockCard
from app.window.benches.desk.preview_card import PreviewCard
from app.window.benches.desk.stock_words import page_words
from app.window.benches.desk.stocks_card import StocksCard
from app.window.handing_out import put_out
from app.window.look.look import Gap
from app.window.parts.card import SideBySide
from app.window.parts.true_size import RULER_MM, screen_image
from app.window.problem_box import show_failure
from app.window.session import Done

_SHOW = "Show the page to see its tags as large as they will be."


class StocksPage(QWidget):
    """The list at the left, the stock in hand at the right, its page below."""

    def __init__(self) -> None:
        super().__init__()
        self.list, self.layout_card = StocksCard(), LayoutCard()
        self.new, self.preview = NewStockCard(), PreviewCard()
        right = QWidget()
        aside = QVBoxLayout(right)
        aside.setContentsMargins(0, 0, 0, 0)
        aside.addWidget(self.layout_card)
        aside.addWidget(self.new)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(SideBySide(self.list, right, shares=(1, 1)))
        column.addWidget(self.preview)
        self.describe(begun=False)

    def describe(self, *, begun: bool) -> None:
        """Write a new stock, or look at one that is there."""
        self.new.setVisible(begun)
        self.list.setVisible(not begun)
        self.layout_card.setVisible(not begun)
        self.preview.forget(_SHOW)


class Stocks(QObject):
    """What the page asks of the book, and does in it."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.page = bench, StocksPage()
        self.samples = Samples((), "", "")
        self._sample = 0
        self._shown_of: Stock | None = None
        page = self.page
        page.list.chosen.connect(self._choose)
        page.list.put_away.connect(self._put_away)
        page.list.new_key.clicked.connect(self._new)
        page.list.like_key.clicked.connect(self._like)
        page.new.left.connect(lambda: page.describe(begun=False))
        page.new.kept.connect(lambda stock: bench.do(describe_stock, stock, then=self._described))
        page.layout_card.kept.connect(self._lay_out)
        for key in (page.new.show_key, page.layout_card.show_key):
            key.clicked.connect(self.show_page)
        page.preview.wanted.connect(self.show_page)
        page.preview.other.connect(self._other)
        page.preview.test.connect(self._test)
        page.preview.measured.connect(self._measured)
        self._say_screen()

    def show_stocks(self, stocks: StudioStocks) -> None:
        """The list as it stands; a row that is being written is left alone."""
        before = self.page.list.stock
        self.page.list.show_stocks(stocks)
        now = self.page.list.stock
        if now is not None and now != before:
            self.page.layout_card.show_stock(now)

    def in_hand(self) -> Stock | None:
        """The stock as it is written at the right, kept or not; none where that cannot be."""
        if self.page.new.isVisible():
            return self.page.new.written()
        stock, layout = self.page.list.stock, self.page.layout_card.written()
        if stock is None or layout is None:
            return None
        return replace(stock, layout=layout.layout, choices=layout.choices)

    def show_page(self) -> None:
        """Draw a page of it, prove it, and show it as large as it is."""
        stock = self.in_hand()
        if stock is None:
            return
        words, dots = self._words(), self._dots()

        def drawn() -> Image.Image:
            return true_size_picture(sample_sheet(words, stock), 1, dots)

        self.page.preview.forget("It is being drawn …")
        self._bench.around.background.read(
            self, drawn, partial(self._drawn, stock), self._not_drawn)

    def _drawn(self, stock: Stock, picture: Image.Image) -> None:
        self._shown_of = stock
        point = self.page.devicePixelRatioF()
        self.page.preview.show_page(
            screen_image(picture, point), f"{page_words(stock)} Every code was read back.")
        self.page.preview.come_into_sight()

    def _not_drawn(self, error: BaseException) -> None:
        if isinstance(error, Problem):
            self.page.preview.forget(f"{error.what} {error.next_step}".strip())
            self.page.preview.come_into_sight()
        else:
            show_failure(self.page, error)

    def _words(self) -> TagWords:
        return sample_words(self.samples, self._sample)

    def _other(self) -> None:
        self._sample += 1
        self.show_page()

    def _test(self) -> None:
        """The sheet on plain paper, laid over the stock against the light."""
        stock = self._shown_of
        if stock is None or not self.page.preview.page.isVisibleTo(self.page):
            self.page.preview.forget("Show the page first, then print it.")
            return
        correction = self._bench.around.printers.correction(stock)
        put_out(self._bench, "tags", "sample-sheet.pdf",
                partial(sample_sheet, self._words(), stock, correction), stock)

    def _measured(self, length_mm: float) -> None:
        try:
            self._bench.around.printers.settings.screen *= RULER_MM / length_mm
        except BadInput as problem:
            self._bench.around.trouble(problem)
            return
        self.page.preview.line.clear()
        self._say_screen()
        self.show_page()

    def _say_screen(self) -> None:
        self.page.preview.ruler.show_scale(self._dots() / self.page.devicePixelRatioF())

    def _dots(self) -> float:
        """Dots of the screen an inch, as somebody measured them here, if anybody did."""
        factor = self._bench.around.printers.settings.screen
        return self.page.screen().physicalDotsPerInch() * self.page.devicePixelRatioF() * factor

    def _choose(self, stock: Stock) -> None:
        if self.page.layout_card.stock != stock:
            self.page.layout_card.show_stock(stock)
            self.page.describe(begun=False)

    def _new(self) -> None:
        self.page.describe(begun=True)
        self.page.new.title.setFocus()

    def _like(self) -> None:
        if self.page.list.stock is not None:
            self.page.new.like(self.page.list.stock)
            self._new()

    def _described(self, done: Done[str]) -> None:
        self.page.new.clear()
        self.page.describe(begun=False)
        self.page.list.name = done.answer
        self._bench.ask(self.show_stocks, tag_stocks)

    def _lay_out(self, layout: Layout) -> None:
        if self.page.list.stock is not None:
            self._bench.do(lay_out, self.page.list.stock.name, layout)

    def _put_away(self, name: str, away: bool) -> None:
        self._bench.do(put_away_stock if away else take_out_stock, name)
