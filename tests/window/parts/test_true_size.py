"""A page as large on the screen as on paper."""

import pytest
from PIL import Image

from app.documents.proof import true_size_picture
from app.documents.stocks import stock
from app.documents.tags import tag_sheets
from app.window.parts.true_size import Ruler, TrueSize, screen_image
from tests.documents.samples import tags


def as_pillow(image):
    """The picture that Qt holds, dot for dot."""
    kept = image.convertToFormat(image.Format.Format_RGB888)
    rows = bytes(kept.constBits())
    line = kept.bytesPerLine()
    return Image.frombuffer("RGB", (kept.width(), kept.height()), rows, "raw", "RGB", line, 1)


@pytest.mark.parametrize(("name", "dots"), [("small-63x38", 96.0), ("swing-85x55", 141.2)])
def test_what_the_window_shows_is_the_page_that_is_printed(qapp, name, dots):
    pdf = tag_sheets(tags(3), stock(name)).pdf
    picture = true_size_picture(pdf, 1, dots)
    widget = TrueSize()
    widget.show_image(screen_image(picture))
    widget.resize(widget.sizeHint())
    assert as_pillow(widget.image).tobytes() == picture.tobytes()
    assert as_pillow(widget.grab().toImage()).tobytes() == picture.tobytes()


def test_on_a_fine_screen_it_is_finer_and_not_larger(qapp):
    pdf = tag_sheets(tags(1), stock("roll-62x40")).pdf
    widget = TrueSize()
    widget.show_image(screen_image(true_size_picture(pdf, 1, 192), 2.0))
    assert widget.sizeHint().width() == pytest.approx(62 / 25.4 * 96, abs=1)


def test_the_ruler_is_fifty_millimetres_of_the_screen(qapp):
    ruler = Ruler()
    ruler.show_scale(101.6)
    ruler.resize(ruler.sizeHint())
    assert ruler.length == pytest.approx(200)
    inked = ruler.grab().toImage()
    row = [inked.pixelColor(x, inked.height() - 1).lightness() for x in range(inked.width())]
    dark = [x for x, light in enumerate(row) if light < 100]
    assert dark[-1] - dark[0] == pytest.approx(200, abs=1)
