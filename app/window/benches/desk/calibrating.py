"""Printers and their two numbers: the test grid printed, read, and kept for this computer."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.documents.own_stocks import StudioStocks
from app.documents.print_grid import print_grid
from app.documents.stocks import Correction, Stock, after_grid
from app.documents.tags import Tag, try_on
from app.documents.white_edge import white_edge_mm, white_edge_needed_mm
from app.exchange.sample_sheets import sample_sheet, sample_words
from app.lookups.sample_tags import Samples
from app.problems import BadInput, Problem
from app.window.bench import Bench
from app.window.benches.desk.grid_card import GridCard
from app.window.benches.desk.printer_card import PrinterCard
from app.window.handing_out import put_out
from app.window.look.look import Gap
from app.window.parts.card import Card, SideBySide
from app.window.parts.millimetres import signed_words
from app.window.parts.thing_table import ThingTable
from app.window.parts.words import SECOND, Words

_ONCE_MORE = "Print the grid once more: now it should read 0 and 0."


class PrintersPage(QWidget):
    """Stocks with their printers and the printers themselves at the left, one pair at the right."""

    def __init__(self) -> None:
        super().__init__()
        self.table = ThingTable(
            ("stock", "printed by, moved by"), "stocks and printers", opens=True, most_rows=8)
        self.printers, self.grid = PrinterCard(), GridCard()
        pairs = Card("What is printed where")
        pairs.add(self.table, Words("A row takes a stock in hand. The two numbers are kept for "
                                    "this computer, its printer and that stock.", ink=SECOND))
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(pairs)
        column.addWidget(self.printers)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(SideBySide(left, self.grid, shares=(6, 5)))


class Calibrating(QObject):
    """What the page asks of this computer's settings, and keeps in them."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.page, self._printers = bench, PrintersPage(), bench.around.printers
        self.stocks: tuple[Stock, ...] = ()
        self.samples = Samples((), "", "")
        self._name = ""
        page = self.page
        page.table.opened.connect(lambda row: self.take_up(self.stocks[row]))
        page.printers.named.connect(self._named)
        page.printers.forgotten.connect(self._forget)
        page.printers.sought.connect(self._seek)
        page.grid.chosen.connect(self._choose)
        page.grid.grid.connect(self._print_grid)
        page.grid.read.connect(self._read)

    def show_stocks(self, stocks: StudioStocks) -> None:
        """The stocks in use, each with its printer and two numbers."""
        self.stocks = stocks.in_use
        self.show()

    def take_up(self, stock: Stock) -> None:
        """This stock is calibrated."""
        self._name = stock.name
        self.page.grid.tell("")
        self.show()

    def show(self) -> None:
        """All as it stands in the settings."""
        printers, stock = self._printers, self._stock()
        if stock is None:
            return
        rows = []
        for one in self.stocks:
            moved = printers.correction(one)
            by = " / ".join(signed_words(length).removesuffix(" mm") for length in moved)
            printer = printers.of(one) or "a file"
            rows.append((one.title, f"{printer}, {by}" if any(moved) else printer))
        self.page.table.show_rows(rows)
        self.page.printers.show_printers(printers.settings.names)
        self.page.grid.show_stock(
            stock, printers.settings.names, printers.of(stock), printers.correction(stock))

    def _stock(self) -> Stock | None:
        swing = [one for one in self.stocks if one.layout == "swing"]
        in_hand = [one for one in self.stocks if one.name == self._name]
        return next(iter((*in_hand, *swing, *self.stocks)), None)

    def _named(self, name: str) -> None:
        self._printers.settings.name(name)
        self._bench.say(f"{name} prints here; choose the stocks it prints")
        self.page.printers.clear()
        self.show()

    def _forget(self, name: str) -> None:
        self._printers.settings.forget(name)
        self.show()

    def _seek(self) -> None:
        self._bench.around.background.read(self, self._printers.known, self._found)

    def _found(self, known: Sequence[str]) -> None:
        names = self._printers.settings.names
        self.page.printers.show_found([one for one in known if one not in names])

    def _choose(self, printer: str) -> None:
        stock = self._stock()
        if stock is not None:
            self._printers.settings.choose(stock.name, printer)
        self.page.grid.tell("")
        self.show()

    def _print_grid(self) -> None:
        stock = self._stock()
        if stock is not None:
            put_out(self._bench, "tags", f"test-grid {stock.name}.pdf",
                    partial(print_grid, stock, self._printers.correction(stock)), stock)

    def _read(self, across: float, down: float) -> None:
        """What was read on the grid: the two numbers are moved by it, and kept."""
        printers, stock = self._printers, self._stock()
        if stock is None:
            return
        new = after_grid(printers.correction(stock), (across, down))
        try:
            printers.settings.correct(printers.of(stock), stock.name, new)
        except BadInput as problem:
            self.page.grid.tell(f"{problem.what} {problem.next_step}")
            return
        self.page.grid.clear()
        self.show()
        self._tell_edge(stock, new, (-across, -down))

    def _tell_edge(self, stock: Stock, new: Correction, was_off: Correction) -> None:
        """What white the square code has now, had before, and whether all of a tag is in reach."""
        words = sample_words(self.samples, 0)

        def tried() -> str:
            tag = Tag(try_on(Tag(words, "7M"), stock).words, "7M")
            sample_sheet(words, stock, new)
            return edge_words(stock, tag, was_off)

        def failed(error: BaseException) -> None:
            said = str(error) if isinstance(error, Problem) else "Its page could not be tried."
            self.page.grid.tell(f"The two numbers are kept, but nothing can be printed so: {said}")

        self._bench.around.background.read(self, tried, self.page.grid.tell, failed)


def edge_words(stock: Stock, tag: Tag, was_off: Correction) -> str:
    """What white the code has to the edge of its tag: corrected, and as it was."""
    needed, before = white_edge_needed_mm(stock), white_edge_mm(stock, tag, was_off)
    enough = "enough" if before >= needed else "too little: tags printed so may not scan"
    return (f"The code keeps {white_edge_mm(stock, tag):.1f} mm white to the edge of its tag; "
            f"{needed:.1f} mm is the least. Off as it was it had {max(before, 0):.1f} mm: "
            f"{enough}. {_ONCE_MORE}")
