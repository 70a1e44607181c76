"""The printers of this computer: which one prints a stock, what it is off by, and printing itself.

A sheet is painted dot for dot at the stock's own dots on the whole page: nothing is fitted to it.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QMarginsF, QPoint, QSizeF
from PySide6.QtGui import QImage, QPageLayout, QPageSize, QPainter, qRgb

from app.problems import NotFound, Refused
from app.window.printer_settings import Correction, PrinterSettings

if TYPE_CHECKING:  # the window is there before printing and the papers are brought in
    from PIL.Image import Image
    from PySide6.QtPrintSupport import QPrinter

    from app.documents.stocks import Stock


@dataclass(frozen=True, slots=True)
class Pages:
    """Sheets as a printer puts them down: black or white, dot by dot, and the size of a page."""

    pictures: "tuple[Image, ...]"
    size_mm: tuple[float, float]
    dpi: int
    title: str


def pages_of(pdf: bytes, stock: "Stock", title: str) -> Pages:
    """The pages of a sheet at its stock's dots, as they are fed; slow, so away from the screen."""
    from app.documents.proof import printed_pages

    size = stock.page[::-1] if stock.long_edge_first else stock.page
    return Pages(printed_pages(pdf, stock.dpi), size, stock.dpi, title)


def system_printers() -> tuple[str, ...]:
    """The printers that this computer knows now."""
    from PySide6.QtPrintSupport import QPrinterInfo

    return tuple(QPrinterInfo.availablePrinterNames())


def system_printer(name: str) -> "QPrinter":
    """The printer of this name; raises NotFound where it is not there."""
    from PySide6.QtPrintSupport import QPrinter, QPrinterInfo

    info = QPrinterInfo.printerInfo(name)
    if info.isNull():
        raise NotFound(f"The printer {name} is not there now.",
                       "Switch it on, or choose another; the sheet is kept as a file.")
    return QPrinter(info, QPrinter.PrinterMode.HighResolution)


class Printers:
    """What a bench asks of printers; `known` and `opened` are the system's own, or stand-ins."""

    def __init__(
        self,
        settings: PrinterSettings,
        known: Callable[[], tuple[str, ...]] = system_printers,
        opened: Callable[[str], "QPrinter"] = system_printer,
    ) -> None:
        self.settings, self._known, self._opened = settings, known, opened

    def known(self) -> tuple[str, ...]:
        """The printers that the system has now; slow where they are on a network, so asked away
        from the screen."""
        return self._known()

    def of(self, stock: "Stock") -> str:
        """The printer for this stock, or '' where its sheets are opened as files."""
        return self.settings.printer_for(stock.name)

    def correction(self, stock: "Stock") -> Correction:
        """What print on this stock is moved by, for the printer that is chosen for it."""
        return self.settings.correction(self.of(stock), stock.name)

    def knows(self, name: str) -> bool:
        """Whether this printer takes sheets straight: one that was only named here, and the system
        does not know, gets a file. As slow as `known`."""
        return bool(name) and name in self.known()

    def send(self, name: str, pages: Pages) -> None:
        """Put the pages into the printer's queue; raises NotFound or Refused."""
        print_straight(self._opened(name), pages)


def print_straight(printer: "QPrinter", pages: Pages) -> None:
    """Paint each page on the whole paper, dot on dot."""
    printer.setDocName(pages.title)
    printer.setResolution(pages.dpi)
    if printer.resolution() != pages.dpi:
        raise Refused(
            f"{printer.printerName()} prints {printer.resolution()} dots an inch and the sheet was "
            f"made for {pages.dpi}; nothing was sent to it, the sheet is kept as a file.",
            "Describe the stock with that printer's dots, and print again.")
    size = QPageSize(QSizeF(*pages.size_mm), QPageSize.Unit.Millimeter, "",
                     QPageSize.SizeMatchPolicy.ExactMatch)
    layout = QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF(0, 0, 0, 0))
    layout.setMode(QPageLayout.Mode.FullPageMode)
    printer.setPageLayout(layout)
    printer.setFullPage(True)
    painter = QPainter()
    if not painter.begin(printer):
        raise Refused(f"{printer.printerName() or 'The printer'} takes nothing now; the sheet is "
                      "kept as a file.", "Look whether it is switched on, or print the file.")
    try:
        for number, picture in enumerate(pages.pictures):
            if number:
                printer.newPage()
            painter.drawImage(QPoint(0, 0), _image(picture))
    finally:
        painter.end()


def _image(picture: "Image") -> QImage:
    """A picture of black and white as Qt has it."""
    bits = picture.convert("1")
    wide, high = bits.size
    image = QImage(bits.tobytes(), wide, high, -(-wide // 8), QImage.Format.Format_Mono)
    image.setColorTable([qRgb(0, 0, 0), qRgb(255, 255, 255)])
    return image.copy()
