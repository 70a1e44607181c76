"""The page: millimetres from the top left, and room that can be claimed only once.

Words and codes that leave their safe area, meet others, or have no letters in the bundled faces
are noted, and the whole paper is then refused with those words; nothing is cut or squeezed.
"""

from collections.abc import Callable, Hashable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from io import BytesIO
from typing import Literal

from reportlab.lib.colors import Color
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from app.documents import square_codes
from app.documents.boxes import Box
from app.documents.square_codes import MODULE_MM, Symbol
from app.documents.typesetting import (
    BLACK,
    MM,
    Type,
    break_lines,
    font_name,
    named,
    set_line,
    strangers,
)
from app.problems import Refused

A4, SAFE_MM = (210.0, 297.0), 2.0
_MISFITS_SHOWN = 4

Point = tuple[float, float]
Hang = Literal["left", "centre", "right"]


@dataclass(frozen=True, slots=True)
class Pen:
    """How a shape is drawn: weight of its line and dashes in mm, ink of line and fill."""

    weight: float = 0.25
    ink: Color | None = BLACK
    fill: Color | None = None
    dash: tuple[float, ...] = ()


HAIR = Pen(0.1)
SOLID = Pen(ink=None, fill=BLACK)


@dataclass(frozen=True, slots=True)
class _Stamp:
    """What is drawn once: its name in the PDF, where its cell lay, what it claims in any cell."""

    name: str
    origin: Point
    claims: tuple[tuple[str, Box], ...]


class Paper:
    """One PDF in the making, and what does not fit on it."""

    def __init__(
        self,
        title: str,
        size: Point = A4,
        *,
        dpi: int = 300,
        least_pt: float = 8,
        edge: float = 4,
        turned: bool = False,
    ) -> None:
        """Begins with an empty page; `edge` is what the printer cannot reach, in mm; a `turned`
        page goes through the printer a quarter to the left, and is drawn on as if it did not."""
        self.size, self.dpi, self._turned = size, dpi, turned
        self._buffer = BytesIO()
        self._pdf = Canvas(
            self._buffer,
            pagesize=_in_points(size[::-1] if turned else size),
            invariant=1,
            lang="en",
        )
        self._pdf.setTitle(title)
        self._pdf.setViewerPreference("PrintScaling", "None")  # a code keeps its whole dots
        self._reach = Box(0, 0, *size).shrunk(edge)
        self._misfits: dict[str, None] = {}
        self.codes: list[list[tuple[str, Box]]] = []
        self._origin: Point = (0.0, 0.0)
        self._least_pt, self._safe = least_pt, self._reach
        self._taken: list[tuple[str, Box]] = []
        self._stamps: dict[Hashable, _Stamp] = {}
        self._begin_page()

    @property
    def misfits(self) -> tuple[str, ...]:
        """What does not fit, in words, each said once; what merely meets another comes last."""
        return tuple(sorted(self._misfits, key=lambda misfit: " meets " in misfit))

    def new_page(self) -> None:
        """Ends this page and begins the next."""
        self._pdf.showPage()
        self._begin_page()

    def refusal(self, cure: str) -> Refused:
        """What to say of a paper that does not fit."""
        shown = "; ".join(self.misfits[:_MISFITS_SHOWN])
        return Refused(f"Nothing was printed, because not all words fit: {shown}.", cure)

    def pdf(self, cure: str) -> bytes:
        """The finished paper; refused as a whole, with the words that do not fit and the cure."""
        if self._misfits:
            raise self.refusal(cure)
        self._pdf.save()
        return self._buffer.getvalue()

    @contextmanager
    def cell(self, box: Box, *, least_pt: float = 6, safe_mm: float = SAFE_MM) -> Iterator[None]:
        """A tag or plate on the page: its own origin, safe area and least size of type."""
        kept = self._origin, self._safe, self._least_pt, self._taken
        self._origin, self._least_pt = (box.left, box.top), least_pt
        self._safe, self._taken = box.shrunk(safe_mm), []
        yield
        self._origin, self._safe, self._least_pt, self._taken = kept

    def stamp(self, key: Hashable, draw: Callable[[], None]) -> None:
        """What is the same in many cells, known by its key: drawn once, as a form of the PDF, and
        laid down in each, where it claims its room anew."""
        x, y = self._origin
        if stamp := self._stamps.get(key):
            for what, box in stamp.claims:
                self.claim(what, box)
        else:
            stamp = self._stamps[key] = self._cut_stamp(draw)
        self._pdf.saveState()
        self._pdf.translate((x - stamp.origin[0]) * MM, (stamp.origin[1] - y) * MM)
        self._pdf.doForm(stamp.name)
        self._pdf.restoreState()

    def claim(self, what: str, box: Box, white: float = 0) -> Box:
        """Takes a rectangle for something, with a white edge that need not be printed, and notes
        what is wrong with it; returns it as it lies on the page."""
        x, y = self._origin
        there = box.moved(x, y)
        if not there.within(self._safe):
            self._note(f"“{what}” does not fit the space")
        elif not there.shrunk(white).within(self._reach):
            self._note(f"“{what}” lies where the printer cannot reach")
        for other, taken in self._taken:
            if there.meets(taken):
                self._note(f"“{what}” meets “{other}”")
                break
        self._taken.append((what, there))
        return there

    def text(
        self,
        x: float,
        y: float,
        words: str,
        kind: Type,
        hang: Hang = "left",
        room: float | None = None,
    ) -> float:
        """Words on the base line y, from x, about x or up to x; returns where they end."""
        if not words:
            return x
        setting = set_line(words, kind.pt, kind.face)
        left = x - {"left": 0.0, "centre": 0.5, "right": 1.0}[hang] * setting.width_mm
        right = left + setting.width_mm
        if not self._may_set(words, kind, setting.width_mm, room):
            return right
        self.claim(words, Box(left, y - kind.ascent_mm, right, y + kind.descent_mm))
        self._pdf.setFillColor(kind.ink)
        for piece in setting.pieces:
            self._pdf.setFont(font_name(piece.face), kind.pt)
            self._pdf.drawString(*self._at(left + piece.at_mm, y), piece.letters)
        return right

    def lines(self, x: float, y: float, words: str, kind: Type, room: float, lead: float) -> float:
        """Words broken to the room, line under line; returns the next base line."""
        for line in break_lines(words, kind, room):
            self.text(x, y, line, kind, room=room)
            y += lead
        return y

    def shape(self, points: Sequence[Point], pen: Pen, *, closed: bool = True) -> None:
        """A line from point to point, or the figure it closes."""
        path = self._pdf.beginPath()
        path.moveTo(*self._at(*points[0]))
        for point in points[1:]:
            path.lineTo(*self._at(*point))
        if closed:
            path.close()
        self._paint(path, pen)

    def box(self, box: Box, pen: Pen) -> None:
        """A rectangle."""
        left, top, right, bottom = box
        self.shape([(left, top), (right, top), (right, bottom), (left, bottom)], pen)

    def rule(self, start: Point, end: Point, pen: Pen) -> None:
        """A straight line."""
        self.shape([start, end], pen, closed=False)

    def circle(self, centre: Point, radius: float, pen: Pen) -> None:
        """A circle."""
        path = self._pdf.beginPath()
        path.circle(*self._at(*centre), radius * MM)
        self._paint(path, pen)

    def code(
        self, corner: Point, text: str, symbol: Symbol = Symbol.QR, least_mm: float = MODULE_MM
    ) -> Box:
        """A square code by its lower right corner, in whole printer dots and on them.

        Its white edge is claimed with it. Returns the dark square in the cell's own millimetres.
        """
        matrix = square_codes.matrix(text, symbol)
        module = square_codes.whole_dots(least_mm, self.dpi)
        side, quiet = matrix.across * module, matrix.quiet * module
        x, y = self._origin
        across = corner[0] + x - side
        if self._turned:  # dots are counted from the edge that goes in first
            left = self.size[0] - square_codes.to_dot(self.size[0] - across, self.dpi) - x
        else:
            left = square_codes.to_dot(across, self.dpi) - x
        top = square_codes.to_dot(corner[1] + y - side, self.dpi) - y
        dark = Box(left, top, left + side, top + side)
        self.codes[-1].append((text, self.claim(f"code {text}", dark.shrunk(-quiet), quiet)))
        self._draw_runs(matrix, (left, top), module)
        return dark

    def code_room(self, corner: Point, across: int, least_mm: float = MODULE_MM) -> Box:
        """What a QR code of so many modules keeps with its white edge left and above, wherever the
        cell lies to the printer's dots."""
        module = square_codes.whole_dots(least_mm, self.dpi)
        side = (across + Symbol.QR.value) * module + square_codes.MM_PER_INCH / self.dpi / 2
        return Box(corner[0] - side, corner[1] - side, *corner)

    def _cut_stamp(self, draw: Callable[[], None]) -> _Stamp:
        name, (x, y), before = f"stamp{len(self._stamps)}", self._origin, len(self._taken)
        self._pdf.beginForm(name, 0, 0, self.size[0] * MM, self.size[1] * MM)
        draw()
        self._pdf.endForm()
        claims = tuple((what, box.moved(-x, -y)) for what, box in self._taken[before:])
        return _Stamp(name, (x, y), claims)

    def _draw_runs(self, matrix: square_codes.Matrix, at: Point, module: float) -> None:
        """One path in whole numbers under one scale, so that no module is a hair off another."""
        runs = [f"{column} {-row - 1} {length} 1 re" for row, column, length in matrix.runs]
        self._pdf.saveState()
        self._pdf.translate(*self._at(*at))
        self._pdf.scale(module * MM, module * MM)
        self._pdf.setFillColor(BLACK)
        self._pdf.drawPath(PDFPathObject(["n", *runs]), stroke=0, fill=1)
        self._pdf.restoreState()

    def _begin_page(self) -> None:
        self._taken = []
        self.codes.append([])
        if self._turned:
            self._pdf.translate(self.size[1] * MM, 0)
            self._pdf.rotate(90)

    def _may_set(self, words: str, kind: Type, width: float, room: float | None) -> bool:
        if kind.pt < self._least_pt:
            raise ValueError(f"{kind.pt} pt is too small for this paper: {words}")
        if unknown := strangers(words):
            self._note(
                f"“{named(words)}” has signs that no bundled type has: "
                f"{' '.join(map(named, unknown))}"
            )
            return False
        too_long = width - room if room is not None else 0.0
        if too_long > 0.01:
            self._note(f"“{words}” is {too_long:.1f} mm too long")
        return too_long <= 0.01

    def _note(self, misfit: str) -> None:
        self._misfits[misfit] = None

    def _at(self, x: float, y: float) -> Point:
        return (x + self._origin[0]) * MM, (self.size[1] - y - self._origin[1]) * MM

    def _paint(self, path: PDFPathObject, pen: Pen) -> None:
        self._pdf.setLineWidth(pen.weight * MM)
        self._pdf.setDash([length * MM for length in pen.dash])
        if pen.fill is not None:
            self._pdf.setFillColor(pen.fill)
        if pen.ink is not None:
            self._pdf.setStrokeColor(pen.ink)
        self._pdf.drawPath(path, fill=int(pen.fill is not None), stroke=int(pen.ink is not None))


def _in_points(size: Point) -> Point:
    return size[0] * MM, size[1] * MM
