"""The web shop's list of orders: chosen, looked at away from the screen, taken in as one deed."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QFileDialog

from app.exchange.orders_in import see_orders, take_in_orders
from app.window.bench import Bench
from app.window.benches.packing.file_card import FileCard
from app.window.list_look import look_at

_FILES = "Lists (*.csv *.xlsx *.txt *.tsv);;All files (*)"


class OrderFile(QObject):
    """What is asked and done about the file on the card; `taken` comes when it is in the book."""

    def __init__(self, bench: Bench, card: FileCard, taken: Callable[[], None]) -> None:
        super().__init__(bench)
        self._bench, self._card, self._taken = bench, card, taken
        card.look_wanted.connect(self._look)
        card.complete.connect(self._take_in)

    def choose(self, chosen: Callable[[Path], object]) -> None:
        """Let the person choose a file."""
        dialog = QFileDialog(self._bench, "The web shop's list of orders", "", _FILES)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(lambda name: chosen(Path(name)))
        dialog.open()

    def _look(self) -> None:
        path, columns = self._card.path, self._card.said.columns
        session = self._bench.around.session
        now = session.now()
        look_at(self._bench, self._card, lambda: session.ask(see_orders, path, columns, now))

    def _take_in(self) -> None:
        if self._card.seen is not None:
            self._bench.do(take_in_orders, self._card.seen, token=self._card.token,
                           then=lambda _done: self._taken())
