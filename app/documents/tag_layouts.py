"""How the words of a tag stand on it: who and how much, what it is, then the lot and its code."""

from dataclasses import replace
from typing import Protocol

from app.documents.boxes import LEAST_GAP_MM, Box
from app.documents.paper import SAFE_MM, SOLID, Paper, Pen
from app.documents.signs import bar_foot, lot_over_bar, mark_after_lot
from app.documents.square_codes import MM_PER_INCH, Symbol, whole_dots
from app.documents.stocks import Stock
from app.documents.tag_forms import FORMS, LEAST_ON_A_BAND, Form, lot_points
from app.documents.tag_words import TagWords
from app.documents.typesetting import Face, Type, break_lines, width_mm


class Worn(Protocol):
    """What a tag wears: the text of its square code, and lot and mark as people read them."""

    @property
    def text(self) -> str: ...
    @property
    def grouped(self) -> str: ...


_ACROSS = 21  # modules of the QR code a tag wears
_LOT_ABOVE_FOOT_MM = 5.7
_BAND_LEFT, _BAND_LOT_PT = 10.0, 18.0
_BAND_CODE = (54.0, 41.0)  # its lower right corner
_HOLE_FROM_EDGE_MM = 6.5
_HOLE_KEPT_FREE_MM = 5.5  # about the middle of a hole of 4 mm


def draw_tag(paper: Paper, stock: Stock, words: TagWords, code: Worn) -> None:
    """One tag in the cell of the paper that was begun, as its stock is laid out."""
    if stock.layout == "band":
        _ball_band(paper, stock, words, code)
        return
    form, size = FORMS[stock.layout].chosen(stock.choices), stock.tag
    set_words = _swing_words if stock.layout == "swing" else _compact_words
    paper.stamp(words, lambda: set_words(paper, form, size, words, code))
    _wear(paper, form, size, code)


def _swing_words(
    paper: Paper, form: Form, size: tuple[float, float], words: TagWords, code: Worn
) -> None:
    """Hung from the middle of its long side; who and how much stand either side of the hole."""
    left, right, by = form.left, size[0] - form.right, form.text
    square = paper.code_room(_code_corner(paper, form, size), _ACROSS, form.module)
    beside_hole = _keep_hole_free(paper, size[0] / 2) - left
    y = paper.lines(left, 7.2, words.studio.upper(), form.maker, beside_hole, 3.2 * by)
    y = paper.lines(left, y + 0.5, words.address, form.print, beside_hole, form.lead)
    paper.text(right, 7.2, words.net, form.net, "right", beside_hole)
    paper.text(right, 7.2 + 3.7 * by, words.ounces, form.print, "right", beside_hole)
    y = max(form.top, y + 2.8)
    paper.text(left, y, words.colourway, form.colourway, room=right - left)
    y = paper.lines(left, y + 4.6 * by, words.base, form.base, right - left, 4 * by)
    y = paper.lines(left, y, words.fibre, form.base, right - left, 4 * by)
    y += 1
    for part in (words.knit, words.care, words.origin):
        y = _small_print(paper, form, (left, y), part, square)
    _lot(paper, form, size, words, code, square)


def _compact_words(
    paper: Paper, form: Form, size: tuple[float, float], words: TagWords, code: Worn
) -> None:
    """The same order on a small tag: what it is first, the maker in the small print."""
    left, right, by = form.left, size[0] - form.right, form.text
    square = paper.code_room(_code_corner(paper, form, size), _ACROSS, form.module)
    paper.text(left, form.top, words.colourway, form.colourway, room=right - left)
    y = form.top + 4.2 * by
    paper.text(right, y, words.net, form.net, "right")
    room = right - left - width_mm(words.net, form.net) - 2
    y = paper.lines(left, y, words.base, form.base, room, 3.4 * by)
    paper.text(right, y, words.ounces, form.print, "right")
    taken = width_mm(words.ounces, form.print) + 2 if words.ounces else 0
    y = paper.lines(left, y, words.fibre, form.base, right - left - taken, 3.4 * by) + 0.2
    for part in (words.knit, words.care, words.origin):
        y = _small_print(paper, form, (left, y), part, square)
    maker = f"{words.studio},|{words.address}"
    _small_print(paper, replace(form, print=form.maker), (left, y), maker, square)
    _lot(paper, form, size, words, code, square)


def _ball_band(paper: Paper, stock: Stock, words: TagWords, code: Worn) -> None:
    """Round a ball: the lot at the back's left, what it is in front, how to use it at the back's
    right; the last 15 mm are glued under and bear nothing."""
    choices = stock.choices
    paper.stamp(words, lambda: _band_words(paper, stock, words, code))
    lot, mark = _lot_and_mark(code)
    mark_after_lot(paper, (_BAND_LEFT, 20), lot, mark, lot_points(choices, _BAND_LOT_PT))
    paper.code(_BAND_CODE, code.text, least_mm=choices.module_mm)


def _band_words(paper: Paper, stock: Stock, words: TagWords, code: Worn) -> None:
    size, choices = stock.tag, stock.choices
    by, least, ten = choices.text, choices.points(LEAST_ON_A_BAND), choices.points(10)
    small, bold, plain = Type(least), Type(least, Face.BOLD), Type(ten)
    paper.rule((size[0] - 15, 0), (size[0] - 15, size[1]), Pen(0.1, dash=(1, 1)))
    square = paper.code_room(_BAND_CODE, _ACROSS, choices.module_mm)
    room = square.left - LEAST_GAP_MM - _BAND_LEFT
    paper.lines(_BAND_LEFT, 37, words.differ, small, room, 4 * by)
    paper.text(72, 13, words.studio.upper(), bold, room=66)
    paper.text(72, 22.5, words.colourway, Type(choices.points(16), Face.BOLD), room=72)
    y = paper.lines(72, 28.5, words.base, plain, 72, 4.5 * by)
    paper.lines(72, y, words.fibre, plain, 72, 4.5 * by)
    end = paper.text(72, 41, words.net, Type(ten, Face.BOLD))
    paper.text(end + 4, 41, words.ounces, small)
    y = 13.0
    for said in (words.knit, words.care, words.origin, f"{words.studio}|{words.address}"):
        y = paper.lines(148, y, said, small, 44, 3.4 * by) + 1.4 if said else y
    paper.text(_BAND_LEFT, 13, "Dye lot", bold)
    lot_pt = lot_points(choices, _BAND_LOT_PT)
    lot_over_bar(paper, (_BAND_LEFT, 20), _lot_and_mark(code)[0], "", lot_pt)


def _code_corner(paper: Paper, form: Form, size: tuple[float, float]) -> tuple[float, float]:
    """Where the square code ends at the lower right: it stands on the lot's bar, or as much higher
    as the white edge of a large one needs."""
    white = Symbol.QR.value * whole_dots(form.module, paper.dpi) + MM_PER_INCH / paper.dpi / 2
    least = SAFE_MM + white
    foot = bar_foot(size[1] - _LOT_ABOVE_FOOT_MM, form.lot_pt)
    return min(size[0] - form.right, size[0] - least), min(foot, size[1] - least)


def _lot(
    paper: Paper, form: Form, size: tuple[float, float], words: TagWords, code: Worn, square: Box
) -> None:
    """The lot over its bar, beside the square that the code and its white edge keep."""
    base_line = size[1] - _LOT_ABOVE_FOOT_MM
    y = base_line - form.label_above_lot
    end = paper.text(form.left, y, "Dye lot", Type(form.print.pt, Face.BOLD)) + 2
    paper.text(end, y, words.differ, form.print, room=square.left - LEAST_GAP_MM - end)
    lot_over_bar(paper, (form.left, base_line), _lot_and_mark(code)[0], "", form.lot_pt)


def _wear(paper: Paper, form: Form, size: tuple[float, float], code: Worn) -> None:
    """What this tag alone bears: the skein's mark after the lot, and the square code."""
    lot, mark = _lot_and_mark(code)
    mark_after_lot(paper, (form.left, size[1] - _LOT_ABOVE_FOOT_MM), lot, mark, form.lot_pt)
    paper.code(_code_corner(paper, form, size), code.text, least_mm=form.module)


def _lot_and_mark(code: Worn) -> tuple[str, str]:
    lot, _, mark = code.grouped.partition(" ")
    return lot, mark


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
