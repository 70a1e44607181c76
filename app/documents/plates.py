"""Discs and plates on A4: what to cut and engrave for everything that is scanned and reused."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from app.calculations import codes
from app.calculations.codes import Code, Kind
from app.documents.boxes import Box
from app.documents.paper import Paper
from app.documents.plate_drawings import (
    DISC_MM,
    SMALL,
    WALL,
    Lettering,
    PlateForm,
    draw_deed,
    draw_disc,
    draw_place,
)
from app.documents.proof import Due, prove
from app.documents.typesetting import Face, Type
from app.problems import Refused

_WORDS = {
    Kind.POT: "POT",
    Kind.RAIL: "RAIL",
    Kind.JAR: "JAR",
    Kind.SHELF: "SHELF",
    Kind.REEL: "REEL",
    Kind.BOARD: "BOARD",
    Kind.STEAMER: "STEAMER",
    Kind.VESSEL: "TUB",
    Kind.BALANCE: "BALANCE",
}
_ARM_LENGTH = (Kind.JAR, Kind.SHELF)
_DEEDS = (
    (1, "DONE", "the step is finished"),
    (2, "UNDO LAST", "takes back my last scan"),
    (3, "MIXED", "then scan all that met"),
    (4, "HOLD", "then scan the thing"),
    (5, "SPLIT", "then scan the new disc"),
    (6, "SECONDS", "then scan the skein"),
    (7, "SEEN GOOD", "the skein in hand"),
    (8, "FAULT", "on what is in hand"),
)
_COUNTS = tuple((10 + n, "COUNT", str(n)) for n in range(1, 11))

_DPI = 300
_MARGIN, _FOOT, _GAP = 10.0, 278.0, 4.0
_USABLE = 190.0  # of the page's width
_NOTES = (
    "Thin lines are cut, black is engraved; print at 100 %. Both faces of a disc are drawn.",
    "Wet room: engraved polypropylene or stainless steel, or resin ribbon on polyester; plates at "
    "chest height on the dry side.",
    "Not there: paper, laminate, nylon (it dyes), direct-thermal labels (black at about 70 °C), "
    "brass, copper, aluminium, bare iron.",
)


@dataclass(frozen=True, slots=True)
class Plate:
    """One disc or plate: its code, its word, its number if it shows one, a line below."""

    code: str
    word: str = ""
    number: str = ""
    small: str = ""

    @property
    def kind(self) -> Kind:
        """What wears it."""
        return codes.read(self.code).kind


def plate_for(code: str, name: str = "", word: str = "") -> Plate:
    """The plate of a thing: `name` is what the studio calls it (“N1 navy”, “heater side”), `word`
    what it is where the kind alone does not say (BASIN, MACHINE)."""
    read = codes.read(code)
    if read.kind is Kind.ACTION:
        return _action(read)
    if read.kind is Kind.DISC:
        return Plate(read.text, number=read.text[1:-1])
    if read.kind is Kind.BENCH:
        return Plate(read.text, (word or name).upper(), small="scan to work here")
    if read.kind not in _WORDS:
        raise Refused(
            f"{read.grouped} is no plate: a {read.kind} wears its own card or tag.",
            "Choose discs, places, benches and actions.",
        )
    return Plate(read.text, (word or _WORDS[read.kind]).upper(), str(read.number), name)


def action_plates() -> tuple[Plate, ...]:
    """The plates that do something: DONE, UNDO LAST and those after it, then COUNT 1 to 10."""
    deeds = [Plate(_action_code(n), word, small=small) for n, word, small in _DEEDS]
    counts = [Plate(_action_code(n), word, number) for n, word, number in _COUNTS]
    return (*deeds, *counts)


def plate_sheets(plates: Sequence[Plate]) -> bytes:
    """Any number of discs and plates on as many A4 pages as they need, every code read back."""
    if not plates:
        raise Refused("There is no plate to print.", "Choose the places that need one.")
    pages = list(_pages(plates))
    paper = Paper("Plates", dpi=_DPI)
    for number, page in enumerate(pages, 1):
        if number > 1:
            paper.new_page()
        for plate, box in page:
            with paper.cell(box):
                _draw(paper, plate)
        _draw_notes(paper, f"page {number} of {len(pages)}")
    pdf = paper.pdf("Shorten the words of this plate.")
    due = [[Due(text, box) for text, box in page] for page in paper.codes]
    prove(pdf, due, _DPI)
    return pdf


def _action_code(number: int) -> str:
    return codes.numbered(Kind.ACTION, number).text


def _action(code: Code) -> Plate:
    for plate in action_plates():
        if plate.code == code.text:
            return plate
    raise Refused(f"No action has the plate {code.grouped}.", "Choose one of the actions.")


def _form(plate: Plate) -> PlateForm:
    return SMALL if plate.kind in _ARM_LENGTH else WALL


def _draw(paper: Paper, plate: Plate) -> None:
    code = codes.read(plate.code)
    lettering = Lettering(plate.word, plate.number, plate.small, code.text, code.grouped)
    if plate.kind is Kind.DISC:
        draw_disc(paper, lettering)
    elif plate.number:
        draw_place(paper, _form(plate), lettering)
    else:
        draw_deed(paper, _form(plate), lettering)


def _faces(plate: Plate) -> list[tuple[float, float]]:
    """The sizes of what is drawn for it: a disc has two faces alike."""
    if plate.kind is Kind.DISC:
        return [(DISC_MM, DISC_MM)] * 2
    form = _form(plate)
    return [(form.width, form.height)]


def _pages(plates: Iterable[Plate]) -> Iterator[list[tuple[Plate, Box]]]:
    """Rows of one size, filled from the left, until the page is full."""
    faces = [(size, plate) for plate in plates for size in _faces(plate)]
    faces.sort(key=lambda face: face[0])
    page: list[tuple[Plate, Box]] = []
    y = _MARGIN
    for (width, height), same in groupby(faces, key=lambda face: face[0]):
        across = int(_USABLE // width)
        gap = (_USABLE - across * width) / (across - 1)
        for row in _in_rows([plate for _, plate in same], across):
            if y + height > _FOOT:
                yield page
                page, y = [], _MARGIN
            for n, plate in enumerate(row):
                x = _MARGIN + n * (width + gap)
                page.append((plate, Box(x, y, x + width, y + height)))
            y += height + _GAP
    yield page


def _in_rows(plates: Sequence[Plate], across: int) -> Iterator[Sequence[Plate]]:
    for start in range(0, len(plates), across):
        yield plates[start : start + across]


def _draw_notes(paper: Paper, page: str) -> None:
    for n, note in enumerate(_NOTES):
        paper.text(_MARGIN, 283 + 3.9 * n, note, Type(8))
    paper.text(_MARGIN + _USABLE, 283, page, Type(8, Face.BOLD), "right")
