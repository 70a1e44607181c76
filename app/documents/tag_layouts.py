"""How the words of a tag stand on it: who and how much, what it is, then the lot and its code."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Protocol

from app.documents.boxes import LEAST_GAP_MM, Box
from app.documents.paper import SOLID, Paper, Pen
from app.documents.signs import bar_foot, lot_over_bar, mark_after_lot
from app.documents.tag_words import TagWords
from app.documents.typesetting import Face, Type, break_lines, width_mm


class Worn(Protocol):
    """What a tag wears: the text of its square code, and lot and mark as people read them."""

    @property
    def text(self) -> str: ...
    @property
    def grouped(self) -> str: ...


Layout = Callable[[Paper, tuple[float, float], TagWords, Worn], None]

LEAST_LOT_MM = 4.0  # what is read at arm's length; common practice, no source
_ACROSS = 21  # modules of the QR code a tag wears
_LOT_ABOVE_FOOT_MM = 5.7
_BAND_LEFT, _BAND_LOT_PT = 10.0, 18.0
_BAND_CODE = (54.0, 41.0)  # its lower right corner
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

    def __post_init__(self) -> None:
        if Type(self.lot_pt).ascent_mm < LEAST_LOT_MM:
            raise ValueError(f"a lot of {self.lot_pt} pt is under {LEAST_LOT_MM:g} mm high")


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
CARD = Form(
    left=6.2,  # cells without a margin lie at the page's edge, where a printer leaves 4 mm white
    right=6.2,
    top=9,
    colourway=Type(13, Face.BOLD),
    base=Type(8.5),
    net=Type(9, Face.BOLD),
    print=Type(6.5),
    maker=Type(6.5),
    lead=2.8,
    lot_pt=17,
    label_above_lot=5,
)
ROLL = replace(
    SMALL, left=3.2, top=6.5, colourway=Type(12, Face.BOLD), base=Type(8.5), maker=Type(6.5)
)


def swing_tag(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
    """Hung from the middle of its long side; who and how much stand either side of the hole."""
    paper.stamp(words, lambda: _swing_words(paper, size, words, code))
    _wear(paper, SWING, size, code)


def _swing_words(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
    form, left, right = SWING, SWING.left, size[0] - SWING.right
    square = paper.code_room(_code_corner(form, size), _ACROSS)
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
    _lot(paper, form, size, words, code, square)


def compact_tag(form: Form) -> Layout:
    """The same order on a small tag: what it is first, the maker in the small print."""

    def draw(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
        paper.stamp(words, lambda: draw_words(paper, size, words, code))
        _wear(paper, form, size, code)

    def draw_words(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
        left, right = form.left, size[0] - form.right
        square = paper.code_room(_code_corner(form, size), _ACROSS)
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
        _lot(paper, form, size, words, code, square)

    return draw


def ball_band(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
    """Round a ball: the lot at the back's left, what it is in front, how to use it at the back's
    right; the last 15 mm are glued under and bear nothing."""
    paper.stamp(words, lambda: _band_words(paper, size, words, code))
    lot, mark = _lot_and_mark(code)
    mark_after_lot(paper, (_BAND_LEFT, 20), lot, mark, _BAND_LOT_PT)
    paper.code(_BAND_CODE, code.text)


def _band_words(paper: Paper, size: tuple[float, float], words: TagWords, code: Worn) -> None:
    small, bold, plain = Type(8), Type(8, Face.BOLD), Type(10)
    paper.rule((size[0] - 15, 0), (size[0] - 15, size[1]), Pen(0.1, dash=(1, 1)))
    square = paper.code_room(_BAND_CODE, _ACROSS)
    room = square.left - LEAST_GAP_MM - _BAND_LEFT
    paper.lines(_BAND_LEFT, 37, words.differ, small, room, 4)
    paper.text(72, 13, words.studio.upper(), bold, room=66)
    paper.text(72, 22.5, words.colourway, Type(16, Face.BOLD), room=72)
    y = paper.lines(72, 28.5, words.base, plain, 72, 4.5)
    paper.lines(72, y, words.fibre, plain, 72, 4.5)
    end = paper.text(72, 41, words.net, Type(10, Face.BOLD))
    paper.text(end + 4, 41, words.ounces, small)
    y = 13.0
    for said in (words.knit, words.care, words.origin, f"{words.studio}|{words.address}"):
        y = paper.lines(148, y, said, small, 44, 3.4) + 1.4 if said else y
    paper.text(_BAND_LEFT, 13, "Dye lot", bold)
    lot_over_bar(paper, (_BAND_LEFT, 20), _lot_and_mark(code)[0], "", _BAND_LOT_PT)


LAYOUTS: dict[str, Layout] = {
    "swing": swing_tag,
    "small": compact_tag(SMALL),
    "card": compact_tag(CARD),
    "roll": compact_tag(ROLL),
    "band": ball_band,
}


def _code_corner(form: Form, size: tuple[float, float]) -> tuple[float, float]:
    """Where the square code ends at the lower right: it stands on the lot's bar."""
    return size[0] - form.right, bar_foot(size[1] - _LOT_ABOVE_FOOT_MM, form.lot_pt)


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
    paper.code(_code_corner(form, size), code.text)


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
