"""Cards and labels that are no tags, on the same stocks: laid out cell by cell, read back."""

from collections.abc import Sequence
from typing import Protocol

from app.calculations.codes import shown
from app.documents.paper import Paper
from app.documents.proof import Due, prove
from app.documents.stocks import Correction, Stock
from app.problems import Refused


class Card(Protocol):
    """One card: the text of its square code, and how it is drawn on a cell of this size (mm)."""

    @property
    def code(self) -> str: ...
    def draw(self, paper: Paper, size: tuple[float, float]) -> None: ...


def card_sheets(
    cards: Sequence[Card],
    stock: Stock,
    *,
    first_cell: int = 1,
    correction: Correction = (0.0, 0.0),
) -> bytes:
    """Cards in their order from the first cell on.

    Refused with the words that do not fit, and where a code cannot be read back with its words
    beside it.
    """
    if not cards:
        raise Refused("There is no card to print.", "Choose what needs one.")
    paper = Paper("Cards", stock.page, dpi=stock.dpi, edge=stock.edge, turned=stock.long_edge_first)
    places = stock.places(len(cards), first_cell)
    due: list[list[Due]] = [[] for _ in range(places[-1][0])]
    for card, (page, cell) in zip(cards, places, strict=True):
        if page > len(paper.codes):
            paper.new_page()
        box = stock.cell(cell, correction)
        with paper.cell(box):
            card.draw(paper, stock.tag)
        due[page - 1].append(Due(card.code, stock.on_page(box), shown(card.code)))
    pdf = paper.pdf("Shorten the words, make the correction smaller, or choose a larger stock.")
    prove(pdf, due, stock.dpi)
    return pdf
