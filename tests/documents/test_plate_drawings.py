"""What stands on discs and plates, and how large."""

from dataclasses import replace

import pytest

from app.calculations.codes import Code, Kind, numbered
from app.documents.boxes import Box
from app.documents.paper import Paper
from app.documents.plate_drawings import (
    DISC_MM,
    WALL,
    Lettering,
    draw_deed,
    draw_disc,
    draw_place,
)
from app.documents.proof import printed_pages
from tests.documents.samples import ink_box, text_of


def lettering(code: Code, word: str = "", small: str = "") -> Lettering:
    return Lettering(word, code.text[1:-1].lstrip("0"), small, code.text, code.grouped)


def on_a_page(size: tuple[float, float]) -> tuple[Paper, Box]:
    return Paper("Test"), Box(10, 10, 10 + size[0], 10 + size[1])


@pytest.mark.parametrize("number", ["031", "1203", "120345"])
def test_a_disc_is_round_and_shows_number_and_check(number: str) -> None:
    paper, box = on_a_page((DISC_MM, DISC_MM))
    disc = replace(lettering(numbered(Kind.DISC, int(number))), number=number)
    with paper.cell(box):
        draw_disc(paper, disc)
    pdf = paper.pdf("")
    assert text_of(pdf) == [f"{number}{disc.code[-1]}"]
    assert ink_box(printed_pages(pdf, 300)[0], 300) == pytest.approx((10, 10, 50, 50), abs=0.2)


def test_the_number_of_a_wall_plate_is_fifteen_millimetres_high() -> None:
    paper, box = on_a_page((90, 50))
    with paper.cell(box):
        draw_place(
            paper, WALL, lettering(numbered(Kind.POT, 2), word="POT", small="20 L, 15 usable")
        )
    picture = printed_pages(paper.pdf(""), 300)[0].convert("L")
    dot = 25.4 / 300
    digits = picture.crop(tuple(round(side / dot) for side in (21, 28, 40, 50)))
    _, top, _, foot = digits.point(lambda level: 255 - level).getbbox()
    assert (foot - top) * dot >= 15


@pytest.mark.parametrize("number", [1, 12, 112, 1200])
def test_a_number_that_grows_is_set_smaller_but_whole(number: int) -> None:
    paper, box = on_a_page((90, 50))
    with paper.cell(box):
        draw_place(paper, WALL, lettering(numbered(Kind.POT, number), word="POT"))
    assert f"POT {number}" in text_of(paper.pdf(""))[0]


@pytest.mark.parametrize("word", ["DONE", "UNDO LAST", "MIXED", "SECONDS", "POTS & TRAYS"])
def test_a_deed_stands_beside_its_code_with_the_code_to_type(word: str) -> None:
    paper, box = on_a_page((90, 50))
    deed = lettering(numbered(Kind.ACTION, 1), word=word)
    with paper.cell(box):
        draw_deed(paper, WALL, deed)
    said = text_of(paper.pdf(""))[0]
    assert set(word.split()) <= set(said.split())
    assert deed.grouped in said


def test_hold_alone_has_its_corners_cut_deep() -> None:
    corners = {}
    for word in ("HOLD", "DONE"):
        paper, box = on_a_page((90, 50))
        with paper.cell(box):
            draw_deed(paper, WALL, lettering(numbered(Kind.ACTION, 4), word=word))
        picture = printed_pages(paper.pdf(""), 300)[0].convert("L")
        dot = 25.4 / 300
        top_left = picture.crop(tuple(round(side / dot) for side in (10, 10, 16, 16)))
        corners[word] = top_left.getextrema()[0] == 255
    assert corners == {"HOLD": True, "DONE": False}


def test_a_name_too_long_for_its_plate_is_noted() -> None:
    paper, box = on_a_page((90, 50))
    small = "the third pot from the left under the long window"
    with paper.cell(box):
        draw_place(paper, WALL, lettering(numbered(Kind.POT, 2), word="POT", small=small))
    assert any(small in misfit for misfit in paper.misfits)
