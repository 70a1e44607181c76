"""The grid that shows how far a printer is off with a stock: two numbers to read and to enter."""

from collections.abc import Iterator

from app.documents.boxes import Box
from app.documents.paper import HAIR, Paper, Pen
from app.documents.stocks import LARGEST_CORRECTION_MM, Correction, Stock
from app.documents.typesetting import Face, Type

_TICK = Pen(0.15)
_HALF_FIGURE_MM = 1.5
_TITLE, _WORDS, _FIGURE = Type(8, Face.BOLD), Type(6.5), Type(6)
_HOW_TO = (
    "Print at 100 %, on the stock or on plain paper laid over it.",
    "Read both scales where the real edge crosses them, with the sign: across, then down. "
    "Add the two numbers to the correction.",
    "First and last tag must say the same, or the page was scaled.",
)


def print_grid(stock: Stock, correction: Correction = (0.0, 0.0)) -> bytes:
    """Outlines of all cells, with scales at the first tag's left and top and the last's right and
    foot; what is read there is what the correction must be changed by."""
    paper = Paper(
        "Print grid",
        stock.page,
        dpi=stock.dpi,
        least_pt=6,
        edge=stock.edge,
        turned=stock.long_edge_first,
    )
    for number in range(1, stock.cells + 1):
        paper.box(stock.cell(number, correction), HAIR)
    first, last = stock.cell(1, correction), stock.cell(stock.cells, correction)
    _scale_across(paper, stock, first.left, first.top + 0.8 * stock.tag[1])
    _scale_down(paper, stock, first.top, first.left + 0.8 * stock.tag[0])
    _scale_across(paper, stock, last.right, last.top + 0.8 * stock.tag[1])
    _scale_down(paper, stock, last.bottom, last.left + 0.8 * stock.tag[0])
    _explain(paper, first, stock, correction)
    return paper.pdf("Choose a stock with larger tags.")


def _explain(paper: Paper, first: Box, stock: Stock, correction: Correction) -> None:
    across, down = (_signed(length) for length in correction)
    now = f"Now corrected by {across} mm across and {down} mm down."
    with paper.cell(first):
        x, y = 8.0, 6.5
        room = 0.8 * stock.tag[0] - x - 5
        y = paper.lines(x, y, "Print grid", _TITLE, room, 3.4)
        for words in (now, *_HOW_TO):
            y = paper.lines(x, y, words, _WORDS, room, 2.5) + 0.6


def _scale_across(paper: Paper, stock: Stock, zero: float, y: float) -> None:
    for half_mm, at, labelled in _ticks(stock, zero, stock.page[0]):
        paper.rule((at, y), (at, y - _length(half_mm)), _TICK)
        if labelled:
            paper.text(at, y + 2.4, _signed(half_mm / 2), _FIGURE, "centre")


def _scale_down(paper: Paper, stock: Stock, zero: float, x: float) -> None:
    for half_mm, at, labelled in _ticks(stock, zero, stock.page[1]):
        paper.rule((x, at), (x - _length(half_mm), at), _TICK)
        if labelled:
            paper.text(x + 0.8, at + 0.7, _signed(half_mm / 2), _FIGURE)


def _ticks(stock: Stock, zero: float, page: float) -> Iterator[tuple[int, float, bool]]:
    """Every half millimetre about zero that lies on the page: its count, its place, and whether
    its number stands there: at 4 on either side, where the printer reaches."""
    furthest = round(2 * LARGEST_CORRECTION_MM)
    margin = stock.edge + _HALF_FIGURE_MM
    for half_mm in range(-furthest, furthest + 1):
        at = zero + half_mm / 2
        if 0 <= at <= page:
            yield half_mm, at, abs(half_mm) == 8 and margin <= at <= page - margin


def _length(half_mm: int) -> float:
    return 1.2 if half_mm % 2 else 3.2 if half_mm % 4 == 0 else 2.2


def _signed(length_mm: float) -> str:
    return f"{length_mm:+.1f}".removesuffix(".0").replace("-", "−") if length_mm else "0"
