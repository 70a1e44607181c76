"""The signs that every paper shares: a lot over its bar, the square code of a thing, HOLD."""

from app.documents.boxes import Box
from app.documents.paper import SOLID, Paper, Pen, Point
from app.documents.typesetting import MM, RED, WHITE, Face, Type, width_mm

HOLD_SIZE = (10.6, 4.6)
_BAR_MM = 0.6
_MARK_GAP_MM = 2.2


def lot_over_bar(paper: Paper, at: Point, lot: str, mark: str, pt: float) -> float:
    """A lot in groups over the bar that says which way is up (6 and 9, M and W turn), the skein's
    mark after it in the lighter face; returns where it ends."""
    x, y = at
    end = paper.text(x, y, lot, Type(pt, Face.CODE_BOLD))
    top = bar_top(y, pt)
    paper.box(Box(x, top, end, top + _BAR_MM), SOLID)
    return paper.text(end + _MARK_GAP_MM, y, mark, Type(pt, Face.CODE)) if mark else end


def mark_after_lot(paper: Paper, at: Point, lot: str, mark: str, pt: float) -> None:
    """The skein's mark alone, where it stands after its lot."""
    end = at[0] + width_mm(lot, Type(pt, Face.CODE_BOLD))
    paper.text(end + _MARK_GAP_MM, at[1], mark, Type(pt, Face.CODE))


def bar_top(base_line: float, pt: float) -> float:
    """Where the bar under a lot begins."""
    return base_line + 0.155 * pt / MM


def bar_foot(base_line: float, pt: float) -> float:
    """Where the bar under a lot ends: the square code beside it stands on this line."""
    return bar_top(base_line, pt) + _BAR_MM


def octagon(box: Box, cut: float) -> list[Point]:
    """A rectangle with its corners cut: a plate, and with large cuts the shape of HOLD alone."""
    left, top, right, bottom = box
    return [
        (left + cut, top),
        (right - cut, top),
        (right, top + cut),
        (right, bottom - cut),
        (right - cut, bottom),
        (left + cut, bottom),
        (left, bottom - cut),
        (left, top + cut),
    ]


def hold_sign(paper: Paper, at: Point, *, placed_here: bool) -> None:
    """HOLD in its eight corners: filled where it was placed, in outline on all below it."""
    (x, y), (width, height) = at, HOLD_SIZE
    pen = Pen(0.35, RED, RED if placed_here else WHITE)
    paper.shape(octagon(Box(x, y, x + width, y + height), 1.3), pen)
    ink = WHITE if placed_here else RED
    paper.text(x + width / 2, y + 3.3, "HOLD", Type(8, Face.BOLD, ink), "centre")
