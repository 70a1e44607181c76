"""How the words of a tag stand on it: who and how much, what it is, then the lot and its code."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Protocol

from app.documents.paper import LEAST_GAP_MM, SOLID, Box, Paper
from app.documents.signs import bar_foot, lot_over_bar
from app.documents.square_codes import Symbol
from app.documents.tag_words import TagWords
from app.documents.typesetting import Face, Type, break_lines, width_mm


class Worn(Protocol):
    """What a tag wears: the text of its square code, and lot and mark as people read them."""

    @property
    def text(self) -> str: ...
    @property
    def grouped(self) -> str: ...


Layout = Callable[[Paper, tuple[float, float], TagWords, Worn], None]

_LOT_ABOVE_FOOT_MM = 5.7
_HOLE_FROM_EDGE_MM = 6.5
_HOLE_KEPT_FREE_MM = 5.5  # about the middle of a hole of 4 mm


@dataclass(frozen=True, slots=True)
class Form:
    """The measures of one kind of tag: margins and leads in mm, sizes of type."""

    left: float
    right: float  # enough for the code's white edge inside a safe margin of 2 mm
    top: float
    colourway: Type
    base: Type
    net: Type
    print: Type
    maker: Type
    lead: float
    lot_pt: float  # 17 makes digits of 4 mm
    label_above_lot: float


SWING = Form(
    left=5,
    right=5,
    top=19.4,
    colourway=Type(16, Face.BOLD),
    base=Type(9),
    net=Type(10, Face.BOLD),
    print=Type(7),
    maker=Type(8, Face.BOLD),
    lead=3.1,
    lot_pt=18,
    label_above_lot=6.1,
)
SMALL = Form(
    left=4.2,
    right=4.2,
    top=6.9,
    colourway=Type(11, Face.BOLD),
    base=Type(8),
    net=Type(8, Face.BOLD),
    print=Type(6.5),
    maker=Type(6),
    lead=2.6,
    lot_pt=17,
    label_above_lot=5,
)
ROLL = replace(
    SMALL, left=3.2, top=6.5, colourway=Type(12, Face.BOLD), base=Type(8.5), maker=Type(6.5)
)


def swing_tag(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
    """Hung from the middle of its long side; who and how much stand either side of the hole."""
    form, left, right = SWING, SWING.left, size[0] - SWING.right
    square = _foot(paper, form, size, words, code)
    beside_hole = _keep_hole_free(paper, size[0] / 2) - left
    y = paper.lines(left, 7.2, words.studio.upper(), form.maker, beside_hole, 3.2)
    y = paper.lines(left, y + 0.5, words.address, form.print, beside_hole, form.lead)
    paper.text(right, 7.2, words.net, form.net, "right", beside_hole)
    paper.text(right, 10.9, words.ounces, form.print, "right", beside_hole)
    y = max(form.top, y + 2.8)
    paper.text(left, y, words.colourway, form.colourway, room=right - left)
    y = paper.lines(left, y + 4.6, words.base, form.base, right - left, 4)
    y = paper.lines(left, y, words.fibre, form.base, right - left, 4)
    y += 1
    for part in (words.knit, words.care, words.origin):
        y = _small_print(paper, form, (left, y), part, square)


def compact_tag(form: Form) -> Layout:
    """The same order on a small tag: what it is first, the maker in the small print."""

    def draw(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
        left, right = form.left, size[0] - form.right
        square = _foot(paper, form, size, words, code)
        paper.text(left, form.top, words.colourway, form.colourway, room=right - left)
        y = form.top + 4.2
        paper.text(right, y, words.net, form.net, "right")
        room = right - left - width_mm(words.net, form.net) - 2
        y = paper.lines(left, y, words.base, form.base, room, 3.4)
        paper.text(right, y, words.ounces, form.print, "right")
        taken = width_mm(words.ounces, form.print) + 2 if words.ounces else 0
        y = paper.lines(left, y, words.fibre, form.base, right - left - taken, 3.4) + 0.2
        for part in (words.knit, words.care, words.origin):
            y = _small_print(paper, form, (left, y), part, square)
        maker = f"{words.studio},|{words.address}"
        _small_print(paper, replace(form, print=form.maker), (left, y), maker, square)

    return draw


LAYOUTS: dict[str, Layout] = {
    "swing": swing_tag,
    "small": compact_tag(SMALL),
    "roll": compact_tag(ROLL),
}


def _foot(paper: Paper, form: Form, size: tuple[float, float], words: TagWords, code: Worn) -> Box:
    """The lot over its bar, the skein's mark, and the square code that stands on that bar.

    Returns the square that other words must stay left of or above: the code with its white edge.
    """
    base_line = size[1] - _LOT_ABOVE_FOOT_MM
    dark = paper.code((size[0] - form.right, bar_foot(base_line, form.lot_pt)), code.text)
    white = Symbol.QR.value * (dark.right - dark.left) / 21
    kept = Box(dark.left - white, dark.top - white, dark.right, dark.bottom)
    grouped, _, mark = code.grouped.partition(" ")
    lot_over_bar(paper, (form.left, base_line), grouped, mark, form.lot_pt)
    y = base_line - form.label_above_lot
    end = paper.text(form.left, y, "Dye lot", Type(form.print.pt, Face.BOLD)) + 2
    paper.text(end, y, words.differ, form.print, room=kept.left - LEAST_GAP_MM - end)
    return kept


def _keep_hole_free(paper: Paper, middle: float) -> float:
    """A dot shows where to punch and goes with the hole; returns how far words may run to it."""
    free, y = _HOLE_KEPT_FREE_MM - LEAST_GAP_MM, _HOLE_FROM_EDGE_MM
    paper.claim("the hole", Box(middle - free, 2, middle + free, y + free))
    paper.circle((middle, y), 0.2, SOLID)
    return middle - _HOLE_KEPT_FREE_MM


def _small_print(
    paper: Paper, form: Form, at: tuple[float, float], words: str, square: Box
) -> float:
    """A sentence, broken shorter where the square code stands beside it; returns the next line.

    A `|` in it is where it breaks best if one line is too short.
    """
    (x, y), room = at, square.right - at[0]
    if not words:
        return y
    one_line = words.replace("|", " ")
    last = y + (len(break_lines(one_line, form.print, room)) - 1) * form.lead
    if last + form.print.descent_mm > square.top:
        room = square.left - LEAST_GAP_MM - x
    if width_mm(one_line, form.print) <= room:
        words = one_line
    return paper.lines(x, y, words, form.print, room, form.lead)
