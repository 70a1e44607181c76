"""The page of shades at a bench: what it asks of the book, and how many apart a group may be."""

from PySide6.QtCore import QObject

from app.lookups.shade_map import shade_map
from app.lookups.things import Found
from app.lookups.untagged import LotMeant, lot_meant
from app.window.bench import Bench
from app.window.shades.page import ShadePage


class Showing(QObject):
    """Put `page` where it belongs; `open` shows the colourway of a lot on it."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.page = bench, ShadePage()
        self._lot: int | None = None
        self._limit: float | None = None  # as the studio says
        self.page.limited.connect(self._sort)

    def open(self, lot: int) -> None:
        """The colourway and base of this lot."""
        self._lot = lot
        self.look_again()

    def open_of(self, found: Found) -> None:
        """The colourway of the lot that this is, or that its tag names."""
        self._bench.ask(self._lot_is, lot_meant, found)

    def look_again(self) -> None:
        """The same as it is now."""
        if self._lot is not None:
            self._bench.ask(self.page.show_map, shade_map, self._lot, self._limit)

    def count(self, number: int) -> None:
        """A COUNT plate: this lot is meant."""
        if self.page.shades is not None and number <= len(self.page.shades.lots):
            self.page.mean(number - 1)

    def _lot_is(self, meant: LotMeant | None) -> None:
        if meant is not None:
            self.open(meant.found.id)

    def _sort(self, limit: float) -> None:
        self._limit = limit
        self.look_again()
