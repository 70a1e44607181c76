"""Stocks, layouts, printers and the market at the desk, as a person chooses them."""

import pytest
from PIL import Image
from PySide6.QtPrintSupport import QPrinter

from app.documents.proof import printed_pages, read_back, true_size_picture
from app.documents.square_codes import whole_dots
from app.documents.stocks import stock
from app.exchange.sample_sheets import sample_sheet, sample_words
from app.exchange.tag_stocks import tag_stocks
from app.lookups.sample_tags import sample_tags
from app.lookups.studio import setting
from app.work.bases import describe_base
from app.work.studio import choose
from tests.makers import tarnfield
from tests.window.benches.desk_hands import open_desk
from tests.window.parts.test_true_size import as_pillow

SMALL = "small-63x38"
WRONG = (2.1, 1.4)  # this printer puts all that much to the right, and that much too low
LASER = "laser in the office"


@pytest.fixture
def desk(qtbot, settings, studio, opened):
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    yield from open_desk(qtbot, settings, studio)


@pytest.fixture
def stocks(desk):
    desk.press("Alt+T")
    return desk.bench.back.tags.stocks.page


@pytest.fixture
def printers(desk):
    desk.press("Alt+T", "F9")
    return desk.bench.back.tags.calibrating


@pytest.fixture
def market(desk):
    desk.press("Alt+T", "F10")
    return desk.bench.back.tags.market


def write(desk, field, text):
    """Write it over what stands there, with one's fingers."""
    field.line.setFocus()
    field.line.selectAll()
    desk.type(text)


def rows(table):
    return [tuple(row) for row in table._rows]


def take_up(desk, page, name):
    """Open the row of this stock."""
    page.table.opened.emit([one.name for one in page.stocks.every].index(name))
    desk.quiet()


def test_tags_of_85_by_55_are_replaced_by_70_by_50(desk, stocks):
    assert ("Swing tags 85 × 55, ten on A4", "10") in rows(stocks.list.table)
    desk.click(stocks.list.like_key)
    new = stocks.new
    desk.type("Kraft card")
    for field, text in ((new.tag, "70 50"), (new.step, "70 50"), (new.first, "0 23,5"),
                        (new.across, "3")):
        write(desk, field, text)
    while "card" not in new.layout_key.accessibleName():
        desk.click(new.layout_key)
    desk.click(new.show_key)
    assert new.says.text() == ("15 tags of 70 × 50 mm on a page of 210 × 297 mm, at 300 dots an "
                               "inch.")
    assert "Every code was read back." in stocks.preview.says.text()
    desk.click(new.keep_key)
    assert desk.said == "described the stock Kraft card"
    assert ("Kraft card", "15") in rows(stocks.list.table)
    own = desk.studio.book.ask(tag_stocks).named("own-1")
    assert (own.tag, own.first, own.cells, own.layout) == ((70, 50), (0, 23.5), 15, "card")
    assert stocks.list.stock == own
    desk.click(stocks.list.away_key)
    assert ("Kraft card, put away", "15") in rows(stocks.list.table)
    desk.press("F2")
    assert ("Kraft card", "15") in rows(stocks.list.table)


def test_too_small_a_tag_is_refused_with_the_reason_and_stays_as_it_was_typed(desk, stocks):
    desk.click(stocks.list.like_key)
    desk.type("Too small")
    for field in (stocks.new.tag, stocks.new.step):
        write(desk, field, "40 22")
    desk.press("Enter")
    assert "tags of 40 × 22 mm have no room" in desk.trouble
    assert len(desk.studio.book.ask(tag_stocks).every) == 5
    desk.press("F3", "Alt+T")
    assert stocks.new.tag.line.text() == "40 22"
    assert stocks.new.title.line.text() == "Too small"
    write(desk, stocks.new.tag, "forty")
    desk.press("Enter")
    assert "no pair of lengths" in stocks.new.tag.wrong.text()
    write(desk, stocks.new.tag, "90 55")
    desk.press("Enter")
    assert "cells overlap" in stocks.new.says.text()


def test_a_layout_under_the_least_sizes_is_refused_and_the_text_stays(desk, stocks):
    card = stocks.layout_card
    for line, text, why in ((card.text, "60", "smallest words in 4.2 pt"),
                            (card.lot, "3", "a lot 3 mm high"),
                            (card.module, "0.4", "modules of 0.4 mm")):
        write(desk, line, text)
        desk.click(card.keep_key)
        assert why in card.says.text()
        assert "The least is" in card.says.text()
        assert line.line.text() == text
        write(desk, line, {"60": "100", "3": "4"}.get(text, text))
    assert desk.studio.book.ask(setting, "tag layouts") == "{}"


def test_a_layout_says_what_is_wanted_and_is_kept_for_its_stock(desk, stocks):
    take_up(desk, stocks.list, "band-210x50")
    take_up(desk, stocks.list, "swing-85x55")
    card = stocks.layout_card
    desk.click(card.prints["care"])
    write(desk, card.lot, "4,5")
    desk.click(card.keep_key)
    swing = desk.studio.book.ask(tag_stocks).named("swing-85x55")
    assert (swing.choices.leaves_out, swing.choices.lot_mm) == (("care",), 4.5)
    assert stocks.list.stock == swing
    assert desk.said == "laid out the tags of Swing tags 85 × 55, ten on A4"


def test_the_page_in_the_window_is_that_of_the_pdf_and_the_screen_is_put_right(desk, stocks):
    words = sample_words(desk.studio.book.ask(sample_tags), 0)
    dots = stocks.screen().physicalDotsPerInch()
    for name in (SMALL, "tag-70x50"):
        take_up(desk, stocks.list, name)
        desk.click(stocks.layout_card.show_key)
        page = true_size_picture(sample_sheet(words, stock(name)), 1, dots)
        assert as_pillow(stocks.preview.page.grab().toImage()).tobytes() == page.tobytes()
        assert page.width == pytest.approx(210 / 25.4 * dots, abs=1)
    before = stocks.preview.ruler.length
    assert before == pytest.approx(50 / 25.4 * dots)
    write(desk, stocks.preview.line, "48")
    desk.press("Enter")
    assert stocks.preview.ruler.length == pytest.approx(before * 50 / 48, rel=1e-3)
    assert stocks.preview.page.image.width() == pytest.approx(
        210 * stocks.preview.ruler.length / 50, abs=1)
    write(desk, stocks.preview.line, "500")
    desk.press("Enter")
    assert stocks.preview.line.wrong.isVisible()
    for _ in range(2):  # half as long, twice
        write(desk, stocks.preview.line, "25")
        desk.press("Enter")
    assert "So far off is no screen." in desk.trouble
    assert stocks.preview.line.line.text() == "25"


def out_of(page, dpi, off=WRONG):
    """What comes out of a printer that is off by so much."""
    sheet = Image.new("L", page.size, 255)
    sheet.paste(page.convert("L"), tuple(round(mm / 25.4 * dpi) for mm in off))
    return sheet


def read_on_grid(file, one):
    """Where the real edges of the first tag cross the two scales, read to a tenth of a mm."""
    dpi = 600
    sheet = out_of(printed_pages(file.read_bytes(), dpi)[0], dpi)
    edge, width, height = one.cell(1), *one.tag
    read = []
    for axis, real in enumerate((edge.left, edge.top)):
        lines = []
        for at in range(round((real - 6) / 25.4 * dpi), round((real + 6) / 25.4 * dpi)):
            long = (at, round((edge.top + 3) / 25.4 * dpi), at + 1,
                    round((edge.top + 0.7 * height) / 25.4 * dpi))
            if axis:
                long = (round((edge.left + 3) / 25.4 * dpi), at,
                        round((edge.left + 0.7 * width) / 25.4 * dpi), at + 1)
            strip = sheet.crop(long)
            lines.append((sum(strip.histogram()[:128]), at))
        read.append(round(real - max(lines)[1] * 25.4 / dpi, 1))
    return read


def test_a_printer_that_is_off_prints_right_after_its_two_numbers(desk, printers, opened):
    page, small = printers.page, stock(SMALL)
    write(desk, page.printers.name, "L")
    page.printers.name.line.setText("L" * 41)
    desk.press("Enter")
    assert page.printers.name.wrong.text().startswith("A name of 41 letters fits no key.")
    write(desk, page.printers.name, LASER)
    desk.press("Enter")
    page.table.opened.emit([one.name for one in printers.stocks].index(SMALL))
    desk.click(page.grid.printers[LASER])
    desk.click(page.grid.grid_key)
    across, down = read_on_grid(opened[-1], small)
    assert (across, down) == (-2.1, -1.4)
    write(desk, page.grid.across, f"{across}")
    write(desk, page.grid.down, f"{down}")
    desk.press("Enter")
    assert page.grid.now.text() == "Corrected by −2.1 mm across, −1.4 mm down."
    assert "The code keeps 4.1 mm white" in page.grid.says.text()
    assert "2.0 mm is the least. Off as it was it had 2.1 mm: enough." in page.grid.says.text()
    desk.click(page.grid.grid_key)
    assert read_on_grid(opened[-1], small) == [0, 0]
    desk.press("F8")
    sheets = desk.bench.back.tags.stocks.page
    take_up(desk, sheets.list, SMALL)
    desk.click(sheets.layout_card.show_key)
    desk.click(sheets.preview.test_key)
    words = sample_words(desk.studio.book.ask(sample_tags), 0)
    due = {one.code: one for one in read_back(sample_sheet(words, small), 300)[0]}
    came = {one.code: (one.x + WRONG[0], one.y + WRONG[1])
            for one in read_back(opened[-1].read_bytes(), 300)[0]}
    assert len(came) == 21
    half = 21 / 2 * whole_dots(0.5, 300)
    for code, (x, y) in came.items():
        assert (x, y) == pytest.approx((due[code].x, due[code].y), abs=0.3)
        cell = next(box for n in range(1, 22) if (box := small.cell(n)).holds(x, y))
        assert min(x - half - cell.left, y - half - cell.top,
                   cell.right - x - half, cell.bottom - y - half) >= 2


def test_a_correction_too_large_is_refused_and_one_without_room_is_said(desk, printers):
    grid = printers.page.grid
    write(desk, grid.across, "-5.2")
    write(desk, grid.down, "0")
    desk.click(grid.keep_key)
    assert "more than 5 mm" in grid.says.text()
    assert (grid.across.line.text(), grid.now.text()) == ("-5.2", "Not corrected.")
    printers.page.table.opened.emit([one.name for one in printers.stocks].index("tag-70x50"))
    write(desk, grid.across, "-4.5")
    desk.click(grid.keep_key)
    assert "nothing can be printed so" in grid.says.text()


def test_printers_of_the_system_are_found_and_get_their_sheets_straight(desk, printers, tmp_path):
    def queue(_name):
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(tmp_path / "queue.pdf"))
        return printer

    here = desk.bench.around.printers
    here._known, here._opened = (lambda: (LASER,)), queue
    page = printers.page
    desk.click(page.printers.seek_key)
    desk.click(page.printers.found_keys[LASER])
    desk.click(page.grid.printers[LASER])
    desk.click(page.grid.grid_key)
    assert desk.note.startswith(f"Sent to {LASER}")
    assert len(printed_pages((tmp_path / "queue.pdf").read_bytes(), 300)) == 1
    desk.click(page.printers.forget_keys[LASER])
    assert page.grid.printers.keys() == {""}


def test_the_tag_speaks_as_the_chosen_market_reads_it_before_anything_is_kept(desk, market):
    desk.click(market.markets["EU"])
    desk.click(market.languages["de"])
    seen = market.changed.lines
    assert seen["fibre"]._fact.text() == "100 % Wolle"
    assert "Handwäsche" in seen["care"]._fact.text()
    assert "Not kept yet" in market.stands.text()
    assert "Local law decides" in market.law.text()
    assert desk.studio.book.ask(setting, "market") == ""
    desk.click(market.keep_key)
    assert (desk.studio.book.ask(setting, "market"),
            desk.studio.book.ask(setting, "language")) == ("EU", "de")
    assert not market.stands.isVisible()
    desk.click(market.markets["US"])
    assert seen["fibre"]._fact.text() == "100% wool"
    assert "(must be there)" in seen["ounces"]._fact.text()
    desk.studio.do(describe_base, tarnfield(fibre="100 % merino", origin=""))
    desk.quiet()
    desk.press("F3", "Alt+T")
    desk.click(market.markets["US"])
    said = market.changed.said
    assert any(one.startswith("Not printed: ") and "(" in one for one in said)
    assert all(one.startswith(("Not printed: ", "Look at it: ")) for one in said)
    desk.click(market.markets[""])
    assert market.changed.said == []
