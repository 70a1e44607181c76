"""How discs and plates are drawn: black is engraved, thin lines are cut.

Discs hang on bundles and are the same on both faces. Wall plates read at two metres; plates of
jars and shelves at arm's length. Lengths in mm from the plate's top left.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.lib.colors import Color

from app.documents.boxes import Box
from app.documents.paper import HAIR, SOLID, Paper, Pen, Point
from app.documents.signs import octagon
from app.documents.square_codes import Symbol, whole_dots
from app.documents.typesetting import BLACK, RED, WHITE, Face, Type, break_lines, width_mm

CUT = Pen(0.1, fill=WHITE)
_BLANK = Pen(ink=None, fill=WHITE)


@dataclass(frozen=True, slots=True)
class Lettering:
    """What a plate says: its word, its number, a line below, its code to scan and to type."""

    word: str
    number: str
    small: str
    code: str
    grouped: str


@dataclass(frozen=True, slots=True)
class PlateForm:
    """The measures of one size of plate."""

    width: float
    height: float
    left: float
    hole: Point  # from the left edge, and its radius
    code_foot: float
    module: float
    word_pts: tuple[float, ...]  # the largest that fits is taken
    number_pts: tuple[float, ...]
    small_pts: tuple[float, ...]

    @property
    def code_right(self) -> float:
        """Where the square code ends."""
        return self.width - self.left - 1


WALL = PlateForm(90, 50, 12, (5, 2), 35, 2, (22, 18, 14), (64, 46, 30, 20), (12, 10))
SMALL = PlateForm(60, 40, 9, (3.5, 1.5), 27.5, 1.4, (17, 14), (48, 34, 22, 15), (12, 10, 9))
DISC_MM = 40.0
_DEED_PTS = (32, 28, 24, 20, 17)


def draw_disc(paper: Paper, lettering: Lettering) -> None:
    """The cord's hole, the number over its bar with the check, the square code."""
    middle = DISC_MM / 2
    paper.circle((middle, middle), middle, CUT)
    paper.circle((middle, 5.5), 2.5, HAIR)
    big = _largest(lettering.number, Face.CODE_BOLD, (26, 20, 15), 24)
    half = width_mm(lettering.number, big) / 2
    paper.text(middle - half, 18, lettering.number, big)
    paper.text(middle + half + 0.8, 18, lettering.code[-1], Type(13, Face.CODE))
    paper.box(Box(middle - half, 19, middle + half, 19.7), SOLID)
    half_code = 6 * whole_dots(1, paper.dpi)
    paper.code((middle + half_code, 34.6), lettering.code, Symbol.DATA_MATRIX, 1)


def draw_place(paper: Paper, form: PlateForm, lettering: Lettering) -> None:
    """A place or a count: the word, the number as large as it goes, the line below."""
    _cut_plate(paper, form, corners=3)
    room = _draw_code(paper, form, lettering)
    left, number_line = form.left, form.code_foot + 1.5
    word = _largest(lettering.word, Face.BOLD, form.word_pts, room)
    paper.text(left, form.height * 0.28, lettering.word, word, room=room)
    number = _largest(lettering.number, Face.BOLD, form.number_pts, room)
    paper.text(left, number_line, lettering.number, number, room=room)
    _draw_small(paper, form, lettering.small, BLACK)


def draw_deed(paper: Paper, form: PlateForm, lettering: Lettering) -> None:
    """A deed or a bench: the word beside its code. HOLD alone has eight corners and is red."""
    hold = lettering.word == "HOLD"
    ink = WHITE if hold else BLACK
    _cut_plate(paper, form, corners=14 if hold else 3, fill=RED if hold else WHITE)
    if hold:
        side = 12 * whole_dots(form.module, paper.dpi)
        right, foot = form.code_right + 3, form.code_foot
        paper.box(Box(right - side - 6, foot - side - 3, right, foot + 6.4), _BLANK)
    room = _draw_code(paper, form, lettering)
    kind, lines = _largest_lines(lettering.word, _DEED_PTS, room)
    lead = kind.ascent_mm * 1.75
    y = form.height * 0.46 + kind.ascent_mm / 2 - lead * (len(lines) - 1) / 2
    for line in lines:
        paper.text(form.left, y, line, Type(kind.pt, kind.face, ink), room=room)
        y += lead
    _draw_small(paper, form, lettering.small, ink)


def _cut_plate(paper: Paper, form: PlateForm, *, corners: float, fill: Color = WHITE) -> None:
    box = Box(0, 0, form.width, form.height)
    paper.shape(octagon(box, corners), Pen(0.1, fill=fill))
    from_edge, radius = form.hole
    for x in (from_edge, form.width - from_edge):
        paper.circle((x, form.height / 2), radius, CUT)


def _draw_code(paper: Paper, form: PlateForm, lettering: Lettering) -> float:
    """The square code and, under it, the code to type; returns the room left of it."""
    corner = (form.code_right, form.code_foot)
    dark = paper.code(corner, lettering.code, Symbol.DATA_MATRIX, form.module)
    middle = (dark.left + dark.right) / 2
    typed = Type(9, Face.CODE)
    paper.text(middle, form.code_foot + form.module + 2.9, lettering.grouped, typed, "centre")
    return dark.left - form.module - 1 - form.left


def _draw_small(paper: Paper, form: PlateForm, words: str, ink: Color) -> None:
    room = form.width - 2 * form.left
    kind = _largest(words, Face.BOLD, form.small_pts, room)
    paper.text(form.left, form.height * 0.92, words, Type(kind.pt, kind.face, ink), room=room)


def _largest(words: str, face: Face, sizes: Sequence[float], room: float) -> Type:
    """The largest of the sizes in which the words fit, else the least."""
    kinds = [Type(pt, face) for pt in sizes]
    return next((kind for kind in kinds if width_mm(words, kind) <= room), kinds[-1])


def _largest_lines(words: str, sizes: Sequence[float], room: float) -> tuple[Type, list[str]]:
    """The largest type that sets the words in at most two lines."""
    for pt in sizes:
        kind = Type(pt, Face.BOLD)
        lines = break_lines(words, kind, room)
        if len(lines) <= 2 and all(width_mm(line, kind) <= room for line in lines):
            break
    return kind, lines
