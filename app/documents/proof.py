"""Proof of a sheet before it is handed out: every code is read back by a reader that drew none."""

from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from threading import Lock

import zxingcpp
from PIL import Image
from pypdfium2 import PdfBitmap, PdfDocument, PdfPage

from app.documents.boxes import Box
from app.documents.square_codes import MM_PER_INCH
from app.documents.typesetting import MM
from app.problems import NotFound, Refused

_SYMBOLS = "QRCode,DataMatrix"
_FAULTS_SHOWN = 5
_ONE_AT_A_TIME = Lock()  # PDFium knows no threads


@dataclass(frozen=True, slots=True)
class Found:
    """A square code as the reader found it: its text, and its middle in mm from the top left."""

    code: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Due:
    """A code that must be read inside one box of a page, with these words printed beside it."""

    code: str
    box: Box
    words: str = ""


def printed_pages(pdf: bytes, dpi: int) -> tuple[Image.Image, ...]:
    """Each page as the printer puts it down: black or white, dot by dot."""
    with _opened(pdf) as document:
        pictures: list[Image.Image] = [_render(page, dpi).to_pil() for page in document]
        return tuple(one.convert("1", dither=Image.Dither.NONE) for one in pictures)


def true_size_picture(pdf: bytes, page: int, dots_per_inch: float) -> Image.Image:
    """One page, counted from 1, as large on a screen of so many dots an inch as on paper.

    Raises NotFound where the paper has no such page.
    """
    with _opened(pdf) as document:
        if not 1 <= page <= len(document):
            raise NotFound(f"This paper has no page {page}.", f"It has {len(document)}.")
        picture: Image.Image = document[page - 1].render(scale=dots_per_inch / 72).to_pil()
        return picture.convert("RGB")


def read_back(pdf: bytes, dpi: int) -> tuple[tuple[Found, ...], ...]:
    """For each page the codes that a reader finds on its print."""
    with _opened(pdf) as document:
        return tuple(_codes_on(page, dpi) for page in document)


def prove(pdf: bytes, due: Sequence[Sequence[Due]], dpi: int) -> None:
    """Refuses a paper on which any code is missing, in another's place, or too many.

    `due` says for each page what must be read where. Words asked for must stand in the same box.
    """
    with _opened(pdf) as document:
        faults = _faults(document, due, dpi)
    if faults:
        more = f", and {len(faults) - _FAULTS_SHOWN} more" if len(faults) > _FAULTS_SHOWN else ""
        raise Refused(
            f"The sheet did not pass its proof at {dpi} dots an inch, so it is not handed out: "
            f"{'; '.join(faults[:_FAULTS_SHOWN])}{more}.",
            "Nothing was printed. Make the sheet again; if it fails again, choose a larger stock "
            "or a printer with finer dots.",
        )


@contextmanager
def _opened(pdf: bytes) -> Iterator[PdfDocument]:
    with _ONE_AT_A_TIME, closing(PdfDocument(pdf)) as document:
        yield document


def _faults(document: PdfDocument, due: Sequence[Sequence[Due]], dpi: int) -> list[str]:
    if len(document) != len(due):
        return [f"it has {len(document)} pages, not {len(due)}"]
    faults = []
    for number, (page, codes) in enumerate(zip(document, due, strict=True), 1):
        wrong = _wrong_codes(_codes_on(page, dpi), codes) + _wrong_words(page, codes)
        faults += [f"page {number}: {fault}" for fault in wrong]
    return faults


def _wrong_codes(found: Sequence[Found], due: Sequence[Due]) -> list[str]:
    faults, unclaimed = [], list(found)
    for one in due:
        here = [code for code in unclaimed if one.box.holds(code.x, code.y)]
        unclaimed = [code for code in unclaimed if code not in here]
        read = ", ".join(code.code for code in here)
        if not here:
            faults.append(f"{one.code} cannot be read")
        elif read != one.code:
            faults.append(f"{read} is read where {one.code} is due")
    return faults + [f"{code.code} is read where no code is due" for code in unclaimed]


def _wrong_words(page: PdfPage, due: Sequence[Due]) -> list[str]:
    text, height = page.get_textpage(), page.get_height()
    faults = []
    for one in due:
        left, top, right, bottom = (length * MM for length in one.box)
        stands = text.get_text_bounded(left, height - bottom, right, height - top)
        if _bare(one.words) not in _bare(stands):
            faults.append(f"“{one.words}” does not stand beside its code")
    return faults


def _bare(words: str) -> str:
    return "".join(words.split())


def _render(page: PdfPage, dpi: int) -> PdfBitmap:
    return page.render(
        scale=dpi / 72, grayscale=True, no_smoothtext=True, no_smoothpath=True, no_smoothimage=True
    )


def _codes_on(page: PdfPage, dpi: int) -> tuple[Found, ...]:
    """Strict on purpose: no turned, light-on-dark or rescaled code passes."""
    bitmap = _render(page, dpi)
    dots = memoryview(bitmap.buffer).cast("B").cast("B", (bitmap.height, bitmap.stride))
    read = zxingcpp.read_barcodes(
        dots,
        formats=zxingcpp.barcode_formats_from_str(_SYMBOLS),
        try_rotate=False,
        try_downscale=False,
        try_invert=False,
        binarizer=zxingcpp.Binarizer.FixedThreshold,
    )
    return tuple(_found(code, MM_PER_INCH / dpi) for code in read)


def _found(code: zxingcpp.Barcode, dot_mm: float) -> Found:
    at = code.position
    corners = (at.top_left, at.top_right, at.bottom_left, at.bottom_right)
    x, y = (sum(getattr(corner, axis) for corner in corners) / 4 * dot_mm for axis in "xy")
    return Found(code.text, x, y)
