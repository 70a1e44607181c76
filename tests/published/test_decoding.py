"""Every square code is decoded by readers that share no line of code with what drew it.

- QR codes (ISO/IEC 18004) are drawn by the `qrcode` package and read here by OpenCV's own decoder
  (`cv2.QRCodeDetectorAruco`) and by zxing-cpp, the reader of the proof.
- Data Matrix codes (ISO/IEC 16022) are drawn by `ppf.datamatrix` and read here by zxing-cpp.

OpenCV was chosen over zbar because its wheel brings all it needs: zbar's Python package looks for
a system library that a fresh machine may lack, and a check that can be skipped is none.
"""

from collections.abc import Iterator
from random import Random

import cv2
import numpy as np
import pytest
import zxingcpp
from PIL import Image, ImageFilter

from app.calculations.code_drawing import draw_lot_code, draw_mark
from app.calculations.codes import CHARACTERS, Kind, numbered
from app.documents.paper import Box
from app.documents.plates import plate_for, plate_sheets
from app.documents.proof import printed_pages, read_back
from app.documents.stocks import Stock, stock, stocks
from app.documents.tags import Sheets, Tag, tag_sheets
from tests.documents.samples import tag_words

CODE_AND_EDGE_MM = 17.0  # from a tag's lower right corner, the square that holds its code


def two_hundred_tags() -> list[Tag]:
    """Ten lots of twenty skeins, lots and marks drawn as the studio draws them."""
    random, tags = Random(2026), []
    lots: list[str] = []
    for week in range(6, 16):
        lot = draw_lot_code(2026, week, lots, random).text
        lots.append(lot)
        marks: list[str] = []
        for _ in range(20):
            code = draw_mark(lot, marks, random)
            marks.append(code.text)
            tags.append(Tag(tag_words(lot=lot), code.text[-2:]))
    return tags


@pytest.fixture(scope="module", params=[one.name for one in stocks()])
def printed(request: pytest.FixtureRequest) -> tuple[Stock, Sheets]:
    one = stock(request.param)
    return one, tag_sheets(two_hundred_tags(), one)


def code_pictures(one: Stock, sheets: Sheets, dpi: int) -> Iterator[tuple[str, Image.Image]]:
    """For each tag its code and the printed square that should hold it."""
    pages = printed_pages(sheets.pdf, dpi)
    for place in sheets.places:
        cell = one.cell(place.cell)
        left, top = cell.right - CODE_AND_EDGE_MM, cell.bottom - CODE_AND_EDGE_MM
        box = Box(left, top, cell.right, cell.bottom)
        dots = tuple(round(side / 25.4 * dpi) for side in box)
        yield place.code, pages[place.page - 1].convert("L").crop(dots)


@pytest.mark.parametrize("finer", [1, 2])
def test_two_hundred_tags_are_decoded_by_a_reader_that_is_not_the_proofs(
    printed: tuple[Stock, Sheets], finer: int
) -> None:
    """At the dots of the stock's own printer, and at twice as many."""
    one, sheets = printed
    decoder = cv2.QRCodeDetectorAruco()
    read = {
        code: decoder.detectAndDecode(np.asarray(picture))[0]
        for code, picture in code_pictures(one, sheets, finer * one.dpi)
    }
    assert len(read) == 200
    assert {code: text for code, text in read.items() if text != code} == {}


@pytest.mark.parametrize("dpi", [150, 203, 300, 600])
def test_two_hundred_tags_are_decoded_by_zxing(printed: tuple[Stock, Sheets], dpi: int) -> None:
    _, sheets = printed
    read = sorted(found.code for page in read_back(sheets.pdf, dpi) for found in page)
    assert read == sorted(place.code for place in sheets.places)


@pytest.mark.parametrize("blur_dots", [1.0, 2.0])
def test_tags_are_decoded_when_the_print_is_blurred(
    printed: tuple[Stock, Sheets], blur_dots: float
) -> None:
    _, sheets = printed
    read = [
        code.text
        for page in printed_pages(sheets.pdf, 300)
        for code in zxingcpp.read_barcodes(
            page.convert("L").filter(ImageFilter.GaussianBlur(blur_dots)),
            formats=zxingcpp.BarcodeFormat.QRCode,
        )
    ]
    assert sorted(read) == sorted(place.code for place in sheets.places)


@pytest.mark.parametrize("dpi", [203, 300])
def test_data_matrix_plates_are_decoded_by_a_reader_that_is_not_their_writer(dpi: int) -> None:
    kinds = [Kind.DISC, Kind.POT, Kind.RAIL, Kind.JAR, Kind.SHELF, Kind.STEAMER, Kind.BOARD]
    random = Random(19)
    plates = [
        plate_for(numbered(kind, random.randrange(1, limit)).text)
        for kind in kinds
        for limit in (999, 9_999, 999_999)
        for _ in range(5)
    ]
    read = {found.code for page in read_back(plate_sheets(plates), dpi) for found in page}
    assert read == {plate.code for plate in plates}


def test_the_two_hundred_codes_use_every_character_of_a_lot() -> None:
    assert set("".join(tag.code.text for tag in two_hundred_tags())) >= set(CHARACTERS)
