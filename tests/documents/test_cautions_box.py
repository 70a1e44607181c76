"""Cautions are printed whole, white on black, the makers' words first."""

from app.documents.cautions_box import draw_cautions
from app.documents.proof import printed_pages
from app.documents.sheet import Sheet, SheetFoot, SheetHead
from tests.documents.samples import text_of


def boxed(count: int, before: float = 0) -> bytes:
    sheet = Sheet(SheetHead("Card", "Whey Blue"), SheetFoot("Quernlow"), 2)
    sheet.y += before
    told = [f"Mind {n}. " * 9 for n in range(count)]
    draw_cautions(sheet, "The makers’ sheets come first.", told)
    return sheet.finish()


def test_every_caution_is_there_after_whose_words_come_first() -> None:
    (page,) = text_of(boxed(7))
    assert page.index("come first") < page.index("Mind 0")
    assert all(f"Mind {n}." in page for n in range(7))


def test_it_is_never_parted_but_goes_on_to_the_next_page() -> None:
    first, second = text_of(boxed(7, before=200))
    assert "Mind" not in first
    assert all(f"Mind {n}." in second for n in range(7))


def test_its_ground_is_black() -> None:
    (page,) = printed_pages(boxed(7), 100)
    dark = page.convert("L").histogram()[0] / (page.width * page.height)
    assert dark > 0.1
