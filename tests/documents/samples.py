"""Words, marks and pages for the tests of the papers; studio and yarns are invented."""

from io import BytesIO
from itertools import product

from PIL import Image
from pypdfium2 import PdfDocument
from reportlab.pdfgen.canvas import Canvas

from app.documents.tag_words import TagWords
from app.documents.tags import Tag
from app.documents.typesetting import MM

LOT = "2615R6F"
MARKS = tuple("".join(pair) for pair in product("7MX4W9R0FH", "3K0T6Y2M"))

BASES = {  # what a tag says of each base: fibre, net contents, ounces and yards
    "Tarnfield 4-ply": ("100 % wool", "100 g   388 m", "3.53 oz   424 yd"),
    "Downholm Sock": ("80 % wool, 20 % polyamide", "100 g   410 m", "3.53 oz   448 yd"),
    "Moorit Hill DK": ("100 % wool", "100 g   214 m", "3.53 oz   234 yd"),
    "Gossamer Lamb": ("100 % lambswool", "50 g   384 m", "1.76 oz   420 yd"),
    "Flaxen Fold": ("70 % wool, 30 % linen", "100 g   294 m", "3.53 oz   322 yd"),
    "Kettle Chunky": ("100 % wool", "100 g   112 m", "3.53 oz   122 yd"),
}
COLOURWAYS = {
    "Ferry Ledger": "Tarnfield 4-ply",
    "Lamp Room Receipt": "Tarnfield 4-ply",
    "Plum Stone in a Pocket": "Tarnfield 4-ply",
    "Sluice Keeper’s Glove": "Tarnfield 4-ply",
    "Seventh Buoy": "Tarnfield 4-ply",
    "Wet Thatch Tuesday": "Downholm Sock",
    "Brickyard Cat": "Downholm Sock",
    "Nettle Cellar": "Downholm Sock",
    "Moth at the Window": "Gossamer Lamb",
    "Paper Ticket": "Gossamer Lamb",
    "Whey Blue": "Gossamer Lamb",
    "Coal Hatch": "Moorit Hill DK",
    "Half-Tide Steps": "Flaxen Fold",
    "Late Bus Orchard": "Kettle Chunky",
}


def tag_words(colourway: str = "Sluice Keeper’s Glove", **changes: object) -> TagWords:
    """The words of one colourway's tag, in full."""
    base = COLOURWAYS.get(colourway, "Tarnfield 4-ply")
    fibre, net, ounces = BASES[base]
    words: dict[str, object] = {
        "studio": "Quernlow Dyeyard",
        "address": "Staithe Row 3, Quernlow",
        "colourway": colourway,
        "base": base,
        "fibre": fibre,
        "net": net,
        "ounces": ounces,
        "knit": "3.25 mm needles, 28 stitches × 36 rows = 10 cm.",
        "care": "Hand wash 30 °C, dry flat, do not tumble.",
        "origin": "Spun in the Aske valley, dyed by hand at Quernlow.",
        "differ": "Lots differ: use one, or alternate two rows.",
        "lot": LOT,
    }
    return TagWords(**{**words, **changes})


def tags(count: int, words: TagWords | None = None, first_mark: int = 0) -> list[Tag]:
    """So many tags of one lot, each with its own mark."""
    marks = MARKS[first_mark : first_mark + count]
    return [Tag(words or tag_words(), mark) for mark in marks]


def text_of(pdf: bytes) -> list[str]:
    """The words of each page, as a reader of PDF finds them, on one line."""
    document = PdfDocument(pdf)
    pages = [page.get_textpage().get_text_range() for page in document]
    document.close()
    return [" ".join(page.split()) for page in pages]


def ink_box(picture: Image.Image, dpi: int) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of all that is printed on a page, in mm."""
    left, top, right, bottom = picture.convert("L").point(lambda level: 255 - level).getbbox()
    mm = 25.4 / dpi
    return left * mm, top * mm, right * mm, bottom * mm


def pasted(pictures: list[Image.Image], size_mm: tuple[float, float]) -> bytes:
    """A PDF whose pages are these pictures."""
    buffer = BytesIO()
    canvas = Canvas(buffer, pagesize=(size_mm[0] * MM, size_mm[1] * MM), invariant=1)
    for picture in pictures:
        canvas.drawInlineImage(picture.convert("L"), 0, 0, size_mm[0] * MM, size_mm[1] * MM)
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()
