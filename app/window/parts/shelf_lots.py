"""What lies on a shelf, lot by lot, and where two lots of one look lie together."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.lookups.shelves import Met, ShelfLot, ShelfNow, met
from app.window.look.look import Gap
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import Words
from app.work.dividing import skeins

_MOST_TOLD = 3  # more of these sentences nobody reads, and the table below goes out of sight


class ShelfLots(QWidget):
    """A table, and above it what a customer could take for one lot."""

    def __init__(self) -> None:
        super().__init__()
        self.met = Words(bold=True)
        self.table = ThingTable(
            (Head("", swatch=True), Head("lot", codes=True), "colourway", "base",
             Head("lies here", right=True)),
            "what lies on this shelf", none="Nothing lies here yet.")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.LINE)
        column.addWidget(self.met)
        column.addWidget(self.table)

    def show_shelf(self, shelf: ShelfNow) -> None:
        """Show what lies there now."""
        self.table.show_rows([_row(one) for one in shelf.lots])
        together = met(shelf.lots)
        self.met.setText("\n".join(map(met_words, together)) if len(together) <= _MOST_TOLD else
                         f"In {_looks(together)} colourways two lots or more lie together here. "
                         "Tie them apart, or say it to who buys.")
        self.met.setVisible(bool(together))


def _looks(together: Sequence[Met]) -> int:
    return len({(one.colourway, one.base) for one in together})


def met_words(one: Met) -> str:
    """'Two lots of Ferry Ledger lie here, 4 of 26·15·R6F and 3 of 26·16·K44: keep them apart …'"""
    said = listing(f"{lot.count} of {shown(lot.code or 'no code yet')}" for lot in one.lots)
    return (f"{len(one.lots)} lots of {one.colourway}, {one.base}, lie here: {said}. Tie them "
            "apart, or say it to who buys.")


def _row(one: ShelfLot) -> tuple[str, ...]:
    code = shown(one.code) if one.code else "not known"
    put_by = f", {one.put_by} put by" if one.put_by else ""
    return (one.swatch or "", code, one.colourway or "not known", one.base,
            skeins(one.count, one.put_up) + put_by)
