"""Printing through Qt's own print system, into a file: no real printer stands here."""

from dataclasses import replace

import pytest
from pypdfium2 import PdfDocument
from PySide6.QtCore import QSettings
from PySide6.QtPrintSupport import QPrinter

from app.documents.proof import printed_pages, read_back
from app.documents.stocks import stock
from app.documents.tags import tag_sheets
from app.problems import NotFound, Refused
from app.window.printer_settings import PrinterSettings
from app.window.printers import Printers, pages_of, print_straight, system_printer
from tests.documents.samples import tags


def into(path):
    """A printer of the system whose queue is a file."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    return printer


def drawn_on(queue):
    """The one picture on each page of the queue: its dots, and where it lies in points."""
    found = []
    with PdfDocument(queue) as document:
        for number in range(len(document)):
            (only,) = document[number].get_objects()
            found.append((only.get_bitmap(render=False).to_pil().convert("L").tobytes(),
                          only.get_bounds()))
    return found


@pytest.mark.parametrize(("name", "dpi", "count", "turned"), [
    ("small-63x38", 300, 24, False), ("roll-62x40", 203, 2, True), ("swing-85x55", 300, 1, True),
    ("roll-62x40", 600, 1, False)])
def test_a_sheet_comes_out_dot_for_dot_and_every_code_is_read(
    qapp, tmp_path, name, dpi, count, turned
):
    one = replace(stock(name), dpi=dpi, long_edge_first=turned)
    pdf = tag_sheets(tags(count), one).pdf
    print_straight(into(tmp_path / "queue.pdf"), pages_of(pdf, one, "tags"))
    came_out = (tmp_path / "queue.pdf").read_bytes()
    printed = drawn_on(came_out)
    sent = printed_pages(pdf, dpi)
    for picture, (dots, bounds) in zip(sent, printed, strict=True):
        assert dots == picture.convert("L").tobytes()
        left, foot, right, top = (point / 72 * dpi for point in bounds)
        assert (right - left, top - foot) == pytest.approx(picture.size, abs=0.1)
        assert left == pytest.approx(0, abs=0.1)
    assert [{found.code for found in page} for page in read_back(came_out, dpi)] == [
        {found.code for found in page} for page in read_back(pdf, dpi)]


def test_a_printer_of_other_dots_gets_nothing(qapp, tmp_path):
    class Coarse(QPrinter):
        def resolution(self):
            return 180

    small = stock("small-63x38")
    pages = pages_of(tag_sheets(tags(1), small).pdf, small, "tags")
    with pytest.raises(Refused, match="180 dots an inch and the sheet was made for 300"):
        print_straight(Coarse(QPrinter.PrinterMode.HighResolution), pages)


def test_a_queue_that_takes_nothing_is_said(qapp, qtlog, tmp_path):
    small = stock("small-63x38")
    pages = pages_of(tag_sheets(tags(1), small).pdf, small, "tags")
    with qtlog.disabled(), pytest.raises(Refused, match="takes nothing now"):
        print_straight(into(tmp_path / "no such folder" / "queue.pdf"), pages)


def test_a_stock_goes_straight_only_to_a_printer_that_the_system_has(qapp, tmp_path):
    settings = PrinterSettings(QSettings(str(tmp_path / "c.ini"), QSettings.Format.IniFormat))
    printers = Printers(settings, known=lambda: ("laser",))
    small, roll = stock("small-63x38"), stock("roll-62x40")
    for one, printer in ((small, "laser"), (roll, "the other shop's")):
        settings.name(printer)
        settings.choose(one.name, printer)
    settings.correct("laser", small.name, (0.4, -0.3))
    assert (printers.of(small), printers.knows(printers.of(small))) == ("laser", True)
    assert not printers.knows(printers.of(roll))
    assert not printers.knows("")
    assert (printers.correction(small), printers.correction(roll)) == ((0.4, -0.3), (0, 0))


def test_a_printer_that_is_not_there_is_not_found(qapp):
    with pytest.raises(NotFound, match="not there now"):
        system_printer("a printer that nobody has")
