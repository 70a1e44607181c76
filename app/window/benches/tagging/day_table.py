"""Where the tags of a day are: lot by lot, and by the stock they were printed on."""

from app.calculations.codes import shown
from app.documents.own_stocks import StudioStocks
from app.lookups.tag_counts import LotTagCounts, TagCounts, TagDay
from app.window.look.look import Size
from app.window.parts.card import Card
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words

_COUNTS = ("printed", "tied on", "spoiled", "void", "in hand")


class DayTable(Card):
    """Each lot that was printed on, then each stock, and the day as one sum."""

    def __init__(self) -> None:
        super().__init__()
        right = [Head(name, right=True) for name in _COUNTS]
        self._day = TagDay((), {})
        self._titles: dict[str, str] = {}
        self.sum = Words("", Size.LEAD, bold=True)
        self.lots = ThingTable(
            (Head("lot", codes=True), Head("", swatch=True), Head("expected", right=True), *right,
             Head("counted", right=True), Head("unexplained", right=True)),
            "tags of each lot", most_rows=8)
        self.stocks = ThingTable(("stock", *right), "tags of the day by their stock")
        self.add(self.sum, self.lots, Words(
            "Of each lot all tags ever printed; below, those of this day by their stock.",
            ink=SECOND), self.stocks)

    def show_day(self, day: TagDay) -> None:
        """Show all counts of a day."""
        self._day = day
        self.sum.setText(sum_words(day.counts))
        self.lots.show_rows([_row(lot) for lot in day.lots])
        self.stocks.show_rows([(self._titles.get(name, name), *_figures(counts))
                               for name, counts in day.stocks.items()])

    def show_stocks(self, stocks: StudioStocks) -> None:
        """Call the stocks as the studio does."""
        self._titles = {stock.name: stock.title for stock in stocks.every}
        self.show_day(self._day)


def sum_words(counts: TagCounts) -> str:
    """'15 printed = 6 tied on + 3 spoiled + 1 void + 5 in hand.'"""
    return (f"{counts.printed} printed = {counts.applied} tied on + {counts.spoiled} spoiled + "
            f"{counts.void} void + {counts.in_hand} in hand.")


def _row(lot: LotTagCounts) -> tuple[str, ...]:
    last = lot.last
    counted = ("–", "–") if last is None else (str(last.count), _signed(last.unexplained))
    return (shown(lot.code), lot.swatch or "", str(lot.expected), *_figures(lot.counts), *counted)


def _figures(counts: TagCounts) -> tuple[str, ...]:
    return tuple(map(str, (counts.printed, counts.applied, counts.spoiled, counts.void,
                           counts.in_hand)))


def _signed(number: int) -> str:
    return f"−{-number}" if number < 0 else str(number)
