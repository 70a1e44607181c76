"""Where the labels of kits' bags are printed: which stock, and which of its cells is next."""

from PySide6.QtCore import QObject, Signal

from app.calculations.codes import shown
from app.documents.stocks import Stock, stocks
from app.exchange.kit_labels import kit_label_sheet
from app.lookups.kits import kit_now
from app.window.bench import Bench
from app.window.papers import keep, open_paper

FOLDER = "kits"


class Labels(QObject):
    """One label after the other on the same sheet, until another stock is taken."""

    printed = Signal()

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench = bench
        self.stock: Stock = next((one for one in stocks() if one.layout == "swing"), stocks()[0])
        self.cell = 1

    @property
    def words(self) -> str:
        """'The next label is printed on cell 3 of 10: Swing tags …'."""
        return (f"The next label is printed on cell {self.cell} of {self.stock.cells}: "
                f"{self.stock.title}.")

    def other_stock(self) -> None:
        """The next stock of the list, from its first cell."""
        at = [one.name for one in stocks()].index(self.stock.name)
        self.stock, self.cell = stocks()[(at + 1) % len(stocks())], 1

    def print(self, kit: int) -> None:
        """Made away from the screen, kept beside the book, shown, and told."""
        session, stock, cell = self._bench.around.session, self.stock, self.cell
        correction = self._bench.around.printers.correction(stock)

        def made() -> str:
            code = session.ask(kit_now, kit).code
            pdf = session.ask(kit_label_sheet, kit, stock, cell, correction)
            path = keep(session.book.path, FOLDER, f"kit {code}.pdf", pdf)
            open_paper(path)
            return f"the label of kit {shown(code)} is {path.name}"

        def told(sentence: str) -> None:
            self.cell = cell % stock.cells + 1
            self._bench.say(sentence)
            self.printed.emit()

        self._bench.around.background.read(self._bench, made, told)
