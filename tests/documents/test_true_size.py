"""A page as large on the screen as on paper, the same that the printer gets."""

import pytest
from PIL import Image, ImageChops

from app.documents.plates import action_plates, plate_sheets
from app.documents.proof import printed_pages, true_size_picture
from app.documents.stocks import stock
from app.documents.tags import tag_sheets
from app.problems import NotFound
from tests.documents.samples import tags

PAPERS = {
    "tags": lambda: tag_sheets(tags(3), stock("small-63x38")).pdf,
    "plates": lambda: plate_sheets(action_plates()[:3]),
}


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_the_picture_shows_the_page_that_is_printed(paper: object) -> None:
    """Dot against dot; only the soft rim of a letter may differ, never a field of 3 × 3 dots."""
    pdf = paper()
    shown = true_size_picture(pdf, 1, 203).convert("L").point(lambda level: 255 * (level > 127))
    printed = printed_pages(pdf, 203)[0].convert("L")
    assert shown.size == printed.size
    assert printed.getextrema() == (0, 255)
    off = ImageChops.difference(shown, printed).reduce(3).point(lambda level: 255 * (level > 230))
    assert off.getextrema() == (0, 0)


def test_a_page_is_as_wide_as_the_screens_dots_make_it() -> None:
    picture = true_size_picture(PAPERS["tags"](), 1, 96)
    assert isinstance(picture, Image.Image)
    assert picture.mode == "RGB"
    assert picture.width == pytest.approx(210 / 25.4 * 96, abs=1)


def test_a_page_that_is_not_there_is_not_found() -> None:
    with pytest.raises(NotFound, match="no page 2"):
        true_size_picture(PAPERS["tags"](), 2, 96)
