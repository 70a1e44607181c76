"""A thousand proven tags against the plain way: a picture from `qrcode` and drawImage for each."""

import sys
from dataclasses import replace
from io import BytesIO
from random import Random
from time import process_time

import pytest
import qrcode
from qrcode.constants import ERROR_CORRECT_Q
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from app.calculations.code_drawing import draw_lot_code, draw_mark
from app.documents.stocks import Stock, stock
from app.documents.tags import Tag, tag_sheets
from app.documents.typesetting import MM
from tests.documents.samples import tag_words

PAIRS = 4


def a_thousand() -> list[Tag]:
    """Fifty lots of twenty skeins."""
    random, tags = Random(5), []
    lots: list[str] = []
    for week in range(1, 51):
        lot = draw_lot_code(2026, week, lots, random).text
        lots.append(lot)
        marks: list[str] = []
        for _ in range(20):
            marks.append(draw_mark(lot, marks, random).text)
            tags.append(Tag(tag_words(lot=lot), marks[-1][-2:]))
    return tags


def the_plain_way(tags: list[Tag], one: Stock) -> bytes:
    """The same words in a common face and the same code, as a first program would: unproven."""
    buffer = BytesIO()
    canvas = Canvas(buffer, pagesize=(one.page[0] * MM, one.page[1] * MM))
    for n, tag in enumerate(tags):
        if n and n % one.cells == 0:
            canvas.showPage()
        cell, said = one.cell(n % one.cells + 1), tag.words
        x, y = cell.left * MM, (one.page[1] - cell.top) * MM
        code = qrcode.QRCode(1, ERROR_CORRECT_Q, box_size=10, border=4)
        code.add_data(tag.code.text)
        picture = ImageReader(code.make_image().get_image())
        canvas.drawImage(picture, x + 48 * MM, y - 37 * MM, 14.7 * MM, 14.7 * MM)
        for line, words in enumerate((said.colourway, said.base, said.fibre, said.net, said.care,
                                      said.origin, said.studio, tag.code.grouped)):  # fmt: skip
            canvas.setFont("Helvetica", 7)
            canvas.drawString(x + 4 * MM, y - (6 + 3.4 * line) * MM, words)
    canvas.save()
    return buffer.getvalue()


@pytest.mark.long
@pytest.mark.parametrize(("dpi", "most"), [(203, 1 / 3), (300, 1 / 2)])
def test_a_thousand_proven_tags_take_a_part_of_the_plain_ways_time(
    dpi: int, most: float, capsys: pytest.CaptureFixture[str]
) -> None:
    """The best of up to four pairs: on a busy machine the two vary against each other.

    Measured on a quiet one: 0.25 to 0.3 of its time at 203 dots an inch, 0.43 at 300.
    """
    tags, one = a_thousand(), replace(stock("small-63x38"), dpi=dpi)
    tag_sheets(tags[:1], one)
    shares: list[float] = []
    while len(shares) < PAIRS and min(shares, default=1) > most:
        began = process_time()
        proven = tag_sheets(tags, one).pdf
        ours, began = process_time() - began, process_time()
        plain = the_plain_way(tags, one)
        shares.append(ours / (process_time() - began))
    with capsys.disabled():
        sys.stdout.write(
            f"\n1,000 tags at {dpi}: {', '.join(f'{share:.2f}' for share in shares)} of the plain "
            f"way's time, {len(proven) // 1000} kB for {len(plain) // 1000} kB\n"
        )
    assert min(shares) <= most
    assert len(proven) <= len(plain) / 5
