"""Where tags come to lie, measured in the PDF and on its print, against the stock's description."""

from dataclasses import replace

import pytest
from PIL import Image
from pypdfium2 import PdfDocument
from pypdfium2.raw import FPDF_PAGEOBJ_PATH

from app.documents.boxes import Box
from app.documents.proof import printed_pages, read_back
from app.documents.square_codes import MODULE_MM, whole_dots
from app.documents.stocks import Correction, Stock, after_grid, stock
from app.documents.tag_choices import LEAST_LOT_MM
from app.documents.tag_forms import SMALL
from app.documents.tags import Sheets, tag_sheets
from app.problems import Refused
from tests.documents.samples import ink_box, tag_words, tags

STOCKS = [stock(name) for name in ("swing-85x55", "small-63x38", "tag-70x50", "band-210x50")]
CODE_CORNER = {  # of the dark square, lower right, in mm from the cell's left and top
    "swing-85x55": (80.0, 50.884), "small-63x38": (59.3, 33.93), "tag-70x50": (63.8, 45.83),
    "band-210x50": (54.0, 41.0),
}  # fmt: skip
LOT_AT = {  # where its base line begins
    "swing-85x55": (5, 49.3), "small-63x38": (4.2, 32.4), "tag-70x50": (6.2, 44.3),
    "band-210x50": (10, 20),
}  # fmt: skip
WRONG = (2.1, 1.4)  # this printer puts all that much to the right, and that much too low
CURED = (-2.1, -1.4)
NEAR_MM = 0.1
each_stock = pytest.mark.parametrize("one", STOCKS, ids=lambda one: one.name)


def full(one: Stock, correction: Correction = (0.0, 0.0)) -> Sheets:
    words = tag_words("Whey Blue", knit="", differ="")
    return tag_sheets(tags(one.cells, words), one, correction=correction)


def due_square(one: Stock, cell: int) -> Box:
    """The dark square of a cell's code, from the stock's numbers and nothing that was drawn."""
    left, top, *_ = one.cell(cell)
    x, y = CODE_CORNER[one.name]
    side = 21 * whole_dots(MODULE_MM, one.dpi)
    return Box(left + x - side, top + y - side, left + x, top + y)


def off_printer(page: Image.Image, dpi: int, off: Correction) -> Image.Image:
    """What comes out of a printer that is off by so much."""
    across, down = (round(mm / 25.4 * dpi) for mm in off)
    sheet = Image.new("L", page.size, 255)
    sheet.paste(page.convert("L"), (across, down))
    return sheet


@each_stock
def test_every_code_lies_where_the_description_says_in_the_pdf(one: Stock) -> None:
    with PdfDocument(full(one).pdf) as document:
        height = document[0].get_height()
        bounds = [thing.get_bounds() for thing in document[0].get_objects()
                  if thing.type == FPDF_PAGEOBJ_PATH]  # fmt: skip
    mm = 25.4 / 72
    squares = [Box(left * mm, (height - top) * mm, right * mm, (height - foot) * mm)
               for left, foot, right, top in bounds]  # fmt: skip
    for cell in range(1, one.cells + 1):
        due = due_square(one, cell)
        assert any(square == pytest.approx(due, abs=NEAR_MM) for square in squares), cell


@each_stock
def test_a_printer_that_is_off_prints_every_cell_in_its_place_after_correction(one: Stock) -> None:
    """2.1 mm right and 1.4 mm low: the print is moved back, and then compared with the stock."""
    dpi = 600
    page = printed_pages(full(replace(one, dpi=dpi), CURED).pdf, dpi)[0]
    sheet = off_printer(page, dpi, WRONG)
    for cell in range(1, one.cells + 1):
        due = due_square(replace(one, dpi=dpi), cell)
        dots = [round(side / 25.4 * dpi) for side in due.shrunk(-1.5)]
        left, top, right, foot = ink_box(sheet.crop(tuple(dots)), dpi)
        x, y = dots[0] / dpi * 25.4, dots[1] / dpi * 25.4
        assert (left + x, top + y, right + x, foot + y) == pytest.approx(due, abs=NEAR_MM), cell


@each_stock
def test_the_white_edge_is_kept_after_correction(one: Stock) -> None:
    """Four modules, at least 2 mm, on the real tag: nothing printed, and not over its edge."""
    dpi = 300
    sheet = off_printer(printed_pages(full(one, CURED).pdf, dpi)[0], dpi, WRONG)
    for cell in range(1, one.cells + 1):
        dark = due_square(one, cell)
        edge = dark.shrunk(-2)
        assert edge.within(one.cell(cell).shrunk(2))
        kept = sheet.crop(tuple(round(side / 25.4 * dpi) for side in edge.shrunk(0.1)))
        inner = round(1.7 / 25.4 * dpi)
        kept.paste(255, (inner, inner, kept.width - inner, kept.height - inner))
        assert kept.getextrema() == (255, 255), cell


@pytest.mark.parametrize(("off", "read"), [(WRONG, (-2.1, -1.4)), ((-0.5, 3.0), (0.5, -3.0))])
def test_what_is_read_on_the_grid_cures_the_printer(off: Correction, read: Correction) -> None:
    cured = after_grid((0.0, 0.0), read)
    assert (cured[0] + off[0], cured[1] + off[1]) == pytest.approx((0, 0))
    assert after_grid(cured, (0.1, -0.2)) == pytest.approx((read[0] + 0.1, read[1] - 0.2))


@pytest.mark.parametrize("dpi", [203, 300])
@each_stock
def test_a_sheet_fed_by_its_long_edge_prints_the_same_turned(one: Stock, dpi: int) -> None:
    upright = replace(one, dpi=dpi)
    turned = replace(upright, long_edge_first=True)
    pages = [printed_pages(full(feed, CURED).pdf, dpi)[0] for feed in (upright, turned)]
    pdf = full(turned, CURED).pdf
    assert len(read_back(pdf, dpi)[0]) == one.cells
    back = pages[1].convert("L").transpose(Image.Transpose.ROTATE_270)
    assert back.size == pytest.approx(pages[0].size, abs=1)
    for cell in range(1, one.cells + 1):
        around = due_square(upright, cell).shrunk(-1).moved(*CURED)
        dots = [round(side / 25.4 * dpi) for side in around]
        boxes = [ink_box(page.crop(tuple(dots)), dpi) for page in (pages[0], back)]
        assert boxes[0] == pytest.approx(boxes[1], abs=NEAR_MM + 25.4 / dpi), cell


@each_stock
def test_the_digits_of_the_lot_are_four_millimetres_high(one: Stock) -> None:
    dpi = 600
    page = printed_pages(full(one).pdf, dpi)[0]
    left, top, *_ = one.cell(1)
    x, base_line = LOT_AT[one.name]
    first = Box(left + x, top + base_line - 4.45, left + x + 3, top + base_line + 0.3)
    _, above, _, below = ink_box(page.crop(tuple(round(mm / 25.4 * dpi) for mm in first)), dpi)
    assert below - above >= LEAST_LOT_MM - 25.4 / dpi


def test_a_stock_too_small_for_its_least_sizes_is_refused_with_the_cure() -> None:
    """Never squeezed: no type under 6 pt, no lot under 4 mm, no module under 0.5 mm."""
    measures = {"tag": (50.0, 30.0), "across": 4, "down": 9, "first": (5.0, 10.0)}
    tiny = replace(stock("small-63x38"), step=(50.0, 30.0), **measures)
    with pytest.raises(Refused, match="not all words fit") as refused:
        tag_sheets(tags(1), tiny)
    assert "larger stock" in refused.value.next_step
    with pytest.raises(ValueError, match="under 4 mm high"):
        replace(SMALL, lot_pt=16)


@pytest.mark.parametrize("dpi", [150, 203, 300, 600])
def test_a_module_is_never_under_half_a_millimetre(dpi: int) -> None:
    assert whole_dots(MODULE_MM, dpi) >= 0.4999
