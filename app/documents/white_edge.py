"""How much white the square code of a tag has to the edge of its tag when the print is off."""

from app.documents.paper import Paper
from app.documents.square_codes import Symbol, whole_dots
from app.documents.stocks import Correction, Stock
from app.documents.tag_layouts import draw_tag
from app.documents.tags import Tag


def white_edge_mm(stock: Stock, tag: Tag, off: Correction = (0.0, 0.0)) -> float:
    """From the dark square to the nearest edge of the tag, in mm, on a printer that is off by so
    much to the right and down. Below zero the code runs over the edge."""
    paper = Paper("Trial", stock.page, dpi=stock.dpi, edge=stock.edge)
    cell = stock.cell(1)
    with paper.cell(cell):
        draw_tag(paper, stock, tag.words, tag.code)
    [(_, code)] = paper.codes[0]
    dark = code.shrunk(white_edge_needed_mm(stock)).moved(*off)
    return min(dark.left - cell.left, dark.top - cell.top,
               cell.right - dark.right, cell.bottom - dark.bottom)


def white_edge_needed_mm(stock: Stock) -> float:
    """What a reader needs: four modules (ISO/IEC 18004), as wide as this printer prints them."""
    return Symbol.QR.value * whole_dots(stock.choices.module_mm, stock.dpi)
