"""The picture of a trail drawn on paper: at its place, at its scale, each certainty its own way."""

import pytest
from PIL import Image

from app.documents.paper import Paper
from app.documents.proof import printed_pages
from app.documents.trail_on_paper import LEAST_PT, draw_key, draw_picture
from app.documents.trail_picture import SMALL, SetTag, Tag, Way, set_picture
from app.documents.typesetting import MM
from app.documents.yarn import Certainty
from tests.documents.samples import ink_box, text_of
from tests.documents.test_trail_picture import sample

DPI = 300
SCALE = LEAST_PT / SMALL / MM  # mm to a unit, where small type is as small as it may be


def drawn(certainty: Certainty = Certainty.KNOWN, *, held: str = "") -> tuple[Image.Image, SetTag]:
    """Two stations with yarn between them on an A4 page, and the first of them."""
    picture = set_picture([Tag("a", "cone", "C1", held=held), Tag("b", "lot", "L1")],
                          [Way("a", "b", certainty)], "a")
    paper = Paper("Test", least_pt=LEAST_PT)
    draw_picture(paper, picture, (20, 40), SCALE)
    return printed_pages(paper.pdf(""), DPI)[0], picture.tags[0]


def crossed(page: Image.Image, x: float, top: float, foot: float) -> int:
    """How many strokes a cut from top to foot meets; in mm."""
    column = [page.getpixel((round(x * DPI / 25.4), y)) < 128
              for y in range(round(top * DPI / 25.4), round(foot * DPI / 25.4))]
    return sum(now and not before for before, now in zip(column, column[1:], strict=False))


def test_a_picture_lies_where_it_is_told_to_at_its_scale() -> None:
    page, first = drawn()
    left, top, _, _ = ink_box(page, DPI)
    assert left == pytest.approx(20 + first.x * SCALE, abs=0.5)
    assert top == pytest.approx(40 + first.y * SCALE, abs=0.5)


def test_each_certainty_is_told_apart_without_colour() -> None:
    met = {}
    for certainty in Certainty:
        page, first = drawn(certainty)
        page = page.convert("L")
        y = 40 + (first.y + first.height / 2) * SCALE
        begins = 20 + (first.x + first.width) * SCALE
        cuts = [crossed(page, begins + n * 0.25, y - 2, y + 2) for n in range(4, 40)]
        met[certainty] = cuts
    assert set(met[Certainty.KNOWN]) == {1}
    assert set(met[Certainty.PARTLY]) == {2}
    assert {0, 1} == set(met[Certainty.POOL]) == set(met[Certainty.UNKNOWN])
    assert met[Certainty.POOL].count(1) > met[Certainty.UNKNOWN].count(1)


def test_hold_hangs_over_the_upper_right_corner_filled_where_it_was_put() -> None:
    inked = []
    for held in ("", "below", "here"):
        page, first = drawn(held=held)
        right, top = 20 + (first.x + first.width) * SCALE, 40 + first.y * SCALE
        box = [round(mm * DPI / 25.4) for mm in (right - 8, top - 3, right + 2, top - 0.5)]
        corner = page.convert("L").crop(tuple(box))
        inked.append(sum(corner.histogram()[:160]) / (corner.width * corner.height))
    nothing, below, here = inked
    assert nothing == 0
    assert 0.05 < below < 0.5 * here


def test_no_word_is_smaller_than_the_least_size_however_small_the_picture() -> None:
    paper = Paper("Test", least_pt=LEAST_PT)
    draw_picture(paper, sample(), (20, 40), SCALE * 0.93)
    (words,) = text_of(paper.pdf(""))
    assert "412 skeins on a shelf" in words.replace("\n", " ").replace("  ", " ")


def test_the_key_names_every_certainty() -> None:
    paper = Paper("Test")
    draw_key(paper, (20, 50))
    (words,) = text_of(paper.pdf(""))
    assert all(word in words for word in ("known", "partly", "one of a pool", "not known"))
